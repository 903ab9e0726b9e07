//! What a symbol of a folded text is, a character of plain ASCII or a pair of other symbols; and how it is written: in one byte,
//! or, where it is a rarer pair, in two.

use crate::pairs::LEADS;

pub(crate) const FIRST: u8 = b' ';
const LAST: u8 = b'~';
/// How many characters there are.
pub(crate) const PLAIN: usize = (LAST - FIRST + 1) as usize;

/// Symbols from here on are pairs, by their places; those before are characters, by their own values.
pub(crate) const PAIR: u16 = 128;

/// How many pairs are written in one byte: the values that are not a character, without those that another byte follows.
const SHORT: usize = 256 - PLAIN - LEADS;

/// How deep pairs of pairs go, at the most.
pub(crate) const DEEPEST: usize = 10;

/// Whether a byte is a character by itself.
pub(crate) const fn is_plain(byte: u8) -> bool {
    byte >= FIRST && byte <= LAST
}

/// Among the values of a byte that are not a character, the one of this number.
const fn other(number: usize) -> u8 {
    if number < FIRST as usize { number as u8 } else { (number + PLAIN) as u8 }
}

/// How a symbol is written, and in how many bytes.
pub(crate) const fn written(symbol: u16) -> ([u8; 2], usize) {
    if symbol < PAIR {
        return ([symbol as u8, 0], 1);
    }
    let place = (symbol - PAIR) as usize;
    match place.checked_sub(SHORT) {
        None => ([other(place), 0], 1),
        Some(rest) => ([other(SHORT + rest / 256), (rest % 256) as u8], 2),
    }
}

/// The first symbol that is written here, and what comes after it.
pub(crate) fn read(bytes: &[u8]) -> Option<(u16, &[u8])> {
    let (first, left) = bytes.split_first()?;
    if is_plain(*first) {
        return Some((u16::from(*first), left));
    }
    let place = usize::from(if *first < FIRST { *first } else { first.wrapping_sub(PLAIN as u8) });
    match place.checked_sub(SHORT) {
        None => Some((PAIR + place as u16, left)),
        Some(lead) => {
            let (second, left) = left.split_first()?;
            Some((PAIR + (SHORT + lead * 256) as u16 + u16::from(*second), left))
        }
    }
}

/// A pair's two symbols, from the three bytes that keep twelve bits of each.
pub(crate) const fn two([first, second, high]: [u8; 3]) -> [u16; 2] {
    [first as u16 | (high as u16 & 15) << 8, second as u16 | (high as u16 >> 4) << 8]
}
