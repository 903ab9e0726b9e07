//! A TOML file read as far as it goes, each value with its place and its digits as typed.

use crate::problem::{ENOUGH, Problem, accepted};
use ocellus_card::id::EntryId;
use std::ops::Range;
use toml::de::DeTable;

/// The text of a file, lines set apart that no parser could read, so that it does not stumble over what follows them.
pub(crate) struct TomlText<'a> {
    name: &'a str,
    text: &'a str,
    readable: String,
}

impl<'a> TomlText<'a> {
    /// A byte order mark is fine; anything else that is not UTF-8 is not.
    pub(crate) fn new(name: &'a str, bytes: &'a [u8]) -> Result<TomlText<'a>, Vec<Problem>> {
        let text = std::str::from_utf8(bytes).map_err(|error| {
            let line = 1 + bytes.iter().take(error.valid_up_to()).filter(|byte| **byte == b'\n').count();
            let problem = Problem::of_file(name, "not UTF-8 text", "plain text, saved as UTF-8");
            vec![Problem { line: Some(line), ..problem }]
        })?;
        let text = text.trim_start_matches('\u{feff}');
        if text.trim().is_empty() {
            let accepted = "lines of KEY = VALUE; ocellus --help shows the least, ocellus fields all of them";
            return Err(vec![Problem::of_file(name, "the file is empty", accepted)]);
        }
        let blank = |line: &str| line.bytes().map(|byte| if byte == b'\n' { '\n' } else { ' ' }).collect();
        let keep = |line: &str| if unreadable(line).is_some() { blank(line) } else { line.to_owned() };
        Ok(TomlText { name, text, readable: text.split_inclusive('\n').map(keep).collect() })
    }

    pub(crate) fn parse(&self) -> TomlFile<'_> {
        let (table, errors) = DeTable::parse_recoverable(&self.readable);
        TomlFile { name: self.name, table: table.into_inner(), text: self.text, errors }
    }
}

/// What keeps a line from being an entry, a `[table]` or a comment: every entry has its own line.
fn unreadable(line: &str) -> Option<&'static str> {
    let line = line.trim();
    if line.is_empty() || line.starts_with(['[', '#']) {
        return None;
    }
    let Some((key, value)) = line.split_once('=') else { return Some("no equals sign after a key") };
    let (key, value) = (key.trim(), value.trim());
    if key.is_empty() || key.contains(|c: char| !c.is_ascii_alphanumeric() && !"_-.\"'".contains(c)) {
        Some("not a key before the equals sign")
    } else if value.starts_with('[') {
        Some("a list, not a value")
    } else if value.starts_with("\"\"\"") || value.starts_with("'''") || value.starts_with('{') && !value.contains('}')
    {
        Some("more than a value on one line")
    } else {
        None
    }
}

pub(crate) struct TomlFile<'a> {
    pub(crate) name: &'a str,
    pub(crate) table: DeTable<'a>,
    text: &'a str,
    errors: Vec<toml::de::Error>,
}

impl<'a> TomlFile<'a> {
    pub(crate) fn line(&self, at: usize) -> usize {
        1 + self.text.bytes().take(at).filter(|byte| *byte == b'\n').count()
    }

    /// The bounds of the line that holds this byte, without its end.
    fn line_span(&self, at: usize) -> Range<usize> {
        let start = self.text.get(..at).and_then(|before| before.rfind('\n')).map_or(0, |end| end + 1);
        let end = self.text.get(at..).and_then(|after| after.find('\n')).map_or(self.text.len(), |end| at + end);
        start..end
    }

    fn slice(&self, span: Range<usize>) -> &'a str {
        self.text.get(span).unwrap_or("").trim()
    }

    /// A value as typed: where the parser stumbled later in its line, all of the line up to a comment. So a decimal
    /// comma, a unit or a second number stays with the digits before it.
    pub(crate) fn typed(&self, value: Range<usize>) -> &'a str {
        let line = value.start..self.line_span(value.start).end;
        let stumbled = |start: usize| (line.start..=line.end).contains(&start);
        if !self.errors.iter().any(|error| error.span().is_some_and(|span| stumbled(span.start))) {
            return self.slice(value);
        }
        let rest = self.slice(line);
        if rest.starts_with(['"', '\'']) { rest } else { rest.split('#').next().unwrap_or("").trim() }
    }

    /// A problem at a key of this file.
    pub(crate) fn problem(&self, at: usize, key: &str, typed: &str, wrong: String, accepted: String) -> Problem {
        // the value of a table is its heading, or the first part of a dotted key
        let heading = typed.starts_with('[') || typed == key;
        let typed = if heading { typed.to_owned() } else { format!("{key} = {typed}") };
        let (file, line, entry) = (self.name.to_owned(), Some(self.line(at)), EntryId::of_key(key));
        Problem { file, line, entry, typed, wrong, accepted }
    }

    /// Adds what could not be read, in lines about which nothing is said yet.
    pub(crate) fn syntax(&self, problems: &mut Vec<Problem>) {
        let starts = self.text.split_inclusive('\n').scan(0, |next, line| {
            let start = *next;
            *next += line.len();
            Some((start, line))
        });
        let unreadable = starts.filter_map(|(start, line)| Some((start, unreadable(line)?.to_owned())));
        let errors = self.errors.iter().map(|error| (self.place(error), self.wrong(error)));
        for (at, wrong) in unreadable.chain(errors) {
            if problems.len() >= ENOUGH {
                break;
            }
            let problem = self.line_problem(at, wrong);
            if !problems.iter().any(|known| known.line == problem.line) {
                problems.push(problem);
            }
        }
    }

    fn place(&self, error: &toml::de::Error) -> usize {
        // an error at the end of the file is about the last line that says something
        error.span().map_or(0, |span| span.start).min(self.text.trim_end().len())
    }

    fn wrong(&self, error: &toml::de::Error) -> String {
        if !is_duplicate(error) {
            return error.message().to_owned();
        }
        let line = self.line_span(self.place(error));
        let key = head(self.slice(line.clone()));
        let earlier = self.text.get(..line.start).unwrap_or("").lines().enumerate();
        let first = earlier.filter(|(_, line)| head(line) == key).last();
        first.map_or("given twice".to_owned(), |(index, _)| format!("given twice; first on line {}", index + 1))
    }

    /// A problem about a line as a whole.
    fn line_problem(&self, at: usize, wrong: String) -> Problem {
        let typed = self.slice(self.line_span(at));
        let key = typed.split(|c: char| c != '_' && !c.is_ascii_alphanumeric()).next().unwrap_or("");
        let entry = EntryId::of_key(key);
        let accepted = match entry {
            Some(entry) => format!("{key} = VALUE, once; {}", accepted(entry)),
            None => "KEY = VALUE on a line of its own, a [table] line once, or # and a comment".to_owned(),
        };
        let (file, line) = (self.name.to_owned(), Some(self.line(at)));
        Problem { file, line, entry, typed: typed.to_owned(), wrong, accepted }
    }

    /// Whether a `[table]` line could not be read: what follows it would be put down to the wrong table.
    pub(crate) fn lost_a_table(&self) -> bool {
        let heading = |error: &toml::de::Error| self.slice(self.line_span(self.place(error))).starts_with('[');
        self.errors.iter().any(|error| !is_duplicate(error) && heading(error))
    }
}

/// What stands before the equals sign, or the whole line.
fn head(line: &str) -> &str {
    line.split(['=', '#']).next().unwrap_or("").trim()
}

fn is_duplicate(error: &toml::de::Error) -> bool {
    error.message().starts_with("duplicate key")
}
