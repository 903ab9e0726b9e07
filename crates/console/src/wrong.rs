//! What is wrong with an entry, told so that it can be put right: what was typed, and what would be accepted.

use crate::page::Page;
use ocellus_core::case::because;
use ocellus_core::draft::Draft;
use ocellus_core::error::{Code, Error};
use ocellus_core::eye::misread::looks_like;
use ocellus_core::field::{Field, Kind};

/// Why a typed value was not taken.
pub(crate) enum Wrong<'a> {
    /// The core says so.
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

/// Tells what is wrong with a typed value.
pub(crate) fn tell(wrong: &Wrong, name: &str, field: Field, typed: &str, page: &mut Page) {
    page.text(name);
    page.text(" ");
    page.text(typed);
    page.text(": ");
    match wrong {
        Wrong::Entry(error) => what(error, page),
        Wrong::Unit(unit, value) => {
            match field.unit() {
                "" => page.text("this entry has no unit"),
                own => {
                    page.text("this entry is in ");
                    page.text(own);
                }
            }
            page.text(", not ");
            page.text(unit);
            hint(field, *value, page);
        }
        Wrong::Quoted => page.text("a number in quotes; write the number without quotes"),
        Wrong::Quotes => page.text("quotes that do not match, or a backslash in them"),
        Wrong::Nothing => page.text("no value after the word"),
    }
    page.end();
    page.raw("    accepted: ");
    page.hang();
    accepted(field, page);
    why(field, page);
    page.end();
}

fn what(error: &Error, page: &mut Page) {
    page.text(match error.code {
        Code::WrongUnit => Code::OutOfRange.text(),
        Code::Disagree => "does not agree with another entry",
        code => code.text(),
    });
    if let Some((field, value)) = error.field.zip(error.value) {
        hint(field, value, page);
    }
}

fn hint(field: Field, value: f64, page: &mut Page) {
    if let Some(hint) = looks_like(field, value) {
        page.text("; it looks like ");
        page.text(hint);
    }
}

/// What a field accepts.
pub(crate) fn accepted(field: Field, page: &mut Page) {
    match field.kind() {
        Kind::Number(places, bounds) => {
            page.limit(bounds.min, field.signed());
            page.text(" to ");
            page.limit(bounds.max, field.signed());
            page.tied(field.unit());
            match places {
                0 => page.text(", a whole number"),
                1 => page.text(", at most 1 decimal"),
                _ => {
                    page.text(", at most ");
                    page.count(usize::from(places));
                    page.text(" decimals");
                }
            }
        }
        Kind::Choice(words) => {
            for (place, word) in words.iter().enumerate() {
                page.text(if place == 0 { "" } else { ", " });
                page.text(word);
            }
        }
        Kind::Date => page.text("a date as YYYY-MM-DD"),
        Kind::Name => page.text("a name of 1 to 24 printable ASCII characters"),
    }
}

/// Why a range ends where it does.
pub(crate) fn why(field: Field, page: &mut Page) {
    if let Kind::Number(_, bounds) = field.kind() {
        page.text(" (");
        page.text(bounds.why);
        page.text(")");
    }
}

/// A line about what keeps the entries from being a case.
pub(crate) fn of_case(error: &Error, draft: &Draft, page: &mut Page) {
    let Some(field) = error.field else { return page.line(error.code.text()) };
    page.word(field.word());
    page.text(field.what());
    match error.code {
        Code::Missing | Code::Incomplete => {
            page.text(": ");
            accepted(field, page);
        }
        _ => {
            if draft.has(field) {
                page.text(" ");
                page.value(draft, field);
            }
            page.text(": ");
            what(error, page);
        }
    }
    let wanted = match (error.code, field) {
        (Code::Missing, Field::K1 | Field::K2) => "; or r1 and r2",
        (Code::Incomplete, _) => "; needed with ",
        (Code::Disagree, Field::R1) => "; accepted: the radius of k1 at the index, or one of the two alone",
        (Code::Disagree, Field::R2) => "; accepted: the radius of k2 at the index, or one of the two alone",
        (Code::Disagree, Field::BiometryDate) => "; accepted: not later than date",
        (Code::Disagree, Field::LensMost) => "; accepted: not below least",
        (Code::Disagree, Field::LensLength) => "; accepted: not below optic",
        (Code::Twice, Field::SiteWord | Field::ClockHour) => {
            "; accepted: one of site, siteword, and clock with clockseen"
        }
        (Code::Twice, Field::Centroid) => "; accepted: flattening by each cut, or the centroid of all",
        (Code::Twice, Field::BackFrom) => "; accepted: none, since a total power has the back in it",
        (Code::Twice, Field::Density) => "; accepted: densityfrom entered, or none",
        (Code::Twice, Field::Viscosity) => "; accepted: viscfrom at_shear, or none",
        (Code::Twice, _) => "; the other is ",
        _ => "",
    };
    page.text(wanted);
    match because(draft, error.code, field) {
        Some(other) if wanted.ends_with(' ') => page.text(other.word()),
        _ if wanted.ends_with(' ') => page.text("an entry that was made"),
        _ => {}
    }
    page.end();
}
