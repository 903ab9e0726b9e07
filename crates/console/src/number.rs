//! Numbers on a page: each rounded once, by one rule.

use crate::page::Page;
use ocellus_card::draft::{Draft, with_text};
use ocellus_card::id::EntryId;
use ocellus_card::item::{Form, Item};
use ocellus_card::words;
use ocellus_core::decimal::{Sign, Text, fixed, places_for};

/// Significant digits where a number is for computing on from it.
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

/// The word that a person reads in the place of a number, where it is one.
pub(crate) fn word(form: Form, value: f64) -> Option<&'static str> {
    match form {
        Form::YesNo => Some(if value == 1.0 { "yes" } else { "no" }),
        Form::Word(words) => words.get(value as usize).copied(),
        Form::Number | Form::Site => None,
    }
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
        match word(item.what.form(), item.value) {
            Some(word) => self.spaced(word),
            None => self.number(item.value, item.what.places(), item.what.signed(), item.what.unit()),
        }
    }

    /// A word without underscores.
    fn spaced(&mut self, word: &str) {
        word.bytes().for_each(|byte| self.byte(if byte == b'_' { b' ' } else { byte }));
    }

    /// With so many digits that one can compute on from it by hand.
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
    pub(crate) fn value(&mut self, draft: &Draft, entry: impl Into<EntryId>) {
        let entry = entry.into();
        if let Some(name) = draft.name(entry) {
            return self.text(name.as_str());
        }
        if let Some(number) = draft.number(entry).or(entry.default()) {
            self.entry(entry, number);
        }
    }

    /// A value of an entry with its unit; words without underscores.
    pub(crate) fn entry(&mut self, entry: EntryId, value: f64) {
        with_text(entry, value, |text| self.spaced(text));
        self.tied(entry.unit());
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
