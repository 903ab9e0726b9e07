//! How a text is folded, while the program is compiled: to the fewest symbols that unfold to it.

#![expect(clippy::indexing_slicing, reason = "it runs while the program is compiled, and never after")]

use super::pairs::PAIRS;
use super::symbol::{DEEPEST, FIRST, PLAIN, is_plain, place_of, symbol_at};

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
pub(super) const fn ways(text: &[u8]) -> ([(u8, u8); MOST], usize) {
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
