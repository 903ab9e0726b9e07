//! One typed line.

use heapless::Vec;
use zeroize::Zeroize;

/// The most characters of a line.
pub(crate) const CAPACITY: usize = 96;

pub(crate) struct Line {
    kept: Vec<u8, CAPACITY>,
    /// Characters that had no room; taken back first.
    beyond: u32,
}

/// What became of a character.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Room {
    Kept,
    /// The first that had no room where it was needed.
    Full,
    Beyond,
}

impl Line {
    pub(crate) const fn new() -> Line {
        Line { kept: Vec::new(), beyond: 0 }
    }

    pub(crate) fn push(&mut self, byte: u8) -> Room {
        if self.kept.push(byte).is_ok() {
            return Room::Kept;
        }
        let first = self.beyond == 0 && !self.ends_in_comment();
        self.beyond = self.beyond.saturating_add(1);
        if first { Room::Full } else { Room::Beyond }
    }

    /// Takes the last character back; the answer is whether it was one that was kept.
    pub(crate) fn pop(&mut self) -> bool {
        if self.beyond > 0 {
            self.beyond -= 1;
            return false;
        }
        self.kept.pop().is_some()
    }

    pub(crate) fn text(&self) -> &str {
        core::str::from_utf8(&self.kept).unwrap_or("")
    }

    /// Whether more was typed than is kept, and not only of a comment.
    pub(crate) fn is_too_long(&self) -> bool {
        self.beyond > 0 && !self.ends_in_comment()
    }

    fn ends_in_comment(&self) -> bool {
        before_comment(self.text()).len() < self.kept.len()
    }

    /// Forgets the line and leaves nothing of it in memory.
    pub(crate) fn wipe(&mut self) {
        self.kept.zeroize();
        self.kept.clear();
        self.beyond = 0;
    }
}

/// A line up to its comment: from a `#` that does not stand in quotes.
pub(crate) fn before_comment(line: &str) -> &str {
    let (mut quote, mut before) = (None, b' ');
    for (at, byte) in line.bytes().enumerate() {
        match (quote, byte) {
            (None, b'#') => return line.get(..at).unwrap_or(line),
            // an apostrophe within a name opens nothing
            (None, b'"' | b'\'') if matches!(before, b' ' | b'=') => quote = Some(byte),
            (Some(open), byte) if open == byte => quote = None,
            _ => {}
        }
        before = byte;
    }
    line
}
