//! Some of the entries, a bit each.

use core::cell::Cell;

/// A set of places among all entries.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct EntrySet([u32; 8]);

impl EntrySet {
    pub(crate) const NONE: EntrySet = EntrySet([0; 8]);

    pub(crate) fn has(&self, place: usize) -> bool {
        self.0.get(place / 32).is_some_and(|bits| bits & 1 << (place % 32) != 0)
    }

    pub(crate) fn put(&mut self, place: usize, is_in: bool) {
        if let Some(bits) = self.0.get_mut(place / 32) {
            let bit = 1 << (place % 32);
            *bits = if is_in { *bits | bit } else { *bits & !bit };
        }
    }
}

/// Entries that are noted one by one, by whoever can only look.
#[derive(Debug, Default)]
pub(crate) struct Noted([Cell<u32>; 8]);

impl Noted {
    pub(crate) fn put(&self, place: usize) {
        if let Some(bits) = self.0.get(place / 32) {
            bits.set(bits.get() | 1 << (place % 32));
        }
    }

    #[inline(never)]
    pub(crate) fn join(&self, other: &EntrySet) {
        self.0.iter().zip(other.0).for_each(|(bits, more)| bits.set(bits.get() | more));
    }

    #[inline(never)]
    pub(crate) fn get(&self) -> EntrySet {
        let mut set = EntrySet::NONE;
        set.0.iter_mut().zip(&self.0).for_each(|(to, from)| *to = from.get());
        set
    }

    /// Notes these instead; gives back those before.
    #[inline(never)]
    pub(crate) fn replace(&self, other: &EntrySet) -> EntrySet {
        let before = self.get();
        self.0.iter().zip(other.0).for_each(|(bits, others)| bits.set(others));
        before
    }
}
