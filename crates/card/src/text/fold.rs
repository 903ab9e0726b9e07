//! How a text is folded, while the program is compiled: to the fewest symbols that unfold to it.

#![expect(clippy::indexing_slicing, reason = "it runs while the program is compiled, and never after")]

use super::pairs::PAIRS;
use super::{DEEPEST, Text};

const FIRST: u8 = b' ';
const LAST: u8 = b'~';
const PLAIN: usize = (LAST - FIRST + 1) as usize;

/// Whether a symbol is a character by itself.
pub(super) const fn is_plain(symbol: u8) -> bool {
    symbol >= FIRST && symbol <= LAST
}

/// The place of a symbol that is a pair among the pairs.
pub(super) const fn place_of(symbol: u8) -> usize {
    if symbol < FIRST { symbol as usize } else { symbol as usize - PLAIN }
}

/// The symbol of a pair.
const fn symbol_at(place: usize) -> u8 {
    if place < FIRST as usize { place as u8 } else { (place + PLAIN) as u8 }
}

/// The most characters that one symbol stands for, and the nodes of the tree of all of them.
const LONGEST: usize = 24;
const NODES: usize = 900;

/// Writes what a symbol stands for; the answer is where it ends.
const fn unfold(symbol: u8, into: &mut [u8; LONGEST], at: usize, depth: usize) -> usize {
    assert!(depth <= DEEPEST);
    if is_plain(symbol) {
        into[at] = symbol;
        return at + 1;
    }
    let [first, second] = PAIRS[place_of(symbol)];
    let at = unfold(first, into, at, depth + 1);
    unfold(second, into, at, depth + 1)
}

/// Every symbol by the characters that it stands for.
struct Tree {
    next: [[u16; PLAIN]; NODES],
    /// The symbol that ends at a node, plus 1; 0 for none.
    symbol: [u16; NODES],
}

const TREE: &Tree = &{
    let mut tree = Tree { next: [[0; PLAIN]; NODES], symbol: [0; NODES] };
    let (mut nodes, mut nth) = (1, 0);
    while nth < PLAIN + PAIRS.len() {
        let symbol = if nth < PLAIN { FIRST + nth as u8 } else { symbol_at(nth - PLAIN) };
        let mut text = [0; LONGEST];
        let length = unfold(symbol, &mut text, 0, 0);
        let (mut node, mut place) = (0, 0);
        while place < length {
            let character = (text[place] - FIRST) as usize;
            if tree.next[node][character] == 0 {
                tree.next[node][character] = nodes as u16;
                nodes += 1;
            }
            node = tree.next[node][character] as usize;
            place += 1;
        }
        tree.symbol[node] = symbol as u16 + 1;
        nth += 1;
    }
    tree
};

/// The longest text that is folded.
const MOST: usize = 600;

/// For each place of a text, the symbol that begins the shortest way to its end, and how many characters it stands for; and how
/// many symbols that way has from the first.
const fn ways(text: &[u8]) -> ([(u8, u8); MOST], usize) {
    assert!(text.len() < MOST, "a text longer than any is folded");
    let (mut cost, mut best) = ([0u16; MOST + 1], [(0u8, 0u8); MOST]);
    let mut from = text.len();
    while from > 0 {
        from -= 1;
        cost[from] = u16::MAX;
        let (mut node, mut to) = (0, from);
        while to < text.len() {
            assert!(is_plain(text[to]), "a text with a character that is not plain ASCII");
            node = TREE.next[node][(text[to] - FIRST) as usize] as usize;
            if node == 0 {
                break;
            }
            to += 1;
            if tree_symbol(node) != 0 && cost[to] + 1 < cost[from] {
                cost[from] = cost[to] + 1;
                best[from] = ((tree_symbol(node) - 1) as u8, (to - from) as u8);
            }
        }
    }
    (best, cost[0] as usize)
}

const fn tree_symbol(node: usize) -> u16 {
    TREE.symbol[node]
}

/// How many bytes a text takes when it is folded.
#[doc(hidden)]
pub const fn folded(text: &[u8]) -> usize {
    ways(text).1
}

/// A text, folded.
#[doc(hidden)]
pub const fn fold<const LENGTH: usize>(text: &[u8]) -> [u8; LENGTH] {
    let (best, _) = ways(text);
    let (mut out, mut from, mut length) = ([0; LENGTH], 0, 0);
    while from < text.len() {
        out[length] = best[from].0;
        from += best[from].1 as usize;
        length += 1;
    }
    out
}

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
