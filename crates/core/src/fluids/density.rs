//! The density of water.

use crate::constant::fluids::*;
use crate::math::square;
use crate::quantity::Temperature;

working! {
    /// The density of water, step by step.
    Working "The density of water";
    celsius "t" "C" = "entered" [], "temperature of the fluid", Entered Entered;
    density "rho" "kg/m3" = "rho = 999.974950 (1 - (t - 3.983035)^2 (t + 301.797)/(522528.9 (t + 69.34881)))"
        [TANAKA_A5, TANAKA_A1, TANAKA_A2, TANAKA_A3, TANAKA_A4], "density of water", Tanaka2001 Two;
}

/// Density of air-free water at one atmosphere, kg/m3, from 0 to 40 C.
///
/// ```text
/// rho = a5 (1 - (t + a1)^2 (t + a2)/(a3 (t + a4)))
/// ```
///
/// Source: Tanaka et al., Metrologia 2001;38:301-309 (two).
///
/// ```
/// use ocellus_core::{fluids::density, quantity::Temperature};
/// let w = density::working(Temperature::from_c(20.0)?);
/// assert!((w.density - 998.2067).abs() < 0.00005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(temperature: Temperature) -> Working {
    let t = temperature.c();
    let fraction = square(t + TANAKA_A1.get()) * (t + TANAKA_A2.get()) / (TANAKA_A3.get() * (t + TANAKA_A4.get()));
    Working { celsius: t, density: TANAKA_A5.get() * (1.0 - fraction) }
}
