//! What the value of a byte stands for in a folded text: a character of plain ASCII, or a pair of other symbols.

pub(super) const FIRST: u8 = b' ';
const LAST: u8 = b'~';
pub(super) const PLAIN: usize = (LAST - FIRST + 1) as usize;

/// Whether a symbol is a character by itself.
pub(super) const fn is_plain(symbol: u8) -> bool {
    symbol >= FIRST && symbol <= LAST
}

/// The place of a symbol that is a pair among the pairs.
pub(super) const fn place_of(symbol: u8) -> usize {
    if symbol < FIRST { symbol as usize } else { symbol as usize - PLAIN }
}

/// The symbol of a pair.
pub(super) const fn symbol_at(place: usize) -> u8 {
    if place < FIRST as usize { place as u8 } else { (place + PLAIN) as u8 }
}

/// How deep pairs of pairs go, at the most.
pub(super) const DEEPEST: usize = 8;
