//! The eye as it was measured, and whether the measurement can be believed.

mod checks;
pub mod choices;
mod known;
pub mod limits;
mod rules;
pub mod table;

pub use known::Eye;
pub(crate) use rules::RULES;

use crate::id::EntryId;
use crate::out::Out;
use crate::sink::Sink;
use ocellus_core::quantity::Axis;
use table::entries::*;
use table::items;

const MEASURED: [EntryId; 30] = [
    AXIAL_LENGTH.id(),
    AL_METHOD.id(),
    K1.id(),
    K1_AXIS.id(),
    K2.id(),
    K2_AXIS.id(),
    R1.id(),
    R2.id(),
    INDEX.id(),
    K_KIND.id(),
    ACD.id(),
    ACD_FROM.id(),
    WHITE_TO_WHITE.id(),
    CORNEAL_THICKNESS.id(),
    EYE_STATE.id(),
    PREVIOUS_SURGERY.id(),
    BIOMETRY_DATE.id(),
    QUALITY.id(),
    CONTACT_LENS.id(),
    AL_SCATTER.id(),
    K_SCATTER.id(),
    ACD_SCATTER.id(),
    OLD_SPHERE.id(),
    OLD_CYLINDER.id(),
    OLD_AXIS.id(),
    FELLOW_AXIAL_LENGTH.id(),
    FELLOW_K1.id(),
    FELLOW_K2.id(),
    FELLOW_REFRACTION.id(),
    FELLOW_STATE.id(),
];

/// Whether the measurement of an eye can be believed: reports every check that it does not pass.
pub fn check(eye: &Eye, sink: &mut dyn Sink) {
    checks::check(eye, &mut Out::to(sink, eye.entered()));
}

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    out.show(&MEASURED);
    let cornea = eye.cornea();
    out.item(items::MEAN_RADIUS, cornea.radius().mm());
    out.item(items::MEAN_K, cornea.k());
    // which is flat and which is steep, whichever was typed first
    let size = cornea.astigmatism();
    let of_some = |axis: Option<Axis>| axis.filter(|_| size > 0.0);
    out.item(items::FLAT_K, cornea.flat_k());
    out.meridian(items::FLAT_AXIS, of_some(cornea.flat_axis()));
    out.item(items::STEEP_K, cornea.steep_k());
    out.meridian(items::STEEP_AXIS, of_some(cornea.steep_axis()));
    out.item(items::ASTIGMATISM, size);
    checks::check(eye, out);
}
