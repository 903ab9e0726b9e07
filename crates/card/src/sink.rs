//! Where results go: text, JSON, a table, a frame, a comparison. All are sinks, and none of them computes.

use crate::caution::Caution;
use crate::field::Field;
use crate::item::{Item, Part};
use crate::sign_off::SignOff;
use crate::working::Step;

/// Takes what [`crate::plan::plan`] and [`crate::explain::explain`] stream, in the order of the card.
pub trait Sink {
    /// A part of the card begins.
    fn part(&mut self, _part: Part) {}

    /// An entry of the case belongs here; its value is in the draft, or is its default.
    fn entry(&mut self, _field: Field) {}

    /// A computed number.
    fn item(&mut self, item: Item);

    /// Something to know before trusting or using the numbers.
    fn caution(&mut self, caution: Caution);

    /// A line for two people to tick.
    fn sign_off(&mut self, _line: SignOff) {}

    /// An intermediate value.
    fn step(&mut self, _step: Step) {}
}
