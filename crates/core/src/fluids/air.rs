//! Pressure of the air at a height, by the standard atmosphere.

use crate::constant::fluids::*;
use crate::fluids::unit::{Unit, convert};
use crate::math::pow;
use crate::quantity::{Altitude, StationPressure};

working! {
    /// The standard atmosphere, step by step.
    Working "The air at this height";
    altitude "Z" "m" = "entered" [], "map height", Entered Entered;
    geopotential "H" "m" = "H = 6356766 Z/(6356766 + Z)" [EARTH], "geopotential height", Iso2533 Two;
    exponent "m" "1" = "m = g M/(R L) = 9.80665 * 0.0289644/(8.31432 * 0.0065)" [G, AIR_M, AIR_R, AIR_L], "exponent", Iso2533 Two;
    pressure "p_air" "Pa" = "p_air = 101325 (1 - 0.0065 H/288.15)^m" [AIR_P0, AIR_L, AIR_T0], "pressure of the air", Iso2533 Two;
}

/// The standard atmosphere at a map height.
///
/// ```text
/// H = r0 Z/(r0 + Z)          p = 101325 (1 - 0.0065 H/288.15)^m          m = g M/(R L)
/// ```
///
/// Source: US Standard Atmosphere 1976 = ISO 2533 below 11 km (two).
///
/// ```
/// use ocellus_core::{fluids::air, quantity::Altitude};
/// let w = air::working(Altitude::from_m(2000.0)?);
/// assert!((w.geopotential - 1999.37).abs() < 0.005 && (w.exponent - 5.2558761).abs() < 5e-8);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(altitude: Altitude) -> Working {
    let geopotential = EARTH.get() * altitude.m() / (EARTH.get() + altitude.m());
    Working { altitude: altitude.m(), geopotential, exponent: exponent(), pressure: pressure_at(geopotential) }
}

working! {
    /// The height of such air, step by step.
    Height "The height of this air";
    pressure "p_air" "Pa" = "entered" [], "measured pressure of the air", Entered Entered;
    geopotential "H" "m" = "H = 288.15/0.0065 (1 - (p_air/101325)^(1/m))" [AIR_T0, AIR_L, AIR_P0], "geopotential height", Iso2533 Two;
    altitude "Z" "m" = "Z = 6356766 H/(6356766 - H)" [EARTH], "map height with such air", Iso2533 Two;
}

/// The map height at which the standard atmosphere has this pressure: the other way round.
///
/// ```text
/// H = T0/L (1 - (p/P0)^(1/m))          Z = r0 H/(r0 - H)
/// ```
///
/// ```
/// use ocellus_core::{fluids::air, quantity::StationPressure};
/// let w = air::height(StationPressure::from_hpa(1013.25)?);
/// assert!(w.altitude.abs() < 1e-6);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn height(station: StationPressure) -> Height {
    let pressure = convert(station.hpa(), Unit::HPa, Unit::Pa);
    let geopotential = AIR_T0.get() / AIR_L.get() * (1.0 - pow(pressure / AIR_P0.get(), 1.0 / exponent()));
    Height { pressure, geopotential, altitude: EARTH.get() * geopotential / (EARTH.get() - geopotential) }
}

/// Pressure of the standard atmosphere at a geopotential height below 11 km, Pa.
///
/// ```text
/// p = 101325 (1 - 0.0065 H/288.15)^m          m = g M/(R L)
/// ```
///
/// ```
/// use ocellus_core::fluids::air::pressure_at;
/// assert!((pressure_at(2000.0) - 79495.2).abs() < 0.05);
/// ```
pub fn pressure_at(geopotential: f64) -> f64 {
    AIR_P0.get() * pow(1.0 - AIR_L.get() * geopotential / AIR_T0.get(), exponent())
}

/// `m = g M/(R L)`, rounded nowhere: the usual 5.25588 misses the printed table at 11 km.
fn exponent() -> f64 {
    G.get() * AIR_M.get() / (AIR_R.get() * AIR_L.get())
}
