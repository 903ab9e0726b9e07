//! The lenses around the target: label powers in the model's own steps.

use crate::case::Case;
use crate::math::round;
use crate::quantity::LensPower;

/// Rows of a ladder: the nearest label to the middle, and as many on either side.
pub const ROWS: usize = 9;

/// The label powers nearest to a power, at most [`ROWS`] of them, weakest first, within what the model comes in.
///
/// Labels are whole steps from the weakest power of the model, or from 0 D where that is not entered.
pub(crate) fn labels(around: f64, case: &Case) -> impl Iterator<Item = LensPower> {
    // around the nearest label that there is
    let half = (ROWS / 2) as f64;
    let middle = steps_from(around, case);
    (0..ROWS).filter_map(move |row| at(middle + row as f64 - half, case))
}

/// The steps from the first label to the one nearest to a power.
pub(crate) fn steps_from(power: f64, case: &Case) -> f64 {
    let least = case.lens_least().map_or(-f64::MAX, LensPower::d);
    let most = case.lens_most().map_or(f64::MAX, LensPower::d);
    round((power.max(least).min(most) - first(case)) / case.lens_step.d())
}

/// The label so many steps from the first, where the model comes in it.
pub(crate) fn at(steps: f64, case: &Case) -> Option<LensPower> {
    // labels have two decimals: the sum of steps is brought back to the label as it is typed
    let label = LensPower::from_d(round((first(case) + case.lens_step.d() * steps) * 100.0) / 100.0).ok()?;
    let made =
        case.lens_least().is_none_or(|least| label >= least) && case.lens_most().is_none_or(|most| label <= most);
    made.then_some(label)
}

fn first(case: &Case) -> f64 {
    case.lens_least().map_or(0.0, LensPower::d)
}

/// Whether a power is one of the model's steps.
pub(crate) fn on_label(power: LensPower, case: &Case) -> bool {
    let steps = (power.d() - case.lens_least().map_or(0.0, LensPower::d)) / case.lens_step.d();
    (steps - round(steps)).abs() < 1e-6
}

/// The least and greatest of some numbers; `None` when there are none.
pub(crate) fn range(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.fold(None, |range, value| Some(widened(range, value)))
}

/// A range, with one more number in it.
pub(crate) fn widened(range: Option<(f64, f64)>, value: f64) -> (f64, f64) {
    let (least, most) = range.unwrap_or((value, value));
    (f64::min(least, value), f64::max(most, value))
}
