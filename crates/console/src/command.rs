//! One line of the conversation, from its first word on.

use crate::around::Around;
use crate::entry;
use crate::kept::Kept;
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::show;
use crate::verb::{Run, VERBS};
use crate::word::first_word;
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Section};

// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
pub(crate) fn run(draft: &mut Draft, kept: &mut Kept, around: &dyn Around, line: &str, page: &mut Page) -> Outcome {
    let line = crate::line::before_comment(line).trim_ascii();
    if line.is_empty() {
        return Outcome::Nothing;
    }
    if line.as_bytes().first() == Some(&b'[') {
        return heading(line, page);
    }
    let (word, rest) = first_word(line);
    let verb = VERBS.iter().find(|verb| verb.word.eq_ignore_ascii_case(word));
    let value = if rest.as_bytes().first() == Some(&b'=') { rest.get(1..) } else { None };
    match (verb, entry::field(word), value) {
        (Some(verb), _, None) => match verb.run {
            Run::OfCase(run) => run(draft, rest, page),
            Run::OfAll(run) => run(kept, draft, around, rest, page),
        },
        (_, Some(field), None) if rest.is_empty() => {
            show::entry(draft, field, page);
            Outcome::Told
        }
        (_, Some(field), value) => entry::enter(draft, word, field, value.unwrap_or(rest).trim_ascii(), page),
        (..) => unknown(word, page),
    }
}

/// The heading of a table in a case file: it is known, or a file of something else is being pasted.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn heading(line: &str, page: &mut Page) -> Outcome {
    let inner = match line.as_bytes() {
        [b'[', .., b']'] => line.get(1..line.len() - 1).unwrap_or(line).trim_ascii(),
        _ => line,
    };
    if Section::tables().any(|table| table.word() == inner) {
        return Outcome::Nothing;
    }
    let mut nearest = Nearest::to(inner);
    Section::tables().for_each(|table| nearest.offer(table.word()));
    nearest.tell(page, "no table of a case file has this name");
    Outcome::Refused
}

// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn unknown(word: &str, page: &mut Page) -> Outcome {
    let mut nearest = Nearest::to(word);
    VERBS.iter().for_each(|verb| nearest.offer(verb.word));
    for field in Field::ALL {
        nearest.offer(field.word());
        nearest.offer(field.key());
    }
    nearest.tell(page, "not a word that is known here");
    page.paragraph("    ", "help tells what can be typed, help entries every entry's word");
    Outcome::Refused
}
