//! Finds the symbols: again and again the pair that occurs most; then those that are not worth their room are left out, and the
//! others get a code, shorter the more often they are used.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap, HashMap};

/// A symbol while they are looked for: a character by its own value, or `PAIR` and the place of a pair.
type Symbol = u16;
const PAIR: Symbol = 128;
const CHARACTERS: std::ops::Range<Symbol> = 32..127;

/// The most characters that a symbol may stand for, and how deep pairs of pairs may go.
const LONGEST: usize = 40;
const DEEPEST: usize = 12;
/// Pairs that are tried.
const MOST: usize = 1700;
/// What a symbol takes in the table.
pub(crate) const BITS_EACH: usize = 24;
/// What it must save for that: more, since what is left out frees its parts too.
const WORTH: usize = BITS_EACH * 3 / 2;

/// What stands for a symbol in the table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Meaning {
    Character(u8),
    /// Two others, by their places in the table.
    Pair(u16, u16),
}

/// The table of symbols, those with the shortest codes first, and what they make of the texts.
#[derive(Debug)]
pub(crate) struct Symbols {
    pub(crate) table: Vec<Meaning>,
    /// How many symbols have a code of each length, from one bit on; what comes after them in the table is only part of others.
    pub(crate) counts: Vec<u16>,
    /// What all texts take, without the table.
    pub(crate) bytes: usize,
}

/// Which pairs are kept, by their symbols.
type Pairs = BTreeMap<Symbol, [Symbol; 2]>;

/// How many bits the code of each symbol has; none for one that is not written.
type Lengths = HashMap<Symbol, usize>;

impl Symbols {
    /// Those by which the texts and the table take the fewest bytes.
    pub(crate) fn of(texts: &[Vec<u8>]) -> Symbols {
        let mut pairs: Pairs = (PAIR..).zip(found(texts)).collect();
        loop {
            let (uses, lengths, bytes) = coded(&pairs, texts);
            let count = pairs.len();
            let parts: Vec<Symbol> = pairs.values().flatten().copied().collect();
            pairs.retain(|symbol, pair| {
                let instead: usize = pair.iter().map(|part| lengths.get(part).copied().unwrap_or(BITS_EACH)).sum();
                let more = instead.saturating_sub(lengths.get(symbol).copied().unwrap_or(instead));
                parts.contains(symbol) || uses.get(symbol).unwrap_or(&0) * more > WORTH
            });
            if pairs.len() == count {
                return ordered(&pairs, &uses, &lengths, bytes);
            }
        }
    }
}

/// The table in its order, its symbols by their new places.
fn ordered(pairs: &Pairs, uses: &HashMap<Symbol, usize>, lengths: &Lengths, bytes: usize) -> Symbols {
    let mut order: Vec<Symbol> = CHARACTERS.chain(pairs.keys().copied()).collect();
    let length = |symbol: &Symbol| lengths.get(symbol).copied().unwrap_or(usize::MAX);
    order.sort_by_key(|symbol| (length(symbol), Reverse(uses.get(symbol).copied()), *symbol));
    let places: HashMap<Symbol, u16> = order.iter().copied().zip(0..).collect();
    let meaning = |symbol: &Symbol| match pairs.get(symbol) {
        None => Meaning::Character(*symbol as u8),
        Some([first, second]) => Meaning::Pair(places[first], places[second]),
    };
    let longest = lengths.values().copied().max().unwrap_or(0);
    let of_length = |bits| lengths.values().filter(|length| **length == bits).count() as u16;
    Symbols { table: order.iter().map(meaning).collect(), counts: (1..=longest).map(of_length).collect(), bytes }
}

/// How often each symbol is written when every text is folded to the fewest bits, how long its code is, and how many bytes the
/// texts are then.
fn coded(pairs: &Pairs, texts: &[Vec<u8>]) -> (HashMap<Symbol, usize>, Lengths, usize) {
    let symbols = symbols(pairs);
    let mut lengths: Lengths = symbols.values().map(|symbol| (*symbol, 8)).collect();
    let (mut uses, mut bytes) = (HashMap::new(), 0);
    for _ in 0..4 {
        uses = HashMap::new();
        for text in texts {
            folded(text, &symbols, &lengths).into_iter().for_each(|symbol| *uses.entry(symbol).or_default() += 1);
        }
        lengths = codes(&uses);
        bytes = texts.iter().map(|text| bits(&folded(text, &symbols, &lengths), &lengths).div_ceil(8)).sum();
    }
    (uses, lengths, bytes)
}

/// A text in the symbols that take the fewest bits.
fn folded(text: &[u8], symbols: &HashMap<Vec<u8>, Symbol>, lengths: &Lengths) -> Vec<Symbol> {
    let mut best = vec![(0, 0, 1); text.len() + 1];
    for from in (0..text.len()).rev() {
        let ends = from + 1..=text.len().min(from + LONGEST);
        let ways = ends.filter_map(|to| symbols.get(&text[from..to]).map(|symbol| (*symbol, to)));
        let costs = ways.filter_map(|(symbol, to)| Some((best[to].0 + lengths.get(&symbol)?, symbol, to)));
        best[from] = costs.min().unwrap_or((usize::MAX, 0, from + 1));
    }
    let (mut out, mut from) = (Vec::new(), 0);
    while from < text.len() {
        let (_, symbol, to) = best[from];
        out.push(symbol);
        from = to;
    }
    out
}

fn bits(symbols: &[Symbol], lengths: &Lengths) -> usize {
    symbols.iter().map(|symbol| lengths[symbol]).sum()
}

/// How long the code of each symbol should be (Huffman 1952): the two that are used least are joined, until one is left. Every
/// character has a code, whether these texts use it or not.
fn codes(uses: &HashMap<Symbol, usize>) -> Lengths {
    const SELDOM: usize = 16;
    let used = uses.iter().map(|(symbol, uses)| (*symbol, SELDOM * uses));
    let unused = CHARACTERS.filter(|symbol| !uses.contains_key(symbol)).map(|symbol| (symbol, 1));
    let mut heap: BinaryHeap<_> = used.chain(unused).map(|(symbol, weight)| Reverse((weight, vec![symbol]))).collect();
    let mut lengths = Lengths::new();
    while let (Some(Reverse((one, mut symbols))), Some(Reverse((other, more)))) = (heap.pop(), heap.pop()) {
        symbols.extend(more);
        symbols.iter().for_each(|symbol| *lengths.entry(*symbol).or_default() += 1);
        if !heap.is_empty() {
            heap.push(Reverse((one + other, symbols)));
        }
    }
    lengths
}

/// Every symbol by the characters that it stands for.
fn symbols(pairs: &Pairs) -> HashMap<Vec<u8>, Symbol> {
    CHARACTERS.chain(pairs.keys().copied()).map(|symbol| (unfolded(pairs, symbol), symbol)).collect()
}

fn unfolded(pairs: &Pairs, symbol: Symbol) -> Vec<u8> {
    match pairs.get(&symbol) {
        None => vec![symbol as u8],
        Some(pair) => pair.iter().flat_map(|one| unfolded(pairs, *one)).collect(),
    }
}

/// The pairs that occur most, each found after those before it were put in.
fn found(texts: &[Vec<u8>]) -> Vec<[Symbol; 2]> {
    let mut texts: Vec<Vec<Symbol>> =
        texts.iter().map(|text| text.iter().map(|c| Symbol::from(*c)).collect()).collect();
    let mut table: Vec<[Symbol; 2]> = Vec::new();
    let (mut lengths, mut depths) = (vec![1; usize::from(PAIR)], vec![0; usize::from(PAIR)]);
    while table.len() < MOST {
        let mut counts: HashMap<[Symbol; 2], usize> = HashMap::new();
        for text in &texts {
            text.array_windows::<2>().for_each(|pair| *counts.entry(*pair).or_default() += 1);
        }
        let of = |all: &[usize], [a, b]: [Symbol; 2]| [all[usize::from(a)], all[usize::from(b)]];
        let fits = |pair: &[Symbol; 2]| {
            of(&lengths, *pair).iter().sum::<usize>() <= LONGEST
                && of(&depths, *pair).into_iter().max() < Some(DEEPEST - 1)
        };
        let most = counts.into_iter().filter(|(pair, _)| fits(pair)).max_by_key(|(pair, count)| (*count, *pair));
        let Some((pair, 2..)) = most else { break };
        lengths.push(of(&lengths, pair).iter().sum());
        depths.push(of(&depths, pair).into_iter().max().unwrap_or(0) + 1);
        let symbol = PAIR + table.len() as Symbol;
        table.push(pair);
        texts.iter_mut().for_each(|text| put(text, pair, symbol));
    }
    table
}

/// Puts a symbol in the place of each pair.
fn put(text: &mut Vec<Symbol>, pair: [Symbol; 2], symbol: Symbol) {
    let mut out: Vec<Symbol> = Vec::with_capacity(text.len());
    let mut rest = &text[..];
    while let [first, others @ ..] = rest {
        if rest.starts_with(&pair) {
            out.push(symbol);
            rest = &rest[2..];
        } else {
            out.push(*first);
            rest = others;
        }
    }
    *text = out;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_repeats_is_folded() {
        let texts = vec![b"the cornea of the eye, the lens of the eye".to_vec(); 3];
        let symbols = Symbols::of(&texts);
        assert!(symbols.bytes < 30, "{symbols:?}");
        assert!(symbols.table.len() > 95 && symbols.table.len() < 120, "{symbols:?}");
    }

    #[test]
    fn every_code_is_used_up_and_every_character_has_one() {
        let Symbols { table, counts, .. } = Symbols::of(&[b"dioptre, dioptres; metre, metres".to_vec()]);
        let share: f64 =
            counts.iter().zip(1u32..).map(|(count, bits)| f64::from(*count) * 1.0 / f64::from(1u32 << bits)).sum();
        assert_eq!(share, 1.0, "{counts:?}");
        let coded = counts.iter().map(|count| usize::from(*count)).sum();
        for character in 32..127 {
            let place = table.iter().position(|meaning| *meaning == Meaning::Character(character));
            assert!(place < Some(coded), "{character} at {place:?} of {coded}");
        }
    }

    #[test]
    fn the_more_often_the_shorter() {
        let lengths = codes(&HashMap::from([(97, 800), (98, 400), (99, 200)]));
        assert_eq!([97, 98, 99].map(|symbol| lengths[&symbol]), [1, 2, 3]);
    }
}
