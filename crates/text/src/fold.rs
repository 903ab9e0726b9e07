//! How a text is folded, while the program is compiled: to the fewest bits that unfold to it.

#![expect(clippy::indexing_slicing, reason = "it runs while the program is compiled, and never after")]

use crate::code::{DEEPEST, FIRST, Meaning, PLAIN, code, is_plain, meaning};
use crate::symbols::SYMBOLS;

/// The most characters that one symbol stands for, and the nodes of the tree of all of them.
const LONGEST: usize = 40;
const NODES: usize = 12_000;

/// Writes what a symbol stands for; the answer is where it ends.
const fn unfold(symbol: u16, into: &mut [u8; LONGEST], at: usize, depth: usize) -> usize {
    assert!(depth <= DEEPEST);
    match meaning(SYMBOLS[symbol as usize]) {
        Meaning::Character(character) => {
            into[at] = character;
            at + 1
        }
        Meaning::Pair(first, second) => {
            let at = unfold(first, into, at, depth + 1);
            unfold(second, into, at, depth + 1)
        }
    }
}

/// Every symbol that is written, by the characters that it stands for.
struct Tree {
    next: [[u16; PLAIN]; NODES],
    /// The symbol that ends at a node, and the bits of its code: 0 for none.
    symbol: [(u16, u8); NODES],
}

static TREE: Tree = {
    let mut tree = Tree { next: [[0; PLAIN]; NODES], symbol: [(0, 0); NODES] };
    let (mut nodes, mut symbol) = (1, 0);
    while symbol < SYMBOLS.len() && code(symbol).1 > 0 {
        let mut text = [0; LONGEST];
        let length = unfold(symbol as u16, &mut text, 0, 0);
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
        tree.symbol[node] = (symbol as u16, code(symbol).1);
        symbol += 1;
    }
    tree
};

const fn next(node: usize, character: u8) -> usize {
    TREE.next[node][(character - FIRST) as usize] as usize
}

const fn symbol(node: usize) -> (u16, u8) {
    TREE.symbol[node]
}

/// The longest text that is folded.
const MOST: usize = 600;

/// A text, folded: the symbols that begin the shortest way from each place to the end.
#[doc(hidden)]
pub struct Folded {
    /// For each place a symbol, and how many characters it stands for.
    best: [(u16, u8); MOST],
    /// How many bits it takes from each place on.
    cost: [u16; MOST + 1],
    length: usize,
}

impl Folded {
    /// Folds a text.
    pub const fn of(text: &str) -> Folded {
        let text = text.as_bytes();
        assert!(text.len() < MOST, "a text longer than any is folded");
        let (mut cost, mut best) = ([0u16; MOST + 1], [(0, 0); MOST]);
        let mut from = text.len();
        while from > 0 {
            from -= 1;
            cost[from] = u16::MAX;
            let (mut node, mut to) = (0, from);
            while to < text.len() {
                assert!(is_plain(text[to]), "a text with a character that is not plain ASCII");
                node = next(node, text[to]);
                if node == 0 {
                    break;
                }
                to += 1;
                let (symbol, bits) = symbol(node);
                if bits > 0 && cost[to] + (bits as u16) < cost[from] {
                    cost[from] = cost[to] + bits as u16;
                    best[from] = (symbol, (to - from) as u8);
                }
            }
        }
        Folded { best, cost, length: text.len() }
    }

    /// How many bytes it takes.
    pub const fn size(&self) -> usize {
        self.cost[0].div_ceil(8) as usize
    }

    /// Writes it; the answer is where it ends.
    pub const fn write(&self, out: &mut [u8], at: usize) -> usize {
        let (mut from, mut bit) = (0, 0);
        let end = at + self.size();
        while from < self.length {
            let (symbol, characters) = self.best[from];
            let (code, bits) = code(symbol as usize);
            let mut left = bits;
            while left > 0 {
                left -= 1;
                out[at + bit / 8] |= ((code >> left & 1) as u8) << (7 - bit % 8);
                bit += 1;
            }
            from += characters as usize;
        }
        while bit % 8 > 0 {
            out[at + bit / 8] |= 1 << (7 - bit % 8);
            bit += 1;
        }
        end
    }
}

/// The bytes of a folded text.
#[doc(hidden)]
pub const fn fold<const SIZE: usize>(text: &str) -> [u8; SIZE] {
    let mut out = [0; SIZE];
    Folded::of(text).write(&mut out, 0);
    out
}
