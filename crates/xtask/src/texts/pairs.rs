//! Finds the pairs: again and again the one that occurs most; and which of them are worth a byte by themselves.

use std::collections::HashMap;

/// A symbol: a character by its own value, or `PAIR` and the place of a pair.
pub(crate) type Symbol = u16;
pub(crate) const PAIR: Symbol = 128;

/// The most characters that a symbol may stand for, and how deep pairs of pairs may go.
const LONGEST: usize = 24;
const DEEPEST: usize = 10;
/// Pairs that are tried, and after how many it is tried whether they are enough.
const MOST: usize = 1200;
const STEP: usize = 50;
/// Values of a byte that are no character.
const OTHERS: usize = 256 - 95;

/// Pairs, in the order of their places, and what they make of the texts.
#[derive(Debug, Clone)]
pub(crate) struct Pairs {
    pub(crate) table: Vec<[Symbol; 2]>,
    /// How many values of a byte say that another follows.
    pub(crate) leads: usize,
    /// What all texts take, without the table.
    pub(crate) bytes: usize,
}

impl Pairs {
    /// Those by which the texts and the pairs themselves take the fewest bytes.
    pub(crate) fn best(texts: &[Vec<u8>]) -> Pairs {
        let found = found(texts);
        let counts = (STEP..=found.len()).step_by(STEP);
        let all = counts.map(|count| Pairs::of(found.get(..count).unwrap_or(&found), texts));
        all.min_by_key(|pairs| pairs.bytes + 3 * pairs.table.len()).unwrap_or_else(|| Pairs::of(&found, texts))
    }

    /// These pairs, those that are used most in one byte each.
    fn of(found: &[[Symbol; 2]], texts: &[Vec<u8>]) -> Pairs {
        let leads = (0..OTHERS).find(|leads| OTHERS - leads + 256 * leads >= found.len()).unwrap_or(OTHERS);
        let mut pairs = Pairs { table: found.to_vec(), leads, bytes: 0 };
        for _ in 0..4 {
            let (uses, bytes) = pairs.uses(texts);
            pairs.bytes = bytes;
            let mut order: Vec<usize> = (0..found.len()).collect();
            order.sort_by_key(|place| std::cmp::Reverse(uses[*place]));
            let before = pairs.clone();
            pairs.table = reordered(&pairs.table, &order);
            pairs.bytes = pairs.uses(texts).1;
            if pairs.bytes >= before.bytes {
                return before;
            }
        }
        pairs
    }

    fn cost(&self, symbol: Symbol) -> usize {
        let place = usize::from(symbol.saturating_sub(PAIR));
        if place < OTHERS - self.leads { 1 } else { 2 }
    }

    /// How often each pair is written when every text is folded to the fewest bytes, and how many these are.
    fn uses(&self, texts: &[Vec<u8>]) -> (Vec<usize>, usize) {
        let symbols = symbols(&self.table);
        let (mut uses, mut bytes) = (vec![0; self.table.len()], 0);
        for text in texts {
            let mut best = vec![(0, 0, 1); text.len() + 1];
            for from in (0..text.len()).rev() {
                let ends = from + 1..=text.len().min(from + LONGEST);
                let ways = ends.filter_map(|to| Some((*symbols.get(&text[from..to])?, to)));
                let costs = ways.map(|(symbol, to)| (best[to].0 + self.cost(symbol), symbol, to));
                best[from] = costs.min().unwrap_or((usize::MAX, 0, from + 1));
            }
            bytes += best[0].0;
            let mut from = 0;
            while from < text.len() {
                let (_, symbol, to) = best[from];
                if let Some(place) = symbol.checked_sub(PAIR) {
                    uses[usize::from(place)] += 1;
                }
                from = to;
            }
        }
        (uses, bytes)
    }
}

/// Every symbol by the characters that it stands for.
fn symbols(table: &[[Symbol; 2]]) -> HashMap<Vec<u8>, Symbol> {
    let plain = (32..127u8).map(|character| (vec![character], Symbol::from(character)));
    let pairs = (0..table.len()).map(|place| (unfolded(table, PAIR + place as Symbol), PAIR + place as Symbol));
    plain.chain(pairs).collect()
}

fn unfolded(table: &[[Symbol; 2]], symbol: Symbol) -> Vec<u8> {
    match symbol.checked_sub(PAIR) {
        None => vec![symbol as u8],
        Some(place) => table[usize::from(place)].iter().flat_map(|one| unfolded(table, *one)).collect(),
    }
}

/// The table in another order, its symbols called by their new places.
fn reordered(table: &[[Symbol; 2]], order: &[usize]) -> Vec<[Symbol; 2]> {
    let mut places = vec![0; table.len()];
    order.iter().enumerate().for_each(|(new, old)| places[*old] = new as Symbol);
    let renamed = |symbol: Symbol| symbol.checked_sub(PAIR).map_or(symbol, |place| PAIR + places[usize::from(place)]);
    order.iter().map(|old| table[*old].map(renamed)).collect()
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
        let pairs = Pairs::best(&texts);
        assert!(pairs.bytes < 30, "{pairs:?}");
        let all = symbols(&pairs.table);
        assert!(all.contains_key(&b"the "[..]) && all.len() == 95 + pairs.table.len());
    }

    #[test]
    fn another_order_means_the_same() {
        let table = vec![[116, 104], [PAIR, 101], [PAIR + 1, 32]];
        let other = reordered(&table, &[2, 0, 1]);
        assert_eq!(unfolded(&other, PAIR), b"the ");
        assert_eq!(unfolded(&other, PAIR + 1), b"th");
    }
}
