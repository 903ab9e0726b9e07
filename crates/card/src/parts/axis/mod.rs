//! The toric lens on the cornea that the incisions leave.

pub mod choices;
mod chosen;
mod labels;
pub mod limits;
mod placed;
mod scatter;
pub mod table;
mod working;

pub(crate) use placed::chosen_lens;
pub(crate) use working::explain;

use crate::id::SignOffId;
use crate::out::Out;
use crate::parts::cornea::planned;
use crate::parts::cornea::table::entries::{BACK_FROM, FLATTENING};
use crate::parts::eye::table::entries::{K1_AXIS, PREVIOUS_SURGERY};
use crate::parts::laser::after_laser;
use crate::parts::lens::Lens;
use crate::parts::lens::table::cautions::LABEL_WEAKER;
use crate::parts::lens::table::entries::LENS_POWER;
use crate::parts::toric::table::entries::{CYLINDER_PLANE, LABEL_POWER};
use crate::parts::toric::{CYLINDERS, Label};
use choices::Marked;
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_core::astigmatism::toric as formulas;
use table::entries::MARKED;
use table::{cautions, sign_offs};

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let Some(label) = Label::of(eye) else { return };
    out.show(const { &[LABEL_POWER.id(), CYLINDER_PLANE.id()] });
    out.show(&CYLINDERS);
    let Some(vector) = planned(eye) else {
        return match eye.cornea().steep_axis() {
            Some(_) => out.about(cautions::TORIC_NEEDS_INCISION, FLATTENING),
            None => out.about(cautions::TORIC_NEEDS_AXES, K1_AXIS),
        };
    };
    if placed::seen(lens).next().is_none() {
        return;
    }
    if after_laser(eye).is_some() {
        out.about(cautions::TORIC_AFTER_LASER, PREVIOUS_SURGERY);
    }
    if eye.get(BACK_FROM) == Some(BackFrom::None) {
        out.caution(cautions::POSTERIOR_IGNORED);
    }
    if label.plane == formulas::CylinderPlane::Cornea {
        out.about(cautions::CORNEA_PLANE_LABEL, CYLINDER_PLANE);
    }
    if label.power == formulas::LabelPower::FlattestMeridian {
        out.about(LABEL_WEAKER, LABEL_POWER);
    }
    if eye.get(LENS_POWER).is_none() {
        out.about(cautions::TORIC_NEEDS_POWER, LENS_POWER);
    }
    let Some(known) = scatter::known(eye) else { return };
    scatter::tell(eye, out);
    labels::plan(lens, &label, vector, known, out);
    chosen::plan(lens, &label, vector, known, out);
}

/// A mark that nobody made upright need not be asked about.
pub(crate) fn signs(lens: &Lens) -> &'static [SignOffId] {
    let marked = Label::of(lens.eye).is_some() && lens.eye.get(MARKED) != Some(Marked::Lying);
    if marked { &[sign_offs::MARKS] } else { &[] }
}
