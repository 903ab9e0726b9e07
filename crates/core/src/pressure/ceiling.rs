//! How far a pump can pull here.

use crate::pressure::unit::{Unit, convert};
use crate::pressure::{air, vapour};
use crate::quantity::{Altitude, StationPressure, Temperature};
use crate::working::Topic;

working! {
    /// The ceiling on vacuum, step by step.
    Working of Topic::Ceiling;
    air "p_air" "Pa" = "measured, or 101325 (1 - 0.0065 H/288.15)^(g M/(R L)) with H = 6356766 Z/(6356766 + Z)"
        [crate::constant::pressure::AIR_P0, crate::constant::pressure::AIR_L, crate::constant::pressure::AIR_T0, crate::constant::pressure::EARTH],
        "pressure of the air", Iso2533 Two;
    vapour "p_sat" "Pa" = "saturation pressure of water at the fluid's temperature" [], "pressure at which the fluid boils", Iapws97 Two;
    ceiling "V_max" "mmHg" = "V_max = (p_air - p_sat)/133.322387415" [crate::constant::pressure::MMHG], "ceiling on vacuum", Identity Two;
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
/// use ocellus_core::{pressure::ceiling::{Air, working}, quantity::*};
/// let w = working(Air::Altitude(Altitude::from_m(1609.0)?), Temperature::from_c(20.0)?);
/// assert!((w.ceiling - 608.3).abs() < 0.05);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(air: Air, temperature: Temperature) -> Working {
    let air = match air {
        Air::Station(pressure) => convert(pressure.hpa(), Unit::HPa, Unit::Pa),
        Air::Altitude(altitude) => air::pressure_at(air::geopotential(altitude)),
    };
    let vapour = vapour::saturation(temperature);
    Working { air, vapour, ceiling: convert(air - vapour, Unit::Pa, Unit::MmHg) }
}
