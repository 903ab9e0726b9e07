//! Some of the entries, a bit each.

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

    pub(crate) fn join(&mut self, other: &EntrySet) {
        self.0.iter_mut().zip(other.0).for_each(|(bits, more)| *bits |= more);
    }
}
