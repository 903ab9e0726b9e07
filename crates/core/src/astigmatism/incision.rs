//! What incisions make of a cornea.

use crate::astigmatism::meridian;
use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::quantity::{Axis, Flattening, Site};

working! {
    /// One incision, step by step.
    Working "An incision";
    t "t" "deg" = "entered, or the word's or the hour's; for a surgeon's own centroid, across the meridian it steepens" [],
        "where it flattens", Entered Entered;
    s "s" "D" = "entered" [], "change in astigmatism it makes", Entered Entered;
    s_x "s_x" "D" = "s_x = s cos 2(t + 90)" [], "its vector, steepening across it", Identity Two;
    s_y "s_y" "D" = "s_y = s sin 2(t + 90)" [], "its vector", Identity Two;
}

/// The astigmatism an incision adds: it flattens its own meridian and steepens the one across.
///
/// ```text
/// SIA = s at t + 90          (-s/2 along t, +s/2 across; s is the change in astigmatism)
/// ```
///
/// The mean of the two meridians stays as it is (1:1 coupling).
///
/// ```
/// use ocellus_core::{astigmatism::incision::induced, quantity::*};
/// let v = induced(Site::from_deg(180.0)?, Flattening::from_d(0.3)?);
/// assert!((v.cylinder() - 0.3).abs() < 1e-12 && v.strongest().unwrap().deg() == 90.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn induced(site: Site, flattening: Flattening) -> PowerVector<Cornea> {
    match meridian(site.deg() + 90.0) {
        Some(across) => centroid(flattening, across),
        None => PowerVector::default(),
    }
}

/// A surgeon's own centroid: the mean vector of many eyes, as a size and the meridian it steepens.
///
/// ```
/// use ocellus_core::{astigmatism::incision::centroid, quantity::*};
/// let v = centroid(Flattening::from_d(0.12)?, Axis::from_deg(75.0)?);
/// assert!((v.cylinder() - 0.12).abs() < 1e-12 && (v.strongest().unwrap().deg() - 75.0).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn centroid(size: Flattening, steepened: Axis) -> PowerVector<Cornea> {
    PowerVector::strongest_along(Cornea, 0.0, size.d(), steepened)
}

/// One incision, step by step.
///
/// ```
/// use ocellus_core::{astigmatism::incision::working, quantity::*};
/// let w = working(Site::from_deg(180.0)?, Flattening::from_d(0.3)?);
/// assert!((w.s_x + 0.3).abs() < 1e-12 && w.s_y.abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(site: Site, flattening: Flattening) -> Working {
    let vector = induced(site, flattening);
    Working { t: site.deg(), s: flattening.d(), s_x: 2.0 * vector.j0, s_y: 2.0 * vector.j45 }
}
