//! The pressure at which water boils.

use crate::constant::fluids::*;
use crate::fluids::unit::{Unit, convert};
use crate::math::{exp, pow, sqrt, square};
use crate::quantity::Temperature;

working! {
    /// The saturation pressure of water, step by step.
    Working "The boiling of the fluid";
    kelvin "T" "K" = "T = t + 273.15" [CELSIUS], "temperature of the fluid", Identity Two;
    theta "theta" "K" = "theta = T - 0.23855557567849/(T - 650.17534844798)" [IF97_N9, IF97_N10], "reduced temperature", Iapws97 Two;
    a "A" "K2" = "A = theta^2 + 1167.0521452767 theta - 724213.16703206" [IF97_N1, IF97_N2], "coefficient", Iapws97 Two;
    b "B" "K2" = "B = -17.073846940092 theta^2 + 12020.824702470 theta - 3232555.0322333" [IF97_N3, IF97_N4, IF97_N5],
        "coefficient", Iapws97 Two;
    c "C" "K2" = "C = 14.915108613530 theta^2 - 4823.2657361591 theta + 405113.40542057" [IF97_N6, IF97_N7, IF97_N8],
        "coefficient", Iapws97 Two;
    pressure "p_sat" "Pa" = "p_sat = 10^6 (2 C/(-B + sqrt(B^2 - 4 A C)))^4" [], "pressure at which the fluid boils", Iapws97 Two;
}

/// Saturation pressure of water.
///
/// ```text
/// theta = T + n9/(T - n10)
/// A = theta^2 + n1 theta + n2,  B = n3 theta^2 + n4 theta + n5,  C = n6 theta^2 + n7 theta + n8
/// p = 10^6 (2 C/(-B + sqrt(B^2 - 4 A C)))^4
/// ```
///
/// Source: IAPWS-IF97 (2007), region 4 (two).
///
/// ```
/// use ocellus_core::{fluids::vapour, quantity::Temperature};
/// let w = vapour::working(Temperature::from_c(26.85)?);
/// assert!((w.pressure - 3536.58941).abs() < 0.00005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(temperature: Temperature) -> Working {
    at_kelvin(temperature.c() + CELSIUS.get())
}

/// The same at a temperature in kelvin, from 273.15 to 647.096: the release prints its check values far from any theatre.
///
/// ```
/// let w = ocellus_core::fluids::vapour::at_kelvin(500.0);
/// assert!((w.pressure - 2.63889776e6).abs() < 0.005);
/// ```
pub fn at_kelvin(kelvin: f64) -> Working {
    let theta = kelvin + IF97_N9.get() / (kelvin - IF97_N10.get());
    let quadratic = |n2: f64, n1: f64, n0: f64| n2 * square(theta) + n1 * theta + n0;
    let a = quadratic(1.0, IF97_N1.get(), IF97_N2.get());
    let b = quadratic(IF97_N3.get(), IF97_N4.get(), IF97_N5.get());
    let c = quadratic(IF97_N6.get(), IF97_N7.get(), IF97_N8.get());
    let pressure = 1e6 * pow(2.0 * c / (-b + sqrt(square(b) - 4.0 * a * c)), 4.0);
    Working { kelvin, theta, a, b, c, pressure }
}

/// The same by Magnus' formula, which weather stations use, Pa: 0.26 to 0.31 % less from 20 to 37 C.
///
/// ```text
/// e = 6.112 exp(17.62 t/(243.12 + t)) hPa
/// ```
///
/// Source: WMO-No. 8 (two).
///
/// ```
/// use ocellus_core::{fluids::vapour, quantity::Temperature};
/// let t = Temperature::from_c(20.0)?;
/// let less = vapour::working(t).pressure - vapour::magnus(t);
/// assert!((less / vapour::magnus(t) - 0.0026).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn magnus(temperature: Temperature) -> f64 {
    let t = temperature.c();
    let e = MAGNUS_P0.get() * exp(MAGNUS_A.get() * t / (MAGNUS_B.get() + t));
    convert(e, Unit::HPa, Unit::Pa)
}
