//! The cornea that a toric lens will look through: its back, the incisions, and what they make of the keratometry.

mod known;
pub mod limits;
mod rules;
pub mod table;

pub(crate) use known::{centroid, cuts, incision_site, incisions, planned, surfaces, with_back};
pub(crate) use rules::RULES;

use crate::id::EntryId;
use crate::parts::eye::Eye;
use crate::parts::eye::choices::KKind;

use crate::out::Out;
use known::measured_back;
use limits::{ACROSS, BACK_FAR, BACK_SIDEWAYS, NEAR_EDGE};
use ocellus_core::astigmatism::posterior::{BackFrom, Class, class, edge};
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::{cornea, on_dial, plane, short_way};
use table::entries::*;
use table::{cautions, items};

/// The ways to say where the incision is.
pub(crate) const SITE: [EntryId; 4] = [INCISION_SITE.id(), SITE_WORD.id(), CLOCK_HOUR.id(), CLOCK_SEEN.id()];

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    out.show(&SITE);
    if let Some(site) = incision_site(eye).filter(|_| eye.get(INCISION_SITE).is_none()) {
        out.item(items::SITE_DEGREES, site.deg());
    }
    out.show(
        const {
            &[
                FLATTENING.id(),
                CENTROID.id(),
                CENTROID_AXIS.id(),
                PAIRED_FLATTENING.id(),
                OTHER_SITE.id(),
                OTHER_FLATTENING.id(),
            ]
        },
    );
    if eye.entered().is_made(FLATTENING) {
        out.about(cautions::SIA_IS_VECTOR, FLATTENING);
    }
    let along = centroid(eye).zip(incision_site(eye));
    if along.is_some_and(|((_, steepened), site)| short_way(steepened.deg() - site.deg()).abs() < ACROSS.get()) {
        out.about(cautions::CENTROID_ALONG, CENTROID_AXIS);
    }
    let Some(incisions) = incisions(eye) else { return };
    let Some(front) = cornea::measured(eye.cornea()) else { return };
    front_after(eye, front.plus(incisions), out);
    // a total power has its back already
    if eye.k_kind() == KKind::Keratometric {
        back(eye, front, incisions, out);
    }
    let from = eye.get(BACK_FROM).unwrap_or(BackFrom::None);
    let Some(planned) = with_back(eye, front, from).map(|cornea| cornea.plus(incisions)) else { return };
    out.item(items::PLANNED_ASTIGMATISM, planned.cylinder());
    out.meridian(items::PLANNED_AXIS, planned.strongest());
}

/// What a keratometer would read after the incisions: the mean stays as it is.
fn front_after(eye: &Eye, front: PowerVector<plane::Cornea>, out: &mut Out) {
    let (mean, half) = ((eye.cornea().flat_k() + eye.cornea().steep_k()) / 2.0, front.cylinder() / 2.0);
    out.item(items::PLANNED_FLAT, mean - half);
    out.item(items::PLANNED_STEEP, mean + half);
}

/// The back of the cornea by every source, side by side, and what is against the one taken.
#[inline(never)]
fn back(eye: &Eye, front: PowerVector<plane::Cornea>, incisions: PowerVector<plane::Cornea>, out: &mut Out) {
    out.show_word(BACK_FROM.id());
    out.show(const { &[BACK_R1.id(), BACK_R1_AXIS.id(), BACK_R2.id(), BACK_R2_AXIS.id()] });
    for (row, from) in BackFrom::ALL.iter().enumerate() {
        let Some(after) = with_back(eye, front, *from).map(|cornea| cornea.plus(incisions)) else { continue };
        out.in_row(items::BACK_SOURCE, from.code(), row);
        out.in_row(items::BACK_ASTIGMATISM, after.cylinder(), row);
        if let Some(axis) = after.strongest() {
            out.in_row(items::BACK_AXIS, on_dial(axis), row);
        }
    }
    let Some(from) = eye.get(BACK_FROM) else { return };
    match from {
        BackFrom::None => {}
        BackFrom::Measured => {
            out.about(cautions::BACK_MEASURED, BACK_FROM);
            if back_unusual(eye) {
                out.about(cautions::BACK_FAR, BACK_R1);
            }
        }
        _ => out.about(cautions::BACK_CORRECTED, BACK_FROM),
    }
    if let Some(edge) = edge(front, from) {
        out.item(items::EDGE_DISTANCE, edge.distance);
        out.item(items::EDGE_STEP, edge.step);
        // a step that is printed as zero is none
        if edge.distance <= NEAR_EDGE.get() && edge.step >= 0.005 {
            out.about(cautions::CLASS_EDGE, BACK_FROM);
        }
    }
}

/// Whether a back has much astigmatism, or is steep where hardly any is: the cheapest sign of exchanged radii or axes.
fn back_unusual(eye: &Eye) -> bool {
    let (Some(both), Some((back, _))) = (surfaces(eye), measured_back(eye)) else { return false };
    let size = PowerVector::at(plane::Cornea, 0.0, both.back_0, both.back_45).cylinder();
    let sideways = back.steep_axis().is_some_and(|steep| class(steep) == Class::Against);
    size > BACK_FAR.get() || sideways && size > BACK_SIDEWAYS.get()
}
