//! What a label may be off by, and which label a rule points out.

use crate::case::Case;
use crate::choice::LabelRule;
use crate::constant::certainty::*;
use crate::lens::ladder::{at, steps_from};
use crate::quantity::LensPower;

/// How far the power of a lens may be from its label, D.
///
/// ```text
/// 0.3 to 15 D, 0.4 to 25 D, 0.5 to 30 D, 1.0 above, by the size of the power
/// ```
///
/// Source: ISO 11979-2 (read in a tutorial; the edges memory).
///
/// ```
/// use ocellus_core::{lens::label::tolerance, quantity::LensPower};
/// assert_eq!(tolerance(LensPower::from_d(21.5)?), 0.4);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn tolerance(power: LensPower) -> f64 {
    let size = power.d().abs();
    let within = |edge: &'static crate::constant::Constant| size <= edge.get();
    if within(&LABEL_EDGE_WEAK) {
        LABEL_WEAK.get()
    } else if within(&LABEL_EDGE_USUAL) {
        LABEL_USUAL.get()
    } else if within(&LABEL_EDGE_STRONG) {
        LABEL_STRONG.get()
    } else {
        LABEL_STRONGEST.get()
    }
}

/// The label of this model that a rule points out, and what it leaves; `None` where the model has none.
///
/// The first myopic is the weakest label that leaves less than 0 D. The nearest leaves least to the target; of two that are
/// equally near, the stronger, which leaves the eye the more myopic. A power a step beyond all that is made has none. `exact` is the label that would leave just 0 D, or the
/// target.
pub(crate) fn by_rule(
    rule: LabelRule,
    case: &Case,
    exact: f64,
    left: impl Fn(LensPower) -> Option<f64>,
) -> Option<(LensPower, f64)> {
    // none of what is made comes near
    let beyond = case.lens_least().is_some_and(|least| exact < least.d() - case.lens_step.d())
        || case.lens_most().is_some_and(|most| exact > most.d() + case.lens_step.d());
    if beyond {
        return None;
    }
    // the label nearest to the exact power, and those beside it
    let labels = (-1..=1).filter_map(|by| at(steps_from(exact, case) + f64::from(by), case));
    let mut asked = labels.filter_map(|label| Some((label, left(label)?)));
    match rule {
        LabelRule::FirstMyopic => asked.find(|(_, rx)| *rx < 0.0),
        LabelRule::Nearest => asked.reduce(|best, other| {
            let off = |rx: f64| (rx - case.target.d()).abs();
            if off(other.1) <= off(best.1) { other } else { best }
        }),
    }
}
