//! A source file as words and signs: no comments, no texts, no characters in quotes.

/// A word, `::`, or any other sign.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Token {
    Word(String),
    Path,
    Sign(char),
}

impl Token {
    pub(crate) fn word(&self) -> Option<&str> {
        match self {
            Token::Word(word) => Some(word),
            _ => None,
        }
    }

    pub(crate) fn is(&self, sign: char) -> bool {
        *self == Token::Sign(sign)
    }
}

fn is_of_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_' || c == '$'
}

/// How many characters a text in quotes has from here, quotes and letters before them among these; 0 where there is none.
fn quoted(text: &[char]) -> usize {
    let letters = text.iter().take_while(|c| ['b', 'r', 'c'].contains(c)).count().min(2);
    let raw = text[..letters].contains(&'r');
    let marks = if raw { text[letters..].iter().take_while(|c| **c == '#').count() } else { 0 };
    let start = letters + marks;
    if text.get(start) != Some(&'"') {
        return 0;
    }
    let mut at = start + 1;
    while at < text.len() {
        let closes = text[at] == '"' && text[at + 1..].iter().take(marks).filter(|c| **c == '#').count() == marks;
        if closes {
            return at + 1 + marks;
        }
        at += if text[at] == '\\' && !raw { 2 } else { 1 };
    }
    text.len()
}

/// How many characters a comment has from here.
fn comment(text: &[char]) -> usize {
    match text {
        ['/', '/', ..] => text.iter().take_while(|c| **c != '\n').count(),
        ['/', '*', ..] => {
            let (mut at, mut depth) = (2, 1);
            while depth > 0 && at < text.len() {
                match &text[at..] {
                    ['/', '*', ..] => (at, depth) = (at + 2, depth + 1),
                    ['*', '/', ..] => (at, depth) = (at + 2, depth - 1),
                    _ => at += 1,
                }
            }
            at
        }
        _ => 0,
    }
}

/// How many characters a single one in quotes has from here; of the name of a lifetime only its mark.
fn character(text: &[char]) -> usize {
    match text {
        ['\'', '\\', _, rest @ ..] => 4 + rest.iter().take_while(|c| **c != '\'').count(),
        ['\'', _, '\'', ..] => 3,
        ['\'', ..] => 1,
        _ => 0,
    }
}

/// The words and signs of a source file.
pub(crate) fn tokens(source: &str) -> Vec<Token> {
    let text: Vec<char> = source.chars().collect();
    let (mut tokens, mut at) = (Vec::new(), 0);
    while at < text.len() {
        let rest = &text[at..];
        let skipped = comment(rest).max(quoted(rest)).max(character(rest));
        let word = rest.iter().take_while(|c| is_of_word(**c)).count();
        at += if skipped > 0 {
            skipped
        } else if word > 0 {
            tokens.push(Token::Word(rest[..word].iter().collect()));
            word
        } else if rest.starts_with(&[':', ':']) {
            tokens.push(Token::Path);
            2
        } else {
            if !rest[0].is_whitespace() {
                tokens.push(Token::Sign(rest[0]));
            }
            1
        };
    }
    tokens
}
