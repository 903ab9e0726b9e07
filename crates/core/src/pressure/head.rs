//! Pressure of the column at the eye, with nothing flowing.

use crate::constant::pressure::{G, MMHG};
use crate::pressure::unit::{Unit, convert};
use crate::quantity::{Density, GasPressure, Level};
use crate::working::Topic;

working! {
    /// The column, step by step.
    Working of Topic::Head;
    gas "P_gas" "mmHg" = "entered" [], "gas pressure over the fluid", Entered Entered;
    density "rho" "kg/m3" = "entered" [], "density of the fluid", Entered Entered;
    height "h" "cm" = "h = h_open - h_eye" [], "level open to air above the eye", Identity Two;
    column "P_h" "Pa" = "P_h = rho 9.80665 h/100" [G], "pressure of the column", Identity Two;
    pressure "P" "mmHg" = "P = P_gas + P_h/133.322387415" [MMHG], "pressure at the eye, nothing flowing", Identity Two;
    per_cm "dP/dh" "mmHg/cm" = "rho 9.80665/100/133.322387415" [G, MMHG], "what 1 cm of wrong eye level makes", Identity Two;
}

/// Pressure at the eye when nothing flows.
///
/// ```text
/// P = P_gas + rho g (h_open - h_eye)
/// ```
///
/// `open` is where the column is open to air: drip chamber or vent tip, not always the level of the fluid in the bottle.
///
/// ```
/// use ocellus_core::{pressure::head, quantity::*};
/// let level = |cm| Level::from_cm(cm);
/// let w = head::working(level(75.0)?, level(0.0)?, GasPressure::from_mmhg(0.0)?, Density::from_kg_m3(1000.0)?);
/// assert!((w.pressure - 55.17).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(open: Level, eye: Level, gas: GasPressure, density: Density) -> Working {
    let height = open.cm() - eye.cm();
    let per_metre = density.kg_m3() * G.get();
    let column = per_metre * height / 100.0;
    Working {
        gas: gas.mmhg(),
        density: density.kg_m3(),
        height,
        column,
        pressure: gas.mmhg() + convert(column, Unit::Pa, Unit::MmHg),
        per_cm: convert(per_metre / 100.0, Unit::Pa, Unit::MmHg),
    }
}
