//! What is wrong with an entry, said so that it can be put right: what was typed, and what would be accepted.

use crate::page::{Page, Said};
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_text::Text;
use ocellus_text::text;

/// Why a typed value was not taken.
pub(crate) enum Refused<'a> {
    /// The entry does not take it.
    Entry(Error),
    /// A unit that this entry is not in.
    Unit(&'a str, f64),
    /// A number in quotes.
    Quoted,
    /// Quotes that do not match, or hold what they cannot.
    Quotes,
    /// No value at all.
    Nothing,
}

/// Says what is wrong with a typed value.
pub(crate) fn tell(refused: &Refused, name: impl Said, entry: EntryId, typed: &str, page: &mut Page) {
    page.text(name);
    page.text(" ");
    page.text(typed);
    page.text(": ");
    match refused {
        Refused::Entry(error) => what(error, page),
        Refused::Unit(unit, value) => {
            match entry.unit() {
                "" => page.text(text!("this entry has no unit")),
                own => {
                    page.text(text!("this entry is in "));
                    page.text(own);
                }
            }
            page.text(", not ");
            page.text(*unit);
            hint(entry, *value, page);
        }
        Refused::Quoted => page.text(text!("a number in quotes; write the number without quotes")),
        Refused::Quotes => page.text(text!("quotes that do not match, or a backslash in them")),
        Refused::Nothing => page.text(text!("no value after the word")),
    }
    page.end();
    page.raw("    accepted: ");
    page.hang();
    accepted(entry, page);
    why(entry, page);
    page.end();
}

fn what(error: &Error, page: &mut Page) {
    page.text(match error.wrong {
        Wrong::WrongUnit => Wrong::OutOfRange.text(),
        Wrong::Disagree => text!("does not agree with another entry"),
        wrong => wrong.text(),
    });
    if let Some(value) = error.value {
        hint(error.entry, value, page);
    }
}

fn hint(entry: EntryId, value: f64, page: &mut Page) {
    if let Some(hint) = entry.looks_like(value) {
        page.text(text!("; it looks like "));
        page.text(hint);
    }
}

/// What a field accepts.
pub(crate) fn accepted(entry: EntryId, page: &mut Page) {
    match entry.kind() {
        Kind::Number(places, bounds) => {
            page.limit(bounds.min, entry.signed());
            page.text(" to ");
            page.limit(bounds.max, entry.signed());
            page.tied(entry.unit());
            match places {
                0 => page.text(text!(", a whole number")),
                1 => page.text(text!(", at most 1 decimal")),
                _ => {
                    page.text(text!(", at most "));
                    page.count(usize::from(places));
                    page.text(text!(" decimals"));
                }
            }
        }
        Kind::Choice(words) => {
            for (place, word) in words.iter().enumerate() {
                page.text(if place == 0 { "" } else { ", " });
                page.text(*word);
            }
        }
        Kind::Date => page.text(text!("a date as YYYY-MM-DD")),
        Kind::Name => page.text(text!("a name of 1 to 24 printable ASCII characters")),
    }
}

/// Why a range ends where it does.
pub(crate) fn why(entry: EntryId, page: &mut Page) {
    if let Kind::Number(_, bounds) = entry.kind() {
        page.text(" (");
        page.text(bounds.why);
        page.text(")");
    }
}

/// A line about what keeps the entries from being a case.
pub(crate) fn of_case(error: &Error, draft: &Draft, page: &mut Page) {
    let entry = error.entry;
    page.word(entry.word());
    page.text(entry.what());
    match error.wrong {
        Wrong::Missing | Wrong::Incomplete => {
            page.text(": ");
            accepted(entry, page);
        }
        _ => {
            if draft.has(entry) {
                page.text(" ");
                page.value(draft, entry);
            }
            page.text(": ");
            what(error, page);
        }
    }
    let because = error.because(draft);
    match (error.accepts(), error.wrong) {
        (Some((text, entries)), Wrong::Missing) => {
            page.text("; ");
            filled(text, entries, page);
        }
        (Some((text, entries)), _) => {
            page.text(text!("; accepted: "));
            filled(text, entries, page);
        }
        (None, Wrong::Incomplete | Wrong::Twice) => {
            page.text(if error.wrong == Wrong::Twice { text!("; the other is ") } else { text!("; needed with ") });
            match because {
                Some(other) => page.text(other.word()),
                None => page.text(text!("an entry that was made")),
            }
        }
        _ => {}
    }
    page.end();
}

/// A text in which each `{}` stands for the word of an entry.
fn filled(text: Text, entries: &[EntryId], page: &mut Page) {
    let mut entries = entries.iter();
    for byte in text.bytes() {
        match byte {
            b'{' => entries.next().into_iter().for_each(|entry| page.text(entry.word())),
            b'}' => {}
            byte => page.byte(byte),
        }
    }
}
