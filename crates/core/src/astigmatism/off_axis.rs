//! A cylinder that lies off the axis it was wanted at: what is left, and what is lost, which are not the same.

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::sphero_cylinder::SpheroCylinder;
use crate::astigmatism::turned;
use crate::constant::off_axis::RULE_PER_DEG;
use crate::math::{cos_deg, sin_deg, sqrt};
use crate::quantity::Axis;

working! {
    /// What a lens that was right loses when it is turned, step by step.
    Loss "A lens that was right, turned off its axis";
    apart "p" "deg" = "chosen" [], "turned off by", Entered Entered;
    left "left" "%" = "100 * 2 sin p" [], "left, of the cylinder", OffAxis2001 Two;
    lost "lost" "%" = "100 (1 - cos 2p)" [], "lost along the meridian meant", Identity Two;
    rule "rule" "%" = "3.3 p: the chord to 30 deg, no primary source" [RULE_PER_DEG], "left, by the rule of thumb", NoSource CommonPractice;
}

/// Three numbers for one turn: what is left, what is lost, and the rule of thumb.
///
/// ```text
/// left = 2 sin p          lost = 1 - cos 2p          rule of thumb 3.3 % a degree
/// ```
///
/// "Left" is the size of the cylinder that remains; "lost" is what the lens no longer does along the meridian meant.
///
/// ```
/// let loss = ocellus_core::astigmatism::off_axis::loss(30.0);
/// assert!((loss.left - 100.0).abs() < 1e-9 && (loss.lost - 50.0).abs() < 1e-9);
/// ```
pub fn loss(apart: f64) -> Loss {
    let (p, twice) = (apart.abs(), 2.0 * apart.abs());
    Loss { apart, left: 200.0 * sin_deg(p), lost: 100.0 * (1.0 - cos_deg(twice)), rule: RULE_PER_DEG.get() * p }
}

/// The correction still needed when a cylinder wanted at an axis lies turned off it, counter-clockwise plus.
///
/// ```text
/// sphere +C sin p      cylinder -2 C sin p      axis t + 45 + p/2
/// ```
///
/// ```
/// use ocellus_core::{astigmatism::off_axis::needed, quantity::Axis};
/// let rx = needed(2.0, Axis::from_deg(90.0)?, 10.0);
/// assert!((rx.cylinder + 0.6946).abs() < 5e-5 && rx.axis.unwrap().deg() == 140.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn needed(cylinder: f64, wanted: Axis, apart: f64) -> SpheroCylinder<Cornea> {
    let off = cylinder * sin_deg(apart);
    SpheroCylinder::at(Cornea, off, -2.0 * off, Some(turned(wanted, 45.0 + apart / 2.0)))
}

/// What a cylinder leaves of another that it is turned off from, D.
///
/// ```text
/// sqrt(C1^2 + C2^2 - 2 C1 C2 cos 2p)
/// ```
///
/// ```
/// assert!((ocellus_core::astigmatism::off_axis::left(2.0, 2.0, 30.0) - 2.0).abs() < 1e-12);
/// ```
pub fn left(wanted: f64, placed: f64, apart: f64) -> f64 {
    let square = wanted * wanted + placed * placed - 2.0 * wanted * placed * cos_deg(2.0 * apart);
    // two equal cylinders on one axis leave nothing, and rounding must not leave less
    sqrt(square.max(0.0))
}
