//! What is known of a set-up: its fluid, its column, its air, its pump.

use super::choices::FluidFrom;
use super::table::entries::*;
use crate::entered::Entered;
use crate::entry::Entry;
use ocellus_core::fluids::ceiling::{self, Air};
use ocellus_core::fluids::{column, density};
use ocellus_core::quantity::{Density, GasPressure, Level, Temperature, Vacuum};

/// The density of the fluid: entered, or of water at its temperature.
pub fn fluid_density(entered: &Entered) -> Option<Density> {
    match entered.get(DENSITY_FROM)? {
        FluidFrom::Entered => entered.get(DENSITY),
        FluidFrom::Water => Density::from_kg_m3(density::working(temperature(entered)?).density).ok(),
    }
}

/// The temperature of the fluid.
pub(crate) fn temperature(entered: &Entered) -> Option<Temperature> {
    entered.get(TEMPERATURE)
}

/// The open level and that of the eye.
pub(super) fn levels(entered: &Entered) -> Option<(Level, Level)> {
    entered.get(OPEN_LEVEL).zip(entered.get(EYE_LEVEL))
}

/// What a machine is set to, and the level of the eye that it assumes.
pub(super) fn set(entered: &Entered) -> Option<(GasPressure, Level)> {
    entered.get(SET_PRESSURE).zip(entered.get(ASSUMED_LEVEL))
}

/// Pressure at the eye with nothing flowing, of a column or of a machine that is set by pressure.
#[inline(never)]
pub(crate) fn still(entered: &Entered) -> Option<f64> {
    let of_column = || Some(column_working(entered)?.pressure);
    of_column().or_else(|| Some(set_working(entered)?.pressure))
}

/// The column of a set-up, where its levels are known.
pub(super) fn column_working(entered: &Entered) -> Option<column::Working> {
    let (open, eye) = levels(entered)?;
    Some(column::working(open, eye, entered.get(GAS_PRESSURE)?, fluid_density(entered)?))
}

/// The same of a machine that is set by pressure.
pub(super) fn set_working(entered: &Entered) -> Option<column::Set> {
    let (set, assumed) = set(entered)?;
    Some(column::set(set, assumed, entered.get(EYE_LEVEL)?, fluid_density(entered)?))
}

/// The air of a set-up, where it is known: measured, or by its altitude.
pub(super) fn known_air(entered: &Entered) -> Option<Air> {
    entered.get(STATION_PRESSURE).map(Air::Station).or_else(|| entered.get(ALTITUDE).map(Air::Altitude))
}

/// The ceiling on vacuum, where the air is known.
pub(crate) fn known_ceiling(entered: &Entered) -> Option<f64> {
    Some(ceiling::working(known_air(entered)?, temperature(entered)?).ceiling)
}

/// What the level of the eye adds to a vacuum at the pump, mmHg.
pub(super) fn siphon(entered: &Entered, density: Density) -> Option<f64> {
    let pump = entered.get(PUMP_LEVEL)?;
    Some(column::of_column(entered.get(EYE_LEVEL)?.cm() - pump.cm(), density))
}

/// What of a vacuum that is set is there at the level of the eye, nothing flowing, mmHg: all of it where neither air nor pump
/// is known.
#[inline(never)]
pub(crate) fn reached_at_tip(entered: &Entered, setting: Entry<Vacuum>) -> Option<f64> {
    let setting = entered.get(setting)?;
    let ceiling = known_ceiling(entered).unwrap_or(f64::MAX);
    let siphon = fluid_density(entered).and_then(|density| siphon(entered, density)).unwrap_or(0.0);
    Some(ceiling::reached(setting, ceiling, siphon).1)
}
