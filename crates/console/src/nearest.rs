//! The known word that a misspelt one probably means.

use crate::page::{Page, Said};
use heapless::Vec;
use ocellus_card::Named;
use ocellus_text::text;

/// Longer words are not looked for.
const LONGEST: usize = 32;

pub(crate) struct Nearest<'a> {
    word: &'a str,
    best: Option<Named>,
    /// Only less is nearer.
    least: u8,
}

impl<'a> Nearest<'a> {
    /// Up to two letters may be wrong; one of three or fewer.
    pub(crate) fn to(word: &'a str) -> Nearest<'a> {
        Nearest { word, best: None, least: if word.len() > 3 { 3 } else { 2 } }
    }

    pub(crate) fn offer(&mut self, known: impl Into<Named>) {
        self.compare(known.into());
    }

    #[inline(never)]
    fn compare(&mut self, known: Named) {
        let mut bytes = Vec::<u8, LONGEST>::new();
        if known.bytes().any(|byte| bytes.push(byte).is_err()) {
            return;
        }
        let distance = distance(self.word.as_bytes(), &bytes);
        if distance < self.least && usize::from(distance) < bytes.len() {
            (self.best, self.least) = (Some(known), distance);
        }
    }

    /// Says that a word is not known, and which was perhaps meant.
    pub(crate) fn tell(&self, page: &mut Page, what: impl Said) {
        page.text(self.word);
        page.text(": ");
        page.text(what);
        if let Some(best) = self.best {
            page.text(text!("; perhaps "));
            page.text(best);
        }
        page.end();
    }
}

/// Letters to change, add or take away to come from one word to the other, capitals or not.
fn distance(a: &[u8], b: &[u8]) -> u8 {
    if a.len() > LONGEST || b.len() > LONGEST {
        return u8::MAX;
    }
    // of the letters so far to each beginning of the other word
    let mut row: [u8; LONGEST + 1] = core::array::from_fn(|place| place as u8);
    for (before, x) in a.iter().enumerate() {
        let (mut corner, mut left) = (before as u8, before as u8 + 1);
        for (slot, y) in row.iter_mut().skip(1).zip(b) {
            let other = u8::from(!x.eq_ignore_ascii_case(y));
            let least = (corner + other).min(left + 1).min(*slot + 1);
            (corner, left) = (*slot, least);
            *slot = least;
        }
        if let Some(first) = row.first_mut() {
            *first = before as u8 + 1;
        }
    }
    row.get(b.len()).copied().unwrap_or(u8::MAX)
}
