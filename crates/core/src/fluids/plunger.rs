//! The force on a plunger.

use crate::constant::fluids::MMHG;
use crate::fluids::unit::{Unit, convert};
use crate::math::{CIRCLE, square};
use crate::quantity::{Friction, SyringeBore};

working! {
    /// The force on a plunger, step by step.
    Working "The plunger";
    fluid "F_f" "N" = "F_f = dP 133.322387415 pi D_s^2/4" [MMHG], "force for the fluid", Identity Two;
    force "F" "N" = "F = F_f + friction" [], "force on the plunger", Identity Two;
}

/// Force on the plunger of a syringe.
///
/// ```text
/// F = dP pi D_s^2/4 + friction
/// ```
///
/// ```
/// use ocellus_core::{fluids::plunger, quantity::*};
/// let w = plunger::working(540.0, SyringeBore::from_mm(4.7)?, Friction::from_n(0.0)?);
/// assert!((w.force - 1.25).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(drop_mmhg: f64, syringe: SyringeBore, friction: Friction) -> Working {
    let area = CIRCLE * square(syringe.mm() / 1000.0) / 4.0;
    let fluid = convert(drop_mmhg, Unit::MmHg, Unit::Pa) * area;
    Working { fluid, force: fluid + friction.n() }
}
