//! Pressure of the column at the eye, with nothing flowing.

use crate::constant::fluids::{G, MMHG};
use crate::fluids::unit::{Unit, convert};
use crate::quantity::{Density, GasPressure, Level};

working! {
    /// The column, step by step.
    Working "The column";
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
/// use ocellus_core::{fluids::column, quantity::*};
/// let level = |cm| Level::from_cm(cm);
/// let w = column::working(level(75.0)?, level(0.0)?, GasPressure::from_mmhg(0.0)?, Density::from_kg_m3(1000.0)?);
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

working! {
    /// A machine that is set by pressure, step by step.
    Set "The pressure set on a machine";
    set "P_set" "mmHg" = "entered" [], "irrigating pressure set", Entered Entered;
    height "h" "cm" = "h = h_assumed - h_eye" [], "level the machine assumes, above the eye", Identity Two;
    pressure "P" "mmHg" = "P = P_set + rho 9.80665 h/100/133.322387415" [G, MMHG], "pressure at the eye, nothing flowing", Identity Two;
    column "h_column" "cm" = "h_column = P 133.322387415 100/(rho 9.80665)" [G, MMHG], "open column of the same pressure", Identity Two;
}

/// Pressure at the eye with a machine that is set by pressure, for an eye at a level that it assumes.
///
/// ```text
/// P = P_set + rho g (h_assumed - h_eye)
/// ```
///
/// ```
/// use ocellus_core::{fluids::column, quantity::*};
/// let w = column::set(GasPressure::from_mmhg(60.0)?, Level::from_cm(0.0)?, Level::from_cm(-10.0)?, Density::from_kg_m3(1000.0)?);
/// assert!((w.pressure - 67.36).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn set(set: GasPressure, assumed: Level, eye: Level, density: Density) -> Set {
    let height = assumed.cm() - eye.cm();
    let pressure = set.mmhg() + of_column(height, density);
    Set { set: set.mmhg(), height, pressure, column: pressure / of_column(1.0, density) }
}

/// Pressure of so many centimetres of fluid, mmHg: of a column, of a wrong eye level, of a siphon.
///
/// ```
/// use ocellus_core::{fluids::column::of_column, quantity::Density};
/// assert!((of_column(15.0, Density::from_kg_m3(1000.0)?) - 11.03).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn of_column(cm: f64, density: Density) -> f64 {
    convert(density.kg_m3() * G.get() * cm / 100.0, Unit::Pa, Unit::MmHg)
}

/// The open level for a wanted pressure at the eye, cm.
///
/// ```text
/// h_open = h_eye + (P - P_gas)/(rho g)
/// ```
///
/// ```
/// use ocellus_core::{fluids::column::level_for, quantity::*};
/// let at = |gas| Ok::<_, ocellus_core::error::Error>(level_for(
///     GasPressure::from_mmhg(60.0)?, GasPressure::from_mmhg(gas)?, Level::from_cm(85.0)?, Density::from_kg_m3(1000.0)?));
/// assert!((at(0.0)? - 166.57).abs() < 0.005 && (at(60.0)? - 85.0).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn level_for(wanted: GasPressure, gas: GasPressure, eye: Level, density: Density) -> f64 {
    eye.cm() + (wanted.mmhg() - gas.mmhg()) / of_column(1.0, density)
}

/// The setting for a wanted pressure at the eye, mmHg, of a machine that assumes another level of the eye.
///
/// ```text
/// P_set = P - rho g (h_assumed - h_eye)
/// ```
///
/// ```
/// use ocellus_core::{fluids::column::setting_for, quantity::*};
/// let level = Level::from_cm;
/// let set = setting_for(GasPressure::from_mmhg(60.0)?, level(0.0)?, level(-10.0)?, Density::from_kg_m3(1000.0)?);
/// assert!((set - 52.64).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn setting_for(wanted: GasPressure, assumed: Level, eye: Level, density: Density) -> f64 {
    wanted.mmhg() - of_column(assumed.cm() - eye.cm(), density)
}
