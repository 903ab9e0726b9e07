//! The texts of a table, each folded behind a byte that says how long it is.

use crate::Text;
use crate::fold::Folded;

/// The most bytes of all texts of one kind together.
const POOL: usize = 40_000;

/// How many texts there are to each place that is kept: from there on they are counted.
pub const STRIDE: usize = 8;

/// The texts of a table, end to end.
pub struct Pool<const COUNT: usize> {
    bytes: [u8; POOL],
    /// How many bytes they take.
    pub length: usize,
    /// Where every eighth begins.
    pub starts: [u16; COUNT],
}

impl<const COUNT: usize> Pool<COUNT> {
    /// No text.
    pub const EMPTY: Self = Pool { bytes: [0; POOL], length: 0, starts: [0; COUNT] };

    /// Adds a text at its place, after the one before it.
    #[expect(clippy::indexing_slicing, reason = "it runs while the program is compiled, and never after")]
    pub const fn add(&mut self, place: usize, text: &str) {
        let folded = Folded::of(text);
        assert!(folded.size() < 256 && self.length <= u16::MAX as usize);
        if place.is_multiple_of(STRIDE) {
            self.starts[place / STRIDE] = self.length as u16;
        }
        self.bytes[self.length] = folded.size() as u8;
        self.length = folded.write(&mut self.bytes, self.length + 1);
    }

    /// All of them, without the room that is left.
    #[expect(clippy::indexing_slicing, reason = "it runs while the program is compiled, and never after")]
    pub const fn trim<const LENGTH: usize>(&self) -> [u8; LENGTH] {
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
pub fn find(bytes: &'static [u8], starts: &'static [u16], place: usize) -> Text {
    let start = starts.get(place / STRIDE).map_or(usize::MAX, |start| usize::from(*start));
    let mut rest = bytes.get(start..).unwrap_or(&[]);
    for _ in 0..place % STRIDE {
        rest = split(rest).1;
    }
    Text(split(rest).0)
}

/// The first text, and those after it.
fn split(bytes: &'static [u8]) -> (&'static [u8], &'static [u8]) {
    let length = bytes.first().map_or(0, |length| usize::from(*length));
    bytes.get(1..).and_then(|rest| rest.split_at_checked(length)).unwrap_or((&[], &[]))
}
