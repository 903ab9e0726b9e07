//! What holds a piece at the tip.

use crate::fluids::unit::{Unit, convert};
use crate::math::{CIRCLE, square};
use crate::quantity::TipBore;

/// Force that holds a piece which closes the tip, mN.
///
/// ```text
/// F = (V + P_eye) pi d^2/4
/// ```
///
/// ```
/// use ocellus_core::{fluids::hold, quantity::TipBore};
/// let tip = TipBore::from_mm(0.7)?;
/// assert!((hold::force(400.0, 0.0, tip) - 20.5).abs() < 0.05 && (hold::force(400.0, 60.0, tip) - 23.6).abs() < 0.05);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn force(vacuum_mmhg: f64, eye_mmhg: f64, tip: TipBore) -> f64 {
    // pascals on square millimetres are micronewtons
    convert(vacuum_mmhg + eye_mmhg, Unit::MmHg, Unit::Pa) * CIRCLE * square(tip.mm()) / 4.0 / 1000.0
}
