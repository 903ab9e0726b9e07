//! A pressure in other units.

use crate::entry::split_unit;
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::word::first_word;
use ocellus_card::draft::Draft;
use ocellus_card::error::Wrong;
use ocellus_core::decimal;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_text::text;

pub(crate) fn run(_draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let (digits, units) = split_unit(rest);
    let value = match decimal::parse(digits) {
        Ok(parsed) => parsed.value,
        Err(code) => {
            page.text(digits);
            page.text(if digits.is_empty() { "" } else { ": " });
            page.line(if digits.is_empty() { text!("No number was typed.") } else { Wrong::from(code).text() });
            usage(page);
            return Outcome::Refused;
        }
    };
    let (from, to) = first_word(units);
    let to =
        if to.get(..3).is_some_and(|word| word.eq_ignore_ascii_case("to ")) { to.get(3..).unwrap_or("") } else { to };
    let Some(from) = unit(from, page) else { return Outcome::Refused };
    let wanted = if to.trim_ascii().is_empty() { None } else { Some(unit(to.trim_ascii(), page)) };
    match wanted {
        Some(None) => return Outcome::Refused,
        Some(Some(to)) => line(digits, value, from, to, page),
        None => Unit::ALL.iter().filter(|to| **to != from).for_each(|to| line(digits, value, from, *to, page)),
    }
    Outcome::Answered
}

fn line(digits: &str, value: f64, from: Unit, to: Unit, page: &mut Page) {
    page.raw("  ");
    page.text(digits);
    page.tied(from.word());
    page.text(" = ");
    let converted = convert(value, from, to);
    page.number(converted, to.places(), false, to.word());
    // as one reads it, and to compute on from
    page.text(" (");
    page.exact(converted, "");
    page.line(")");
}

/// The unit of this name; where there is none, those that there are.
fn unit(word: &str, page: &mut Page) -> Option<Unit> {
    let found = Unit::ALL.iter().copied().find(|unit| unit.word().eq_ignore_ascii_case(word));
    if found.is_none() {
        if word.is_empty() {
            page.line(text!("No unit was typed."));
        } else {
            let mut nearest = Nearest::to(word);
            Unit::ALL.iter().for_each(|unit| nearest.offer(unit.word()));
            nearest.tell(page, "not a unit of pressure");
        }
        usage(page);
    }
    found
}

fn usage(page: &mut Page) {
    page.raw("    accepted: ");
    page.hang();
    page.text(text!("convert 500 mmHg kPa, or convert 500 mmHg for all of"));
    units(page);
}

pub(crate) fn units(page: &mut Page) {
    page.words(Unit::ALL.iter().map(|unit| unit.word()));
}
