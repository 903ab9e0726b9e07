//! The cornea that a toric lens will look through: its back, the incisions, and what they make of the keratometry.

use super::{choice_entries, entries};
use crate::astigmatism::posterior::{Class, class, corrected, edge};
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::{cornea, incision, on_dial, plane, short_way, two_surfaces};
use crate::case::{Case, SITE};
use crate::caution::{Caution, Code};
use crate::choice::{BackFrom, KKind};
use crate::constant::off_axis::{ACROSS, BACK_FAR, BACK_SIDEWAYS, NEAR_EDGE};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::sink::Sink;

/// The cornea with its back, from one source; its vector, without a mean.
pub(crate) fn with_back(
    case: &Case,
    front: PowerVector<plane::Cornea>,
    from: BackFrom,
) -> Option<PowerVector<plane::Cornea>> {
    corrected(front, from).or_else(|| surfaces(case).map(|both| both.astigmatism()))
}

/// Both surfaces, where both were measured.
pub(crate) fn surfaces(case: &Case) -> Option<two_surfaces::Working> {
    let (back, thickness) = case.back()?;
    two_surfaces::working(&case.cornea, &back, thickness)
}

/// What all incisions do together; `None` where nothing is known of the one that the operation is done through.
pub(crate) fn incisions(case: &Case) -> Option<PowerVector<plane::Cornea>> {
    let centroid = case.centroid().map(|(size, steepened)| incision::centroid(size, steepened));
    let known = centroid.is_some() || case.draft().has(Field::Flattening);
    let cuts = case.cuts().map(|(site, flattening)| incision::induced(site, flattening));
    known.then(|| cuts.chain(centroid).fold(PowerVector::default(), PowerVector::plus))
}

/// The cornea after the incisions, as a toric lens is reckoned for it; its vector, without a mean.
pub(crate) fn planned(case: &Case) -> Option<PowerVector<plane::Cornea>> {
    let front = cornea::measured(&case.cornea)?;
    Some(with_back(case, front, case.back_from()?)?.plus(incisions(case)?))
}

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Cornea);
    entries(case.draft(), sink, &SITE);
    if let Some(site) = case.incision_site().filter(|_| case.entered_site().is_none()) {
        sink.item(Item::one(What::SiteDegrees, site.deg()));
    }
    entries(
        case.draft(),
        sink,
        &[
            Field::Flattening,
            Field::Centroid,
            Field::CentroidAxis,
            Field::PairedFlattening,
            Field::OtherSite,
            Field::OtherFlattening,
        ],
    );
    if case.draft().has(Field::Flattening) {
        sink.caution(Caution::about(Code::SiaIsVector, Field::Flattening));
    }
    let along = case.centroid().zip(case.incision_site());
    if along.is_some_and(|((_, steepened), site)| short_way(steepened.deg() - site.deg()).abs() < ACROSS.get()) {
        sink.caution(Caution::about(Code::CentroidAlong, Field::CentroidAxis));
    }
    let Some(incisions) = incisions(case) else { return };
    let Some(front) = cornea::measured(&case.cornea) else { return };
    front_after(case, front.plus(incisions), sink);
    // a total power has its back already
    if case.k_kind == KKind::Keratometric {
        back(case, front, incisions, sink);
    }
    let from = case.back_from().unwrap_or(BackFrom::None);
    let Some(planned) = with_back(case, front, from).map(|cornea| cornea.plus(incisions)) else { return };
    sink.item(Item::one(What::PlannedAstigmatism, planned.cylinder()));
    if let Some(axis) = planned.strongest() {
        sink.item(Item::one(What::PlannedAxis, on_dial(axis)));
    }
}

/// What a keratometer would read after the incisions: the mean stays as it is.
fn front_after(case: &Case, front: PowerVector<plane::Cornea>, sink: &mut dyn Sink) {
    let (mean, half) = ((case.cornea.flat_k() + case.cornea.steep_k()) / 2.0, front.cylinder() / 2.0);
    sink.item(Item::one(What::PlannedFlat, mean - half));
    sink.item(Item::one(What::PlannedSteep, mean + half));
}

/// The back of the cornea by every source, side by side, and what speaks against the one taken.
#[inline(never)]
fn back(case: &Case, front: PowerVector<plane::Cornea>, incisions: PowerVector<plane::Cornea>, sink: &mut dyn Sink) {
    choice_entries(case, sink, Field::BackFrom);
    entries(case.draft(), sink, &[Field::BackR1, Field::BackR1Axis, Field::BackR2, Field::BackR2Axis]);
    for (row, from) in BackFrom::ALL.iter().enumerate() {
        let Some(after) = with_back(case, front, *from).map(|cornea| cornea.plus(incisions)) else { continue };
        sink.item(Item::one(What::BackSource, from.code()).in_row(row));
        sink.item(Item::one(What::BackAstigmatism, after.cylinder()).in_row(row));
        if let Some(axis) = after.strongest() {
            sink.item(Item::one(What::BackAxis, on_dial(axis)).in_row(row));
        }
    }
    let Some(from) = case.back_from() else { return };
    match from {
        BackFrom::None => {}
        BackFrom::Measured => {
            sink.caution(Caution::about(Code::BackMeasured, Field::BackFrom));
            if back_unusual(case) {
                sink.caution(Caution::about(Code::BackFar, Field::BackR1));
            }
        }
        _ => sink.caution(Caution::about(Code::BackCorrected, Field::BackFrom)),
    }
    if let Some(edge) = edge(front, from) {
        sink.item(Item::one(What::EdgeDistance, edge.distance));
        sink.item(Item::one(What::EdgeStep, edge.step));
        // a step that is printed as none is none
        if edge.distance <= NEAR_EDGE.get() && edge.step >= 0.005 {
            sink.caution(Caution::about(Code::ClassEdge, Field::BackFrom));
        }
    }
}

/// Whether a back has much astigmatism, or is steep where hardly any is: the cheapest sign of exchanged radii or axes.
fn back_unusual(case: &Case) -> bool {
    let (Some(both), Some((back, _))) = (surfaces(case), case.back()) else { return false };
    let size = PowerVector::at(plane::Cornea, 0.0, both.back_0, both.back_45).cylinder();
    let sideways = back.steep_axis().is_some_and(|steep| class(steep) == Class::Against);
    size > BACK_FAR.get() || sideways && size > BACK_SIDEWAYS.get()
}
