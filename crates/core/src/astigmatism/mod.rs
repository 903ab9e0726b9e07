//! Cylinders as vectors: refractions, the cornea with its back and its incisions, the toric lens, what became of it.
//!
//! One representation, [`power_vector::PowerVector`], whose plane is a part of its type; it is converted from and
//! to sphero-cylinders of either sign, a steep meridian, powers in three meridians, 2x2 matrices and polar values. What is
//! called *needed* or *left* is a correction still to be worn; every other power is one that a surface has.
//!
//! Axes follow ISO 8429: 0 at the observer's right, counter-clockwise, seen from the front; 0 and 180 are one meridian.
//! An incision's site is not an axis, see [`crate::quantity::Site`].

pub mod change;
pub mod cornea;
pub mod expected;
pub mod group;
pub mod incision;
pub mod matrix;
pub mod off_axis;
pub mod plane;
pub mod polar;
pub mod posterior;
pub mod power_vector;
pub mod site;
pub mod sphero_cylinder;
pub mod toric;
pub mod turning;
pub mod two_surfaces;

use crate::math::{atan2_deg, floor, within_turn};
use crate::quantity::Axis;

/// A cylinder smaller than this, D, has no direction: what is left of rounding.
const NO_CYLINDER: f64 = 1e-9;

/// An axis as a dial is read, from 0.5 to below 180.5, so that in whole degrees it is 1 to 180: what would be 0 is 180.
///
/// ```
/// use ocellus_core::{astigmatism::on_dial, quantity::Axis};
/// assert_eq!(on_dial(Axis::from_deg(0.0)?), 180.0);
/// assert_eq!(on_dial(Axis::from_deg(0.25)?), 180.25);
/// assert_eq!(on_dial(Axis::from_deg(97.0)?), 97.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn on_dial(axis: Axis) -> f64 {
    if axis.deg() < 0.5 { axis.deg() + 180.0 } else { axis.deg() }
}

/// The meridian of half the direction of (x, y), in [0, 180).
fn half_direction(y: f64, x: f64) -> Option<Axis> {
    meridian(atan2_deg(y, x) / 2.0)
}

/// A meridian turned counter-clockwise as seen from the front.
///
/// ```
/// use ocellus_core::{astigmatism::turned, quantity::Axis};
/// assert_eq!(turned(Axis::from_deg(175.0)?, 10.0).deg(), 5.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn turned(axis: Axis, degrees: f64) -> Axis {
    meridian(axis.deg() + degrees).unwrap_or(axis)
}

/// An angle as a meridian in [0, 180).
///
/// ```
/// assert_eq!(ocellus_core::astigmatism::meridian(-10.0).unwrap().deg(), 170.0);
/// ```
pub fn meridian(degrees: f64) -> Option<Axis> {
    let turned = degrees - 180.0 * floor(degrees / 180.0);
    Axis::from_deg(if turned >= 180.0 { 0.0 } else { turned }).ok()
}

/// The short way round to a meridian, in (-90, 90] degrees. What rounding leaves of no turn is none, and of a right angle one.
///
/// ```
/// use ocellus_core::astigmatism::short_way;
/// assert_eq!((short_way(170.0), short_way(-90.0), short_way(185.0)), (-10.0, 90.0, 5.0));
/// ```
pub fn short_way(degrees: f64) -> f64 {
    const HAIR: f64 = 1e-9;
    let turned = degrees - 180.0 * floor(degrees / 180.0);
    match if turned > 90.0 + HAIR { turned - 180.0 } else { turned.min(90.0) } {
        turn if turn.abs() < HAIR => 0.0,
        turn => turn,
    }
}

/// The angle between two meridians, 0 to 90 degrees.
///
/// ```
/// assert_eq!(ocellus_core::astigmatism::apart(5.0, 178.0), 7.0);
/// ```
pub fn apart(first: f64, second: f64) -> f64 {
    let apart = within_turn((first - second).abs(), 180.0);
    apart.min(180.0 - apart)
}
