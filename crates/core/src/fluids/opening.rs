//! A sharp opening.

use crate::constant::fluids::MMHG;
use crate::fluids::unit::{Unit, convert};
use crate::math::{CIRCLE, sqrt, square};
use crate::quantity::{Density, Discharge, Drive, Opening};

working! {
    /// Flow through an opening, step by step.
    Working "An opening";
    drive "dP" "mmHg" = "entered, or the column" [], "pressure across it", Entered Entered;
    velocity "v" "m/s" = "v = sqrt(2 dP 133.322387415/rho)" [MMHG], "velocity of an ideal jet", Identity Two;
    flow "Q" "mL/min" = "Q = Cd (pi d^2/4) v" [], "flow through it", NoSource Memory;
}

/// Flow through a sharp opening.
///
/// ```text
/// Q = Cd A sqrt(2 dP/rho)          A = pi d^2/4
/// ```
///
/// `Cd` is 0.60 to 0.65 for sharp openings (memory).
///
/// ```
/// use ocellus_core::{fluids::opening, quantity::*};
/// let w = opening::working(
///     Opening::from_mm(0.5)?, Discharge::new(0.62)?, Drive::from_mmhg(60.0)?, Density::from_kg_m3(1000.0)?);
/// assert!((w.flow - 29.2).abs() < 0.05);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(opening: Opening, discharge: Discharge, drive: Drive, density: Density) -> Working {
    working_at(opening, discharge, drive.mmhg(), density)
}

/// The same at a calculated pressure, mmHg.
///
/// ```
/// use ocellus_core::{fluids::opening::*, quantity::*};
/// let (opening, discharge, water) = (Opening::from_mm(0.5)?, Discharge::new(0.62)?, Density::from_kg_m3(1000.0)?);
/// assert_eq!(working_at(opening, discharge, 60.0, water), working(opening, discharge, Drive::from_mmhg(60.0)?, water));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working_at(opening: Opening, discharge: Discharge, mmhg: f64, density: Density) -> Working {
    let velocity = sqrt(2.0 * convert(mmhg, Unit::MmHg, Unit::Pa) / density.kg_m3());
    let area = CIRCLE * square(opening.mm() / 1000.0) / 4.0;
    Working { drive: mmhg, velocity, flow: discharge.get() * area * velocity * 6e7 }
}
