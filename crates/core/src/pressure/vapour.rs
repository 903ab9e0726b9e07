//! The pressure at which water boils.

use crate::constant::pressure::*;
use crate::math::{pow, sqrt, square};
use crate::quantity::Temperature;

/// Saturation pressure of water, Pa.
///
/// ```text
/// t = T + n9/(T - n10)          A = t^2 + n1 t + n2,  B = n3 t^2 + n4 t + n5,  C = n6 t^2 + n7 t + n8
/// p = 10^6 (2 C/(-B + sqrt(B^2 - 4 A C)))^4
/// ```
///
/// Source: IAPWS-IF97 (2007), region 4 (two).
///
/// ```
/// use ocellus_core::{pressure::vapour::saturation, quantity::Temperature};
/// assert!((saturation(Temperature::from_c(26.85)?) - 3536.58941).abs() < 0.00005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn saturation(temperature: Temperature) -> f64 {
    let (_, [a, b, c]) = coefficients(temperature.c() + CELSIUS.get());
    1e6 * pow(2.0 * c / (-b + sqrt(square(b) - 4.0 * a * c)), 4.0)
}

/// The reduced temperature and the three coefficients of the quadratic, at a temperature in kelvin.
///
/// ```
/// let (t, [a, b, c]) = ocellus_core::pressure::vapour::coefficients(300.0);
/// assert!(t > 300.0 && a < 0.0 && b < 0.0 && c > 0.0);
/// ```
pub fn coefficients(kelvin: f64) -> (f64, [f64; 3]) {
    let t = kelvin + IF97_N9.get() / (kelvin - IF97_N10.get());
    let quadratic = |n2: f64, n1: f64, n0: f64| n2 * square(t) + n1 * t + n0;
    let a = quadratic(1.0, IF97_N1.get(), IF97_N2.get());
    let b = quadratic(IF97_N3.get(), IF97_N4.get(), IF97_N5.get());
    let c = quadratic(IF97_N6.get(), IF97_N7.get(), IF97_N8.get());
    (t, [a, b, c])
}
