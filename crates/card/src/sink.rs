//! Where results go: text, JSON, a table, a frame, a comparison. All are sinks, and none of them computes.

use crate::caution::Caution;
use crate::id::{EntryId, PartId, SignOffId};
use crate::item::Item;
use ocellus_core::working::Steps;

/// Takes what a plan and an explanation stream, in the order of the card; intermediate values by [`Steps`].
pub trait Sink: Steps {
    /// A part of the card begins.
    fn part(&mut self, _part: PartId) {}

    /// An entry of the case belongs here; its value is in the draft, or is its default.
    fn entry(&mut self, _entry: EntryId) {}

    /// An entry that was asked for and is not there.
    fn lacks(&mut self, _entry: EntryId) {}

    /// A computed number.
    fn item(&mut self, item: Item);

    /// Something to know before trusting or using the numbers.
    fn caution(&mut self, caution: Caution);

    /// A line for two people to tick.
    fn sign_off(&mut self, _line: SignOffId) {}
}

/// Takes everything, and does nothing with it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Nowhere;

impl Steps for Nowhere {}

impl Sink for Nowhere {
    fn item(&mut self, _item: Item) {}
    fn caution(&mut self, _caution: Caution) {}
}
