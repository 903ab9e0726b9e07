//! One entry from here to there, and what the chamber and a surge make of it: an illustration; nothing is kept.

use crate::case::sheet;
use crate::draw::Picked;
use crate::entry::{self, put, split_unit};
use crate::number;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::word::first_word;
use crate::wrong::{self, Wrong};
use ocellus_core::caution::Code;
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_core::draft::Draft;
use ocellus_core::error::Error;
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::What;
use ocellus_core::sheet::Sheet;

/// Rows of the table.
const ROWS: u8 = 7;

/// What is told in each, and its heading.
const COLUMNS: [(What, &str); 5] = [
    (What::Head, "no flow"),
    (What::Chamber, "chamber"),
    (What::SurgeTrough, "least"),
    (What::SurgeRecovered, "recovers"),
    (What::SurgeVolume, "loses"),
];

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some((field, from, to)) = asked(rest, page) else { return Outcome::Refused };
    if sheet(draft, page).is_none() {
        return Outcome::Told;
    }
    page.line(Code::Illustration.text());
    heading(field, page);
    let kept = draft.number(field);
    for row in 0..ROWS {
        one(draft, field, from + (to - from) * f64::from(row) / f64::from(ROWS - 1), page);
    }
    put(draft, field, kept);
    page.line("Not without its cautions: plan surge. Where nothing stands, the chamber collapsed, or an entry lacks.");
    Outcome::Told
}

/// The entry, and both ends; what is wrong with them is told.
#[inline(never)]
fn asked(rest: &str, page: &mut Page) -> Option<(Field, f64, f64)> {
    let (name, ends) = first_word(rest);
    let (from, to) = first_word(ends);
    let field = entry::field(name).filter(|field| matches!(field.kind(), Kind::Number(..)));
    let Some(field) = field.filter(|_| !to.is_empty()) else {
        page.text(if field.is_none() && !name.is_empty() { name } else { "" });
        page.text(if field.is_none() && !name.is_empty() { ": no entry that is a number. " } else { "" });
        page.line("sweep WORD FROM TO, as in sweep nucleus 100 500.");
        return None;
    };
    Some((field, end(field, from, page)?, end(field, to, page)?))
}

/// One of both ends, with a unit or without.
fn end(field: Field, typed: &str, page: &mut Page) -> Option<f64> {
    let (digits, unit) = split_unit(typed);
    let wrong = match parse(digits) {
        Ok(parsed) if entry::is_unit(field, unit) => match field.check(parsed.value) {
            Ok(()) => return Some(parsed.value),
            Err(error) => Wrong::Entry(error),
        },
        Ok(parsed) => Wrong::Unit(unit, parsed.value),
        Err(code) => Wrong::Entry(Error { code, field: Some(field), value: None, bounds: None }),
    };
    wrong::tell(&wrong, field.word(), field, typed, page);
    None
}

fn heading(field: Field, page: &mut Page) {
    page.text(field.what());
    page.line(":");
    page.raw("  ");
    page.text(if field.unit().is_empty() { "value" } else { field.unit() });
    page.to(16);
    COLUMNS.iter().for_each(|(_, name)| page.cell(11, name));
    page.end();
    page.to(16);
    COLUMNS.iter().for_each(|(what, _)| page.cell(11, what.unit()));
    page.end();
}

#[inline(never)]
fn one(draft: &mut Draft, field: Field, value: f64, page: &mut Page) {
    let Kind::Number(places, _) = field.kind() else { return };
    // as it would be typed
    let typed = fixed(value, places, Sign::Minus);
    let parsed = typed.as_ref().and_then(|text| parse(text.as_str()).ok());
    put(draft, field, parsed.map(|parsed| parsed.value));
    let mut picked = Picked([None; COLUMNS.len()], &COLUMNS.map(|(what, _)| what));
    if let Some(sheet) = Sheet::check(draft, &mut |_| {}) {
        sheet.plan(&mut picked);
    }
    page.raw("  ");
    page.text(typed.as_ref().map_or("", |text| text.as_str()));
    page.to(16);
    for (what, _) in COLUMNS {
        let text = picked.get(what).and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
        page.cell(11, text.as_ref().map_or("-", |text| text.as_str()));
    }
    page.end();
}
