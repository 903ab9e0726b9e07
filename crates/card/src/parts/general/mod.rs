//! What any part may need: yes and no, and ranges.

pub mod choices;
pub mod table;

/// The least and greatest of some numbers; `None` when there are none.
pub(crate) fn range(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.fold(None, |range, value| Some(widened(range, value)))
}

/// A range, with one more number in it.
pub(crate) fn widened(range: Option<(f64, f64)>, value: f64) -> (f64, f64) {
    let (least, most) = range.unwrap_or((value, value));
    (f64::min(least, value), f64::max(most, value))
}
