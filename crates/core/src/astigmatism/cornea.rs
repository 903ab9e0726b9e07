//! The cornea that a toric lens will look through: as measured, with its back, after the incisions.

use crate::astigmatism::plane;
use crate::astigmatism::power_vector::PowerVector;
use crate::constant::optics::INDEX_1_3375;
use crate::optics::cornea::Cornea;

working! {
    /// The cornea and its incisions, step by step.
    Working "The cornea after the incisions";
    n "N" "D" = "N = K steep - K flat, at index 1.3375" [INDEX_1_3375], "corneal astigmatism measured", Identity Two;
    a "a" "deg" = "entered" [], "steep meridian", Entered Entered;
    x "x" "D" = "x = N cos 2a" [], "its vector", Thibos1997 Two;
    y "y" "D" = "y = N sin 2a" [], "its vector", Thibos1997 Two;
    b_x "x'" "D" = "x, or what the correction for the back makes of it" [], "with the back of the cornea", Identity Two;
    b_y "y'" "D" = "y, or what the correction for the back makes of it" [], "with the back of the cornea", Identity Two;
    s_x "s_x" "D" = "the sum over all incisions" [], "the incisions' vector", Identity Two;
    s_y "s_y" "D" = "the sum over all incisions" [], "the incisions' vector", Identity Two;
    planned "N'" "D" = "N' = sqrt((x' + s_x)^2 + (y' + s_y)^2), its axis atan2(y' + s_y, x' + s_x)/2" [],
        "corneal astigmatism after the incisions", Thibos1997 Two;
}

/// Net corneal astigmatism as a vector, strongest along the steep meridian, without its mean.
///
/// `None` when the axes are not known. No astigmatism is the zero vector, which has no axis.
///
/// ```
/// use ocellus_core::{astigmatism, optics::cornea::Cornea, quantity::*};
/// let k = |d| CornealPower::from_d(d);
/// let axes = Some((Axis::from_deg(0.0)?, Axis::from_deg(90.0)?));
/// let cornea = Cornea::from_powers(k(43.0)?, k(44.5)?, KeratometricIndex::new(1.3375)?, axes)?;
/// let v = astigmatism::cornea::measured(&cornea).unwrap();
/// assert!((v.cylinder() - 1.5).abs() < 1e-12 && v.strongest().unwrap().deg() == 90.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn measured(cornea: &Cornea) -> Option<PowerVector<plane::Cornea>> {
    cornea.steep_axis().map(|axis| PowerVector::strongest_along(plane::Cornea, 0.0, cornea.astigmatism(), axis))
}

/// A cornea with its back and its incisions, step by step; `None` when the axes are not known.
///
/// ```
/// use ocellus_core::{astigmatism::{cornea, incision}, optics::cornea::Cornea, quantity::*};
/// let k = |d| CornealPower::from_d(d);
/// let axes = Some((Axis::from_deg(0.0)?, Axis::from_deg(90.0)?));
/// let front = Cornea::from_powers(k(43.0)?, k(44.5)?, KeratometricIndex::new(1.3375)?, axes)?;
/// let incision = incision::induced(Site::from_deg(90.0)?, Flattening::from_d(0.5)?);
/// let w = cornea::working(&front, cornea::measured(&front).unwrap(), incision).unwrap();
/// assert!((w.planned - 1.0).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(
    cornea: &Cornea,
    with_back: PowerVector<plane::Cornea>,
    incisions: PowerVector<plane::Cornea>,
) -> Option<Working> {
    let before = measured(cornea)?;
    Some(Working {
        n: cornea.astigmatism(),
        a: cornea.steep_axis()?.deg(),
        x: 2.0 * before.j0,
        y: 2.0 * before.j45,
        b_x: 2.0 * with_back.j0,
        b_y: 2.0 * with_back.j45,
        s_x: 2.0 * incisions.j0,
        s_y: 2.0 * incisions.j45,
        planned: with_back.plus(incisions).cylinder(),
    })
}
