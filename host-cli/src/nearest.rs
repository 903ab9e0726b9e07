//! The known word that a misspelt one probably means.

use std::fmt::Display;
use strsim::normalized_damerau_levenshtein;

/// Words less alike than this are not offered.
const ALIKE: f64 = 0.5;

/// The most alike of the known words.
pub(crate) fn nearest<T: Display>(word: &str, known: impl IntoIterator<Item = T>) -> Option<T> {
    let word = word.to_lowercase();
    let likeness = |other: &T| normalized_damerau_levenshtein(&word, &other.to_string().to_lowercase());
    let known = known.into_iter().map(|other| (likeness(&other), other)).filter(|(alike, _)| *alike >= ALIKE);
    known.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, other)| other)
}
