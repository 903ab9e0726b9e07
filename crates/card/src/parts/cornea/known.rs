//! What is known of a cornea: where it is cut, its back, and what the incisions make of it.

use super::table::entries::*;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::CORNEAL_THICKNESS;
use ocellus_core::astigmatism::posterior::{BackFrom, corrected};
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::{cornea, incision, plane, site, two_surfaces};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{Axis, CornealRadius, CornealThickness, Flattening, Site};

/// Where the incision is, however it was said.
pub(crate) fn incision_site(eye: &Eye) -> Option<Site> {
    let of_clock = || site::of_clock(eye.get(CLOCK_HOUR)?, eye.get(CLOCK_SEEN)?, eye.side());
    let of_word = || site::of_word(eye.get(SITE_WORD)?, eye.side());
    eye.get(INCISION_SITE).or_else(of_word).or_else(of_clock)
}

/// The surgeon's own centroid: its size and the meridian it steepens.
pub(crate) fn centroid(eye: &Eye) -> Option<(Flattening, Axis)> {
    eye.get(CENTROID).zip(eye.get(CENTROID_AXIS))
}

/// Every cut that flattens: the incision, its pair across the eye, another.
pub(crate) fn cuts(eye: &Eye) -> impl Iterator<Item = (Site, Flattening)> + use<> {
    let site = incision_site(eye);
    let incision = site.zip(eye.get(FLATTENING));
    let pair = site.map(site::opposite).zip(eye.get(PAIRED_FLATTENING));
    let other = eye.get(OTHER_SITE).zip(eye.get(OTHER_FLATTENING));
    [incision, pair, other].into_iter().flatten()
}

/// The back of the cornea, and how thick the cornea is, where they were measured.
pub(super) fn measured_back(eye: &Eye) -> Option<(Cornea, CornealThickness)> {
    let (r1, r2) = (eye.get(BACK_R1)?.mm(), eye.get(BACK_R2)?.mm());
    let axes = eye.get(BACK_R1_AXIS).zip(eye.get(BACK_R2_AXIS));
    let back = Cornea::from_radii(CornealRadius::from_mm(r1).ok()?, CornealRadius::from_mm(r2).ok()?, axes).ok()?;
    Some((back, eye.get(CORNEAL_THICKNESS)?))
}

/// Both surfaces, where both were measured.
pub(crate) fn surfaces(eye: &Eye) -> Option<two_surfaces::Working> {
    let (back, thickness) = measured_back(eye)?;
    two_surfaces::working(eye.cornea(), &back, thickness)
}

/// The cornea with its back, from one source; its vector, without a mean.
pub(crate) fn with_back(
    eye: &Eye,
    front: PowerVector<plane::Cornea>,
    from: BackFrom,
) -> Option<PowerVector<plane::Cornea>> {
    corrected(front, from).or_else(|| surfaces(eye).map(|both| both.astigmatism()))
}

/// What all incisions do together; `None` where nothing is known of the one that the operation is done through.
pub(crate) fn incisions(eye: &Eye) -> Option<PowerVector<plane::Cornea>> {
    let centroid = centroid(eye);
    if centroid.is_none() && !eye.entered().is_made(FLATTENING) {
        return None;
    }
    let mut all = PowerVector::default();
    for (site, flattening) in cuts(eye) {
        all = all.plus(incision::induced(site, flattening));
    }
    if let Some((size, steepened)) = centroid {
        all = all.plus(incision::centroid(size, steepened));
    }
    Some(all)
}

/// The cornea after the incisions, as a toric lens is computed for it; its vector, without a mean.
pub(crate) fn planned(eye: &Eye) -> Option<PowerVector<plane::Cornea>> {
    let front = cornea::measured(eye.cornea())?;
    Some(with_back(eye, front, eye.get(BACK_FROM)?)?.plus(incisions(eye)?))
}
