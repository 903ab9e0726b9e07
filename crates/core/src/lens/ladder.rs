//! The lenses on the shelf around the target: label powers in the model's own steps.

use crate::case::Lens;
use crate::math::round;
use crate::quantity::LensPower;

/// Rows of a ladder: the nearest label to the middle, and as many on either side.
pub const ROWS: usize = 9;

/// The label powers nearest to a power, at most [`ROWS`] of them, weakest first, within what the model comes in.
///
/// Labels are whole steps from the weakest power of the model, or from 0 D where that is not entered.
pub(crate) fn labels(around: f64, lens: &Lens) -> impl Iterator<Item = LensPower> {
    let (first, step) = (lens.least.map_or(0.0, LensPower::d), lens.step.d());
    let (least, most) = (lens.least, lens.most);
    let middle = round((around - first) / step);
    (0..ROWS)
        .filter_map(move |row| LensPower::from_d(first + step * (middle + row as f64 - (ROWS / 2) as f64)).ok())
        .filter(move |label| least.is_none_or(|l| *label >= l) && most.is_none_or(|m| *label <= m))
}

/// Whether a power is one of the model's steps.
pub(crate) fn on_label(power: LensPower, lens: &Lens) -> bool {
    let steps = (power.d() - lens.least.map_or(0.0, LensPower::d)) / lens.step.d();
    (steps - round(steps)).abs() < 1e-6
}

/// The least and greatest of some numbers; `None` when there are none.
pub(crate) fn range(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.fold(None, |range, v| {
        let (least, most) = range.unwrap_or((v, v));
        Some((f64::min(least, v), f64::max(most, v)))
    })
}
