//! The resistance of one's own infusion line, from two readings at a test chamber that does not leak.

use crate::error::Error;
use crate::quantity::{Aspiration, GasPressure};

working! {
    /// Two readings, step by step.
    Working "Two readings of one machine: an illustration";
    resistance "R_in" "mmHg min/mL" = "R_in = (P1 - P2)/(Q2 - Q1)" [], "illustration: resistance of the infusion line", Here Chosen;
    still "P0" "mmHg" = "P0 = P1 + R_in Q1" [], "illustration: pressure with nothing flowing", Here Chosen;
}

/// What one machine made at one aspiration flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Aspiration flow.
    pub flow: Aspiration,
    /// Pressure in the chamber.
    pub pressure: GasPressure,
}

/// The line through two readings.
///
/// ```text
/// R_in = (P1 - P2)/(Q2 - Q1)          P0 = P1 + R_in Q1
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] where the pressure does not fall as the flow rises.
///
/// ```
/// use ocellus_core::{fluids::readings::*, quantity::*};
/// let reading = |flow, mmhg| Ok::<_, ocellus_core::error::Error>(
///     Reading { flow: Aspiration::from_ml_min(flow)?, pressure: GasPressure::from_mmhg(mmhg)? });
/// let w = working(reading(20.0, 62.0)?, reading(40.0, 58.0)?)?;
/// assert!((w.resistance - 0.2).abs() < 1e-12 && (w.still - 66.0).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(first: Reading, second: Reading) -> Result<Working, Error> {
    let rise = second.flow.ml_min() - first.flow.ml_min();
    let fall = first.pressure.mmhg() - second.pressure.mmhg();
    // where one of them is zero neither product is above it
    if rise * fall <= 0.0 {
        return Err(Error::NoSolution);
    }
    let resistance = fall / rise;
    Ok(Working { resistance, still: first.pressure.mmhg() + resistance * first.flow.ml_min() })
}
