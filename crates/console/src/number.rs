//! Numbers on a page: each rounded once, by the core's rule.

use crate::page::Page;
use ocellus_core::decimal::{Sign, Text, fixed, places_for};
use ocellus_core::draft::{Draft, with_text};
use ocellus_core::field::Field;
use ocellus_core::item::{Item, What};
use ocellus_core::words;

/// Significant digits where a number is for reckoning on.
const SIGNIFICANT: u8 = 8;

/// A unit as it is printed: a pure number has none.
pub(crate) fn unit(unit: &'static str) -> &'static str {
    if unit == "1" { "" } else { unit }
}

/// An item's number as it is printed, without its unit.
pub(crate) fn of(item: &Item) -> Option<Text> {
    fixed(item.value, item.what.places(), sign(item.what.signed()))
}

pub(crate) fn sign(always: bool) -> Sign {
    if always { Sign::Always } else { Sign::Minus }
}

/// Whether an item is a yes or a no.
pub(crate) fn is_answer(what: What) -> bool {
    matches!(what, What::Guided | What::Compared)
}

pub(crate) fn answer(value: f64) -> &'static str {
    if value == 1.0 { "yes" } else { "no" }
}

impl Page<'_> {
    pub(crate) fn number(&mut self, value: f64, places: u8, signed: bool, of_unit: &'static str) {
        match fixed(value, places, sign(signed)) {
            Some(text) => self.text(text.as_str()),
            None => self.text("(too large to print)"),
        }
        self.tied(unit(of_unit));
    }

    pub(crate) fn item(&mut self, item: &Item) {
        if is_answer(item.what) {
            self.text(answer(item.value));
        } else {
            self.number(item.value, item.what.places(), item.what.signed(), item.what.unit());
        }
    }

    /// With so many digits that one can reckon on from it by hand.
    pub(crate) fn exact(&mut self, value: f64, of_unit: &'static str) {
        self.number(value, places_for(value, SIGNIFICANT), of_unit == "D", of_unit);
    }

    /// A limit, without decimals that say nothing.
    pub(crate) fn limit(&mut self, value: f64, signed: bool) {
        let Some(text) = fixed(value, 4, sign(signed)) else { return };
        let mut digits = text.as_str();
        while let [.., b'0'] = digits.as_bytes() {
            digits = digits.get(..digits.len() - 1).unwrap_or("");
        }
        self.text(digits.strip_suffix(".").unwrap_or(digits));
    }

    pub(crate) fn count(&mut self, count: usize) {
        self.number(count as f64, 0, false, "");
    }

    /// An entry's value with its unit, or its default's; nothing where there is neither.
    pub(crate) fn value(&mut self, draft: &Draft, field: Field) {
        if let Some(name) = draft.name(field) {
            return self.text(name.as_str());
        }
        if let Some(number) = draft.number(field).or(field.default()) {
            self.field(field, number);
        }
    }

    /// A value of a field with its unit; words without underscores.
    pub(crate) fn field(&mut self, field: Field, value: f64) {
        with_text(field, value, |text| {
            for byte in text.bytes() {
                self.byte(if byte == b'_' { b' ' } else { byte });
            }
        });
        self.tied(field.unit());
    }

    /// A power or target in words.
    pub(crate) fn spoken(&mut self, value: f64) {
        words::number(value, 2, &mut |word| {
            self.text(word);
            self.text(" ");
        });
        self.text("dioptres");
    }
}
