//! One line of the conversation, from its first word on.

use crate::around::Around;
use crate::entry;
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::session::Session;
use crate::show;
use crate::verb::{Run, VERBS};
use crate::word::first_word;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::sections;
use ocellus_text::text;

// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
pub(crate) fn run(
    draft: &mut Draft,
    session: &mut Session,
    around: &dyn Around,
    line: &str,
    page: &mut Page,
) -> Outcome {
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
    match (verb, entry::named(word), value) {
        (Some(verb), _, None) => match verb.run {
            Run::OfCase(run) => run(draft, rest, page),
            Run::OfAll(run) => run(session, draft, around, rest, page),
        },
        (_, Some(entry), None) if rest.is_empty() => {
            show::entry(draft, entry, page);
            Outcome::Answered
        }
        (_, Some(entry), value) => entry::enter(draft, word, entry, value.unwrap_or(rest).trim_ascii(), page),
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
    let tables = || sections().filter(|table| !table.is_empty());
    if tables().any(|table| table == inner) {
        return Outcome::Nothing;
    }
    let mut nearest = Nearest::to(inner);
    tables().for_each(|table| nearest.offer(table));
    nearest.tell(page, text!("no table of a case file has this name"));
    Outcome::Refused
}

// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn unknown(word: &str, page: &mut Page) -> Outcome {
    let mut nearest = Nearest::to(word);
    VERBS.iter().for_each(|verb| nearest.offer(verb.word));
    for entry in EntryId::all() {
        nearest.offer(entry.word());
        nearest.offer(entry.key());
    }
    nearest.tell(page, text!("not a word that is known here"));
    page.paragraph("    ", text!("help shows what can be typed, help entries every entry's word"));
    Outcome::Refused
}
