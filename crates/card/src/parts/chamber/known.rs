//! What stands around a chamber: readings, infusion line, pump, tip.

use super::choices::PumpKind;
use super::table::entries::*;
use crate::entered::Entered;
use crate::parts::pressure::table::entries::VACUUM_NUCLEUS;
use crate::parts::pressure::{reached_at_tip, still};
use ocellus_core::error::Error;
use ocellus_core::fluids::chamber::{Pump, Supply};
use ocellus_core::fluids::readings::{self, Reading};
use ocellus_core::quantity::{Aspiration, Resistance};

/// Both readings, where they were entered.
pub(super) fn known_readings(entered: &Entered) -> Option<Result<readings::Working, Error>> {
    let first = Reading { flow: entered.get(READING_FLOW_1)?, pressure: entered.get(READING_PRESSURE_1)? };
    let second = Reading { flow: entered.get(READING_FLOW_2)?, pressure: entered.get(READING_PRESSURE_2)? };
    Some(readings::working(first, second))
}

/// What stands around the chamber, where column and infusion line are known.
#[inline(never)]
pub(crate) fn known_supply(entered: &Entered) -> Option<Supply> {
    let infusion = entered.get(INFUSION_RESISTANCE).map(Resistance::mmhg_min_ml);
    let infusion = infusion.or_else(|| Some(known_readings(entered)?.ok()?.resistance))?;
    Some(Supply { head: still(entered)?, infusion, leak: entered.get(LEAK)?.ml_min() })
}

/// What the pump is set to: a flow, or a vacuum, which is the nucleus's.
pub(crate) fn known_pump(entered: &Entered) -> Option<Pump> {
    match entered.get(PUMP_KIND)? {
        PumpKind::Flow => entered.get(ASPIRATION).map(|flow: Aspiration| Pump::Flow(flow.ml_min())),
        PumpKind::Vacuum => reached_at_tip(entered, VACUUM_NUCLEUS).map(Pump::Vacuum),
    }
}

/// The resistance of tip and tubing.
pub(crate) fn known_aspiration(entered: &Entered) -> Option<f64> {
    entered.get(ASPIRATION_RESISTANCE).map(Resistance::mmhg_min_ml)
}
