//! Cylinders as vectors: refractions, the cornea and its incision, and the toric lens.
//!
//! Axes follow ISO 8429: 0 at the observer's right, counter-clockwise, seen from the front; 0 and 180 are one meridian.
//! An incision's site is not an axis, see [`crate::quantity::Site`].

pub mod cornea;
pub mod power_vector;
pub mod site;
pub mod sphero_cylinder;
pub mod toric;

use crate::math::{atan2_deg, floor};
use crate::quantity::Axis;

/// A cylinder smaller than this, D, has no direction: what is left of rounding.
const NO_CYLINDER: f64 = 1e-9;

/// An axis as a dial is read, from 1 to 180: what would be printed as 0 is 180.
///
/// ```
/// use ocellus_core::{astigmatism::on_dial, quantity::Axis};
/// assert_eq!(on_dial(Axis::from_deg(0.0)?), 180.0);
/// assert_eq!(on_dial(Axis::from_deg(97.0)?), 97.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn on_dial(axis: Axis) -> f64 {
    if axis.deg() < 0.5 { 180.0 } else { axis.deg() }
}

/// The meridian of half the direction of (x, y), in [0, 180).
fn half_direction(y: f64, x: f64) -> Option<Axis> {
    meridian(atan2_deg(y, x) / 2.0)
}

/// A meridian turned counter-clockwise as seen from the front.
pub(crate) fn turned(axis: Axis, degrees: f64) -> Axis {
    meridian(axis.deg() + degrees).unwrap_or(axis)
}

/// An angle as a meridian in [0, 180).
fn meridian(degrees: f64) -> Option<Axis> {
    let turned = degrees - 180.0 * floor(degrees / 180.0);
    Axis::from_deg(if turned >= 180.0 { 0.0 } else { turned }).ok()
}
