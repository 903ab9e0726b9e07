//! The texts of a table, folded and end to end.

use super::Text;
use super::fold::ways;

/// The most bytes of all texts of one kind together.
const POOL: usize = 40_000;

/// The texts of a table, folded and end to end.
pub(crate) struct Pool<const COUNT: usize> {
    bytes: [u8; POOL],
    pub(crate) length: usize,
    pub(crate) ends: [u16; COUNT],
}

impl<const COUNT: usize> Pool<COUNT> {
    pub(crate) const EMPTY: Self = Pool { bytes: [0; POOL], length: 0, ends: [0; COUNT] };

    /// Adds a text at its place, after the one before it.
    pub(crate) const fn add(&mut self, place: usize, text: &str) {
        let text = text.as_bytes();
        let (best, _) = ways(text);
        let mut from = 0;
        while from < text.len() {
            self.bytes[self.length] = best[from].0;
            self.length += 1;
            from += best[from].1 as usize;
        }
        assert!(self.length <= u16::MAX as usize);
        self.ends[place] = self.length as u16;
    }

    /// All of them, without the room that is left.
    pub(crate) const fn trim<const LENGTH: usize>(&self) -> [u8; LENGTH] {
        let (mut out, mut place) = ([0; LENGTH], 0);
        while place < LENGTH {
            out[place] = self.bytes[place];
            place += 1;
        }
        out
    }
}

/// The text at a place of a pool; empty beyond the last.
#[inline(never)]
pub(crate) fn find(bytes: &'static [u8], ends: &'static [u16], place: usize) -> Text {
    let end = ends.get(place).map_or(0, |end| usize::from(*end));
    let start = place.checked_sub(1).and_then(|before| ends.get(before)).map_or(0, |start| usize::from(*start));
    Text(bytes.get(start..end).unwrap_or(&[]))
}
