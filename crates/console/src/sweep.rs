//! One entry from one value to another, and what the chamber and a surge make of it: an illustration; nothing is kept.

use crate::case::case;
use crate::entry::{self, put, split_unit};
use crate::number;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::picked::Picked;
use crate::word::first_word;
use crate::wrong::{self, Refused};
use heapless::Vec;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::error::Error;
use ocellus_card::id::{CautionId, EntryId, ItemId};
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_text::Text;
use ocellus_text::text;

/// Rows of the table.
const ROWS: u8 = 7;

/// The most numbers that are followed.
const MOST: usize = 8;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some((entry, from, to)) = asked(rest, page) else { return Outcome::Refused };
    if case(draft, page).is_none() {
        return Outcome::Answered;
    }
    firsts().iter().for_each(|code| page.line(code.text()));
    heading(entry, page);
    let kept = draft.number(entry);
    for row in 0..ROWS {
        one(draft, entry, from + (to - from) * f64::from(row) / f64::from(ROWS - 1), page);
    }
    put(draft, entry, kept);
    page.line(text!(
        "Read the cautions of the card first: plan. An empty place: the chamber collapsed, or an entry is missing."
    ));
    Outcome::Answered
}

/// What must be known before these numbers are read.
fn firsts() -> Vec<CautionId, MOST> {
    let mut firsts = Vec::new();
    for first in ItemId::swept().flat_map(|(what, _)| what.part().first()) {
        if !firsts.contains(first) {
            // one that has no room stands on the card
            let _ = firsts.push(*first);
        }
    }
    firsts
}

/// The entry, and both ends; what is wrong with them is printed.
#[inline(never)]
fn asked(rest: &str, page: &mut Page) -> Option<(EntryId, f64, f64)> {
    let (name, ends) = first_word(rest);
    let (from, to) = first_word(ends);
    let entry = entry::named(name).filter(|entry| matches!(entry.kind(), Kind::Number(..)));
    let Some(entry) = entry.filter(|_| !to.is_empty()) else {
        page.text(if entry.is_none() && !name.is_empty() { name } else { "" });
        page.text(if entry.is_none() && !name.is_empty() {
            text!(": no entry that is a number. ")
        } else {
            Text::EMPTY
        });
        page.line(text!("sweep WORD FROM TO, as in sweep nucleus 100 500."));
        return None;
    };
    Some((entry, end(entry, from, page)?, end(entry, to, page)?))
}

/// One of both ends, with a unit or without.
fn end(entry: EntryId, typed: &str, page: &mut Page) -> Option<f64> {
    let (digits, unit) = split_unit(typed);
    let wrong = match parse(digits) {
        Ok(parsed) if entry::is_unit(entry, unit) => match entry.check(parsed.value) {
            Ok(()) => return Some(parsed.value),
            Err(error) => Refused::Entry(error),
        },
        Ok(parsed) => Refused::Unit(unit, parsed.value),
        Err(wrong) => Refused::Entry(Error::of(wrong.into(), entry)),
    };
    wrong::tell(&wrong, entry.word(), entry, typed, page);
    None
}

fn heading(entry: EntryId, page: &mut Page) {
    page.text(entry.what());
    page.line(":");
    page.raw("  ");
    page.text(if entry.unit().is_empty() { "value" } else { entry.unit() });
    page.to(16);
    ItemId::swept().for_each(|(_, name)| page.cell_of(11, name));
    page.end();
    page.to(16);
    ItemId::swept().for_each(|(what, _)| page.cell(11, what.unit()));
    page.end();
}

#[inline(never)]
fn one(draft: &mut Draft, entry: EntryId, value: f64, page: &mut Page) {
    let Kind::Number(places, _) = entry.kind() else { return };
    // as it would be typed
    let typed = fixed(value, places, Sign::Minus);
    let parsed = typed.as_ref().and_then(|text| parse(text.as_str()).ok());
    put(draft, entry, parsed.map(|parsed| parsed.value));
    let wanted: Vec<ItemId, MOST> = ItemId::swept().map(|(what, _)| what).take(MOST).collect();
    let mut found = [None; MOST];
    let mut picked = Picked::of(&wanted, &mut found);
    if let Some(case) = Case::check(draft, &mut |_| {}) {
        case.plan(&mut picked);
    }
    page.raw("  ");
    page.text(typed.as_ref().map_or("", |text| text.as_str()));
    page.to(16);
    for (what, _) in ItemId::swept() {
        let text = picked.get(what).and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
        page.cell(11, text.as_ref().map_or("-", |text| text.as_str()));
    }
    page.end();
}
