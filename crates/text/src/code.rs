//! How the symbols of a folded text are written: in the fewer bits the more often they are used, as Huffman 1952 found, with the
//! codes of one length numbered on from those of the length before, so that how many there are of each length is all that has to
//! be kept.

use crate::symbols::{COUNTS, SYMBOLS};

pub(crate) const FIRST: u8 = b' ';
const LAST: u8 = b'~';
/// How many characters there are.
pub(crate) const PLAIN: usize = (LAST - FIRST + 1) as usize;

/// How deep symbols of symbols go, at the most.
pub(crate) const DEEPEST: usize = 12;

/// What a symbol stands for.
pub(crate) enum Meaning {
    Character(u8),
    /// Two other symbols, one after the other.
    Pair(u16, u16),
}

/// Three bytes keep twelve bits of each of the two; behind a character stands a symbol that is none.
pub(crate) const fn meaning([first, second, high]: [u8; 3]) -> Meaning {
    match (first as u16 | (high as u16 & 15) << 8, second as u16 | (high as u16 >> 4) << 8) {
        (_, 0xfff) => Meaning::Character(first),
        (first, second) => Meaning::Pair(first, second),
    }
}

/// Whether a byte is a character by itself.
pub(crate) const fn is_plain(byte: u8) -> bool {
    byte >= FIRST && byte <= LAST
}

/// The symbol whose code begins at a bit of a text, and the bit behind it. A last byte is filled with ones: they begin the
/// longest code, and are too few for it.
pub(crate) fn read(text: &[u8], mut at: u16) -> Option<(u16, u16)> {
    let (mut code, mut least, mut symbol) = (0u32, 0u32, 0u16);
    for &count in &COUNTS {
        let byte = text.get(usize::from(at / 8))?;
        code = code << 1 | u32::from(byte >> (7 - at % 8) & 1);
        at += 1;
        match code.checked_sub(least) {
            Some(number) if number < u32::from(count) => return Some((symbol + number as u16, at)),
            _ => (symbol, least) = (symbol + count, (least + u32::from(count)) << 1),
        }
    }
    None
}

/// The code of a symbol, and how many bits it has: none where the symbol is only a part of others.
#[expect(clippy::indexing_slicing, reason = "it runs while the program is compiled, and never after")]
pub(crate) const fn code(symbol: usize) -> (u32, u8) {
    let (mut least, mut first, mut bits) = (0, 0, 0);
    while bits < COUNTS.len() {
        let count = COUNTS[bits] as usize;
        bits += 1;
        if symbol < first + count {
            return (least + (symbol - first) as u32, bits as u8);
        }
        (first, least) = (first + count, (least + count as u32) << 1);
    }
    (0, 0)
}

const _: () = assert!(COUNTS.len() > 8 && SYMBOLS.len() < 0xfff);
