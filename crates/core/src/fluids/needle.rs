//! Needle tubing by its gauge: nominal sizes, and the least bores of the standard. A gauge does not fix the bore.

use crate::quantity::Gauge;

/// One gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Needle {
    /// Gauge, G.
    pub gauge: u8,
    /// Nominal outer diameter, mm: Birmingham gauge (two).
    pub outer: f64,
    /// Nominal inner bore, mm: Birmingham gauge, outer less twice the wall (two).
    pub bore: f64,
    /// Least bore of tubing with a regular wall, mm: ISO 9626 (30 G read, the others memory).
    pub least: f64,
    /// Least bore of tubing with a thin wall, mm: ISO 9626 (30 G read, the others memory).
    pub least_thin: f64,
}

const fn needle(gauge: u8, outer: f64, bore: f64, least: f64, least_thin: f64) -> Needle {
    Needle { gauge, outer, bore, least, least_thin }
}

/// Every gauge there is here, wide to fine.
pub static NEEDLES: [Needle; 14] = [
    needle(18, 1.270, 0.838, 0.790, 0.910),
    needle(19, 1.067, 0.686, 0.648, 0.750),
    needle(20, 0.9081, 0.603, 0.560, 0.635),
    needle(21, 0.8192, 0.514, 0.490, 0.547),
    needle(22, 0.7176, 0.413, 0.390, 0.440),
    needle(23, 0.6414, 0.337, 0.317, 0.370),
    needle(24, 0.5652, 0.311, 0.280, 0.343),
    needle(25, 0.5144, 0.260, 0.232, 0.292),
    needle(26, 0.4636, 0.260, 0.232, 0.292),
    needle(27, 0.4128, 0.210, 0.184, 0.241),
    needle(28, 0.3620, 0.184, 0.133, 0.190),
    needle(29, 0.3366, 0.184, 0.133, 0.190),
    needle(30, 0.3112, 0.159, 0.133, 0.165),
    needle(31, 0.2604, 0.133, 0.114, 0.125),
];

/// The needle of a gauge.
///
/// ```
/// use ocellus_core::{fluids::needle, quantity::Gauge};
/// assert_eq!(needle::of(Gauge::new(27.0)?).map(|needle| needle.bore), Some(0.210));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn of(gauge: Gauge) -> Option<&'static Needle> {
    NEEDLES.iter().find(|needle| f64::from(needle.gauge) == gauge.get())
}
