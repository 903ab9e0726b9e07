//! After the operation: how far the prediction was off, what the incisions did, what was wanted against what came.

mod found;
pub mod limits;
pub mod table;

pub use found::incision_found;
pub(crate) use found::needed_now;

use crate::id::EntryId;
use crate::out::Out;
use crate::parts::cornea::incision_site;
use crate::parts::eye::Eye;
use crate::parts::eye::limits::OFF_SQUARE;
use crate::parts::eye::table::cautions::AXES_NOT_SQUARE;
use crate::parts::lens::table::entries::LENS_POWER;
use crate::parts::lens::{Lens, refraction};
use crate::rule::Rule;
use found::{changed, cornea_after, refraction_found};
use limits::SMALL_TARGET;
use ocellus_core::astigmatism::change::Change;
use ocellus_core::astigmatism::meridian;
use ocellus_core::astigmatism::polar::Polar;
use ocellus_core::astigmatism::power_vector::PowerVector;
use table::entries::*;
use table::{cautions, items};

const CORNEA: [EntryId; 4] = [AFTER_K1.id(), AFTER_K1_AXIS.id(), AFTER_K2.id(), AFTER_K2_AXIS.id()];
const REFRACTION: [EntryId; 3] = [AFTER_SPHERE.id(), AFTER_CYLINDER.id(), AFTER_AXIS.id()];

pub(crate) const RULES: &[Rule] = &[Rule::Together(&CORNEA, &CORNEA), Rule::Together(&REFRACTION, &REFRACTION)];

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    out.show(&CORNEA);
    out.show(&REFRACTION);
    errors(lens, out);
    incision(eye, out);
    if let Some(change) = changed(eye) {
        tell(&change, out);
    }
}

/// How far the refraction found is from each method's prediction for the lens chosen.
#[inline(never)]
fn errors(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let (Some(found), Some(label)) = (refraction_found(eye), eye.get(LENS_POWER)) else { return };
    let mean = PowerVector::of(found).m;
    for answer in lens.shown() {
        if let Some(predicted) = refraction(eye, answer, label) {
            out.of(items::FOUND_ERROR, mean - predicted, answer.method);
        }
    }
}

#[inline(never)]
fn incision(eye: &Eye, out: &mut Out) {
    if cornea_after(eye).and_then(|after| after.off_square()).is_some_and(|off| off > OFF_SQUARE.get()) {
        out.about(AXES_NOT_SQUARE, AFTER_K1_AXIS);
    }
    let Some(made) = incision_found(eye) else { return };
    out.item(items::INCISION_FOUND, made.cylinder());
    out.meridian(items::INCISION_FOUND_AXIS, made.strongest());
    // about the meridian that it was meant to steepen, which is across it
    let Some(across) = incision_site(eye).and_then(|site| meridian(site.deg() + 90.0)) else { return };
    let polar = Polar::about(across, made);
    out.item(items::INCISION_FLATTENED, polar.along);
    out.item(items::INCISION_TORQUE, polar.oblique);
}

#[inline(never)]
fn tell(change: &Change, out: &mut Out) {
    for (vector, size, axis) in [
        (change.target, items::TARGET, items::TARGET_AXIS),
        (change.surgical, items::SURGICAL, items::SURGICAL_AXIS),
        (change.difference, items::DIFFERENCE, items::DIFFERENCE_AXIS),
    ] {
        out.item(size, vector.cylinder());
        out.meridian(axis, vector.strongest());
    }
    let Some(indices) = change.indices() else { return };
    for (what, value) in [
        (items::MAGNITUDE_ERROR, indices.magnitude_error),
        (items::ANGLE_ERROR, indices.angle_error),
        (items::CORRECTION_INDEX, indices.correction),
        (items::SUCCESS_INDEX, indices.success),
        (items::FLATTENING_EFFECT, indices.flattening),
        (items::TORQUE, indices.torque),
    ] {
        out.item(what, value);
    }
    if indices.target < SMALL_TARGET.get() {
        out.about(cautions::SMALL_TARGET, AFTER_CYLINDER);
    }
}

/// What was wanted and what came.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, out: &mut Out) -> bool {
    if let Some(made) = incision_found(lens.eye) {
        out.item(items::INCISION_FOUND, made.cylinder());
    }
    let indices = changed(lens.eye).and_then(|change| change.indices());
    indices.inspect(|w| w.show(out)).is_some()
}
