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
use ocellus_core::astigmatism::on_dial;
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

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    out.show(&MEASURED);
    let cornea = eye.cornea();
    out.item(items::MEAN_RADIUS, cornea.radius().mm());
    out.item(items::MEAN_K, cornea.k());
    // which is flat and which is steep, whichever was typed first
    let meridians = [
        (items::FLAT_K, cornea.flat_k(), items::FLAT_AXIS, cornea.flat_axis()),
        (items::STEEP_K, cornea.steep_k(), items::STEEP_AXIS, cornea.steep_axis()),
    ];
    for (power, k, place, axis) in meridians {
        out.item(power, k);
        if let Some(axis) = axis.filter(|_| cornea.astigmatism() > 0.0) {
            out.item(place, on_dial(axis));
        }
    }
    out.item(items::ASTIGMATISM, cornea.astigmatism());
    checks::check(eye, out);
}
