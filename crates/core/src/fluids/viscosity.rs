//! The viscosity of water.

use crate::constant::fluids::CELSIUS;
use crate::constant::fluids::*;
use crate::math::pow;
use crate::quantity::Temperature;

working! {
    /// The viscosity of water, step by step.
    Working "The viscosity of water";
    reduced "T/T*" "1" = "(t + 273.15)/300" [CELSIUS, VISCOSITY_T], "reduced temperature", IapwsViscosity Memory;
    viscosity "mu" "mPa s" = "mu = (280.68 x^-1.9 + 511.45 x^-7.7 + 61.131 x^-19.6 + 0.45903 x^-40)/1000, x = T/T*"
        [VISCOSITY_A1, VISCOSITY_B1, VISCOSITY_A2, VISCOSITY_B2, VISCOSITY_A3, VISCOSITY_B3, VISCOSITY_A4, VISCOSITY_B4],
        "viscosity of water", IapwsViscosity Memory;
}

/// Viscosity of liquid water at 0.1 MPa, mPa s.
///
/// ```text
/// mu = 280.68 x^-1.9 + 511.45 x^-7.7 + 61.131 x^-19.6 + 0.45903 x^-40 uPa s          x = T/300 K
/// ```
///
/// Source: IAPWS, liquid water at 0.1 MPa (memory; agrees with the printed 1001.6 uPa s at 20 C).
///
/// ```
/// use ocellus_core::{fluids::viscosity, quantity::Temperature};
/// let w = viscosity::working(Temperature::from_c(20.0)?);
/// assert!((w.viscosity - 1.0016).abs() < 0.0001);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
#[inline(never)]
pub fn working(temperature: Temperature) -> Working {
    let reduced = (temperature.c() + CELSIUS.get()) / VISCOSITY_T.get();
    let terms = [
        (VISCOSITY_A1.get(), VISCOSITY_B1.get()),
        (VISCOSITY_A2.get(), VISCOSITY_B2.get()),
        (VISCOSITY_A3.get(), VISCOSITY_B3.get()),
        (VISCOSITY_A4.get(), VISCOSITY_B4.get()),
    ];
    let micro = terms.iter().fold(0.0, |sum, (a, b)| sum + a * pow(reduced, *b));
    Working { reduced, viscosity: micro / 1000.0 }
}
