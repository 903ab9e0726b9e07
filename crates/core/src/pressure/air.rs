//! Pressure of the air at a height, by the standard atmosphere.

use crate::constant::pressure::*;
use crate::math::pow;
use crate::quantity::Altitude;

/// Geopotential height of a map height, m.
///
/// ```text
/// H = r0 Z / (r0 + Z)
/// ```
///
/// ```
/// use ocellus_core::{pressure::air::geopotential, quantity::Altitude};
/// assert!((geopotential(Altitude::from_m(2000.0)?) - 1999.37).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn geopotential(altitude: Altitude) -> f64 {
    EARTH.get() * altitude.m() / (EARTH.get() + altitude.m())
}

/// Pressure of the standard atmosphere at a geopotential height below 11 km, Pa.
///
/// ```text
/// p = 101325 (1 - 0.0065 H/288.15)^m          m = g M/(R L)
/// ```
///
/// Source: US Standard Atmosphere 1976 = ISO 2533 below 11 km (two).
///
/// ```
/// use ocellus_core::pressure::air::pressure_at;
/// assert!((pressure_at(2000.0) - 79495.2).abs() < 0.05);
/// ```
pub fn pressure_at(geopotential: f64) -> f64 {
    let exponent = G.get() * AIR_M.get() / (AIR_R.get() * AIR_L.get());
    AIR_P0.get() * pow(1.0 - AIR_L.get() * geopotential / AIR_T0.get(), exponent)
}
