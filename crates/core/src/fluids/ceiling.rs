//! How far a pump can pull here.

use crate::constant::fluids::MMHG;
use crate::fluids::unit::{Unit, convert};
use crate::fluids::{air, vapour};
use crate::quantity::{Altitude, StationPressure, Temperature, Vacuum};
use crate::working::Steps;

working! {
    /// The ceiling on vacuum, step by step.
    Working "The vacuum that is left";
    air "p_air" "Pa" = "measured, or of the standard atmosphere" [], "pressure of the air", Iso2533 Two;
    vapour "p_sat" "Pa" = "saturation pressure of water at the fluid's temperature" [], "pressure at which the fluid boils", Iapws97 Two;
    ceiling "V_max" "mmHg" = "V_max = (p_air - p_sat)/133.322387415" [MMHG], "ceiling on vacuum", Identity Two;
}

/// Where the pressure of the air comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Air {
    /// Measured in the theatre: the better one.
    Station(StationPressure),
    /// The standard atmosphere at a map height.
    Altitude(Altitude),
}

/// The greatest gauge vacuum that can be reached, whatever the pump.
///
/// ```text
/// V_max = p_air - p_sat(t)
/// ```
///
/// ```
/// use ocellus_core::{fluids::ceiling::{Air, working}, quantity::*};
/// let w = working(Air::Altitude(Altitude::from_m(1609.0)?), Temperature::from_c(20.0)?);
/// assert!((w.ceiling - 608.3).abs() < 0.05);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(air: Air, temperature: Temperature) -> Working {
    let air = match air {
        Air::Station(pressure) => convert(pressure.hpa(), Unit::HPa, Unit::Pa),
        Air::Altitude(altitude) => air::working(altitude).pressure,
    };
    let vapour = vapour::working(temperature).pressure;
    Working { air, vapour, ceiling: convert(air - vapour, Unit::Pa, Unit::MmHg) }
}

/// What a setting gives: at the pump, and at a tip that lies higher by as much as `siphon` mmHg of fluid, nothing flowing.
/// Nowhere is there more than the ceiling, and what lies lower than the pump has less.
///
/// ```text
/// V_pump = min(V, V_max)          V_tip = min(V_pump + rho g (h_eye - h_pump), V_max)
/// ```
///
/// ```
/// use ocellus_core::{fluids::ceiling::reached, quantity::Vacuum};
/// assert_eq!(reached(Vacuum::from_mmhg(500.0)?, 608.0, -9.0), (500.0, 491.0));
/// assert_eq!(reached(Vacuum::from_mmhg(650.0)?, 608.0, 20.0), (608.0, 608.0));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn reached(setting: Vacuum, ceiling: f64, siphon: f64) -> (f64, f64) {
    let pump = setting.mmhg().min(ceiling);
    (pump, (pump + siphon).min(ceiling))
}

/// Streams the ceiling with all that is under it: the air, where it is computed, and the boiling of water.
///
/// ```
/// use ocellus_core::{fluids::ceiling::*, quantity::*, working::{Step, Steps}};
/// struct Count(usize);
/// impl Steps for Count {
///     fn step(&mut self, _: Step) { self.0 += 1; }
/// }
/// let mut count = Count(0);
/// show_all(Air::Station(StationPressure::from_hpa(834.0)?), Temperature::from_c(20.0)?, &mut count);
/// assert_eq!(count.0, 9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn show_all(air: Air, temperature: Temperature, steps: &mut dyn Steps) {
    if let Air::Altitude(altitude) = air {
        air::working(altitude).show(steps);
    }
    vapour::working(temperature).show(steps);
    working(air, temperature).show(steps);
}
