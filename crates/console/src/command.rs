//! One line of the conversation, from its first word on.

use crate::entry;
use crate::nearest::Nearest;
use crate::page::Page;
use crate::show;
use crate::verb::VERBS;
use crate::wrong;
use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Section};

/// What became of a line.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// Nothing to do.
    Nothing,
    /// So many entries were made, from this field on.
    Entered(Field, u8),
    /// It was not understood, and nothing of it was used.
    Refused,
    /// It was answered.
    Told,
    /// Two identifiers are to be asked for.
    Identify,
}

// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
pub(crate) fn run(draft: &mut Draft, line: &str, page: &mut Page) -> Outcome {
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
        (Some(verb), _, None) => (verb.run)(draft, rest, page),
        (_, Some(field), None) if rest.is_empty() => {
            show::entry(draft, field, page);
            Outcome::Told
        }
        (_, Some(field), value) => entry::enter(draft, word, field, value.unwrap_or(rest).trim_ascii(), page),
        (..) => unknown(word, page),
    }
}

/// Up to the first space or equals sign, and what follows it.
pub(crate) fn first_word(line: &str) -> (&str, &str) {
    let end = line.bytes().position(|byte| matches!(byte, b' ' | b'='));
    let (word, rest) = end.and_then(|end| line.split_at_checked(end)).unwrap_or((line, ""));
    (word, rest.trim_ascii())
}

/// Whether two words are the same, capitals or not, with a space or an underscore.
pub(crate) fn same_word(known: &str, typed: &str) -> bool {
    let plain = |byte: u8| if byte == b' ' { b'_' } else { byte.to_ascii_lowercase() };
    known.bytes().map(plain).eq(typed.bytes().map(plain))
}

/// Every table of a case file, in order.
pub(crate) fn sections() -> impl Iterator<Item = Section> {
    let mut last = Section::Case;
    Field::ALL.iter().map(|field| field.section()).filter(move |section| {
        let fresh = *section != last;
        last = *section;
        fresh
    })
}

/// The heading of a table in a case file: it is known, or a file of something else is being pasted.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn heading(line: &str, page: &mut Page) -> Outcome {
    let inner = match line.as_bytes() {
        [b'[', .., b']'] => line.get(1..line.len() - 1).unwrap_or(line).trim_ascii(),
        _ => line,
    };
    if sections().any(|section| section.word() == inner) {
        return Outcome::Nothing;
    }
    let mut nearest = Nearest::to(inner);
    sections().for_each(|section| nearest.offer(section.word()));
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

/// The case of the entries; where they are none, what keeps them from it is told.
pub(crate) fn case<'a>(draft: &'a Draft, page: &mut Page) -> Option<Case<'a>> {
    needs(draft, "These entries are no case yet, and nothing is computed. Needed:", page)
}

/// The case of the entries, or a heading and what they lack below it.
pub(crate) fn needs<'a>(draft: &'a Draft, heading: &str, page: &mut Page) -> Option<Case<'a>> {
    let mut told = false;
    Case::check(draft, &mut |error| {
        if !core::mem::replace(&mut told, true) {
            page.line(heading);
        }
        wrong::of_case(&error, draft, page);
    })
}
