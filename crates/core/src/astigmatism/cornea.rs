//! What an incision makes of a cornea.

use crate::astigmatism::meridian;
use crate::astigmatism::power_vector::PowerVector;
use crate::constant::optics::INDEX_1_3375;
use crate::eye::cornea::Cornea;
use crate::quantity::{Flattening, Site};
use crate::working::Topic;

working! {
    /// The cornea and its incision, step by step.
    Working of Topic::Cornea;
    n "N" "D" = "N = K steep - K flat, at index 1.3375" [INDEX_1_3375], "corneal astigmatism measured", Identity Two;
    a "a" "deg" = "entered" [], "steep meridian", Entered Entered;
    x "x" "D" = "x = N cos 2a" [], "its vector", Thibos1997 Two;
    y "y" "D" = "y = N sin 2a" [], "its vector", Thibos1997 Two;
    s "s" "D" = "entered" [], "flattening by the incision", Entered Entered;
    t "t" "deg" = "entered" [], "site of the incision", Entered Entered;
    s_x "s_x" "D" = "s_x = s cos 2(t + 90)" [], "the incision's vector, steepening across it", Identity Two;
    s_y "s_y" "D" = "s_y = s sin 2(t + 90)" [], "the incision's vector", Identity Two;
    planned "N'" "D" = "N' = sqrt((x + s_x)^2 + (y + s_y)^2), its axis atan2(y + s_y, x + s_x)/2" [],
        "corneal astigmatism after the incision", Thibos1997 Two;
}

/// Net corneal astigmatism as a vector, strongest along the steep meridian, without its mean.
///
/// `None` when the axes are not known. No astigmatism is the zero vector, which has no axis.
///
/// ```
/// use ocellus_core::{astigmatism, eye::cornea::Cornea, quantity::*};
/// let k = |d| CornealPower::from_d(d);
/// let axes = Some((Axis::from_deg(0.0)?, Axis::from_deg(90.0)?));
/// let cornea = Cornea::from_powers(k(43.0)?, k(44.5)?, KeratometricIndex::new(1.3375)?, axes)?;
/// let v = astigmatism::cornea::measured(&cornea).unwrap();
/// assert!((v.cylinder() - 1.5).abs() < 1e-12 && v.strongest().unwrap().deg() == 90.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn measured(cornea: &Cornea) -> Option<PowerVector> {
    cornea.steep_axis().map(|axis| PowerVector::strongest_along(0.0, cornea.astigmatism(), axis))
}

/// The astigmatism an incision adds: it flattens its own meridian and steepens the one across.
///
/// ```text
/// SIA = s at t + 90          (-s/2 along t, +s/2 across; s is the change in astigmatism)
/// ```
///
/// ```
/// use ocellus_core::{astigmatism, quantity::*};
/// let v = astigmatism::cornea::induced(Site::from_deg(180.0)?, Flattening::from_d(0.3)?);
/// assert!((v.cylinder() - 0.3).abs() < 1e-12 && v.strongest().unwrap().deg() == 90.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn induced(site: Site, flattening: Flattening) -> PowerVector {
    match meridian(site.deg() + 90.0) {
        Some(across) => PowerVector::strongest_along(0.0, flattening.d(), across),
        None => PowerVector::default(),
    }
}

/// A cornea with an incision, step by step; `None` when the axes are not known.
///
/// ```
/// use ocellus_core::{astigmatism, eye::cornea::Cornea, quantity::*};
/// let k = |d| CornealPower::from_d(d);
/// let axes = Some((Axis::from_deg(0.0)?, Axis::from_deg(90.0)?));
/// let cornea = Cornea::from_powers(k(43.0)?, k(44.5)?, KeratometricIndex::new(1.3375)?, axes)?;
/// let w = astigmatism::cornea::working(&cornea, Site::from_deg(90.0)?, Flattening::from_d(0.5)?).unwrap();
/// assert!((w.planned - 1.0).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(cornea: &Cornea, site: Site, flattening: Flattening) -> Option<Working> {
    let (before, incision) = (measured(cornea)?, induced(site, flattening));
    Some(Working {
        n: cornea.astigmatism(),
        a: cornea.steep_axis()?.deg(),
        x: 2.0 * before.j0,
        y: 2.0 * before.j45,
        s: flattening.d(),
        t: site.deg(),
        s_x: 2.0 * incision.j0,
        s_y: 2.0 * incision.j45,
        planned: before.plus(incision).cylinder(),
    })
}
