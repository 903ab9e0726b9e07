//! The set-up of a surge, and the step to take.

use super::table::entries::*;
use crate::entered::Entered;
use crate::parts::chamber::{known_aspiration, known_pump, known_supply};
use crate::parts::pressure::reached_at_tip;
use crate::parts::pressure::table::entries::VACUUM_NUCLEUS;
use ocellus_core::fluids::chamber::Pump;
use ocellus_core::fluids::surge::{Setup, State};
use ocellus_core::quantity::Compliance;

/// The set-up of a surge, where all of it is known.
///
/// ```
/// use ocellus_card::{case::Case, draft::Draft, entries, parts::surge::known_setup};
/// let mut draft = Draft::default();
/// for (entry, text) in [
///     (entries::OPEN_LEVEL.id(), "90"), (entries::EYE_LEVEL.id(), "0"), (entries::PUMP_KIND.id(), "flow"),
///     (entries::ASPIRATION.id(), "30"), (entries::INFUSION_RESISTANCE.id(), "0.2"),
///     (entries::ASPIRATION_RESISTANCE.id(), "6"), (entries::VACUUM_NUCLEUS.id(), "400"),
///     (entries::EYE_COMPLIANCE.id(), "1"),
/// ] {
///     draft.enter(entry, text)?;
/// }
/// let is_known = |draft: &Draft| Case::try_from(draft).unwrap().known(|known| known_setup(known.entered)).is_some();
/// assert!(!is_known(&draft));
/// draft.enter(entries::TUBING_COMPLIANCE, "0.09")?;
/// assert!(is_known(&draft));
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
#[inline(never)]
pub fn known_setup(entered: &Entered) -> Option<Setup> {
    let compliance = |entry| entered.get(entry).map(Compliance::ul_mmhg);
    let setup = Setup {
        eye: compliance(EYE_COMPLIANCE)?,
        line: compliance(TUBING_COMPLIANCE)?,
        supply: known_supply(entered)?,
        aspiration: known_aspiration(entered)?,
        vacuum: reached_at_tip(entered, VACUUM_NUCLEUS)?,
        pumped: match known_pump(entered)? {
            Pump::Flow(flow) => Some(flow),
            Pump::Vacuum(_) => None,
        },
    };
    // a pump that would need more than is set holds what is set
    let too_much = |rest: State| rest.line < -setup.vacuum;
    Some(if setup.end().is_some_and(too_much) { Setup { pumped: None, ..setup } } else { setup })
}

/// The step to take: entered, where it is short enough, or the longest that is.
pub(super) fn step(entered: &Entered, setup: &Setup) -> Option<f64> {
    match entered.get(SURGE_STEP) {
        Some(step) => setup.longest_step().filter(|longest| step.ms() <= *longest).map(|_| step.ms()),
        None => setup.step(),
    }
}
