//! What an incision makes of a cornea.

use crate::astigmatism::meridian;
use crate::astigmatism::power_vector::PowerVector;
use crate::eye::cornea::Cornea;
use crate::quantity::{Flattening, Site};

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
