//! What the first eye shows: half of its error, beside this eye's numbers and never in them.

pub mod limits;
pub mod table;

use crate::out::Out;
use crate::parts::eye::choices::EyeState;
use crate::parts::eye::table::entries::{FELLOW_REFRACTION, FELLOW_STATE};
use crate::parts::lens::table::entries::LENS_POWER;
use crate::parts::lens::{Lens, refraction};
use crate::rule::Rule;
use limits::FIRST_EYE_FAR;
use ocellus_core::lens::second_eye::expected;
use ocellus_core::quantity::Refraction;
use table::entries::FELLOW_PREDICTED;
use table::{cautions, items};

pub(crate) const RULES: &[Rule] = &[Rule::Together(&[FELLOW_PREDICTED.id()], &[FELLOW_REFRACTION.id()])];

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let Some((predicted, left)) = eye.get(FELLOW_PREDICTED).zip(eye.get(FELLOW_REFRACTION)) else { return };
    out.show(const { &[FELLOW_PREDICTED.id(), FELLOW_REFRACTION.id()] });
    if eye.get(FELLOW_STATE) != Some(EyeState::Pseudophakic) {
        return out.about(cautions::FIRST_EYE_NO_LENS, FELLOW_STATE);
    }
    let (error, half) = expected(left, predicted);
    out.item(items::FIRST_ERROR, error);
    out.item(items::HALF_ERROR, half);
    out.about(cautions::HALF_OF_FIRST, FELLOW_PREDICTED);
    if error.abs() > FIRST_EYE_FAR.get() {
        out.about(cautions::FIRST_EYE_FAR, FELLOW_PREDICTED);
    }
    // a lens that is predicted to leave the target less that half would then leave the target
    let aim = Refraction::from_d(eye.target().d() - half);
    for answer in lens.shown() {
        if let Some(Ok(power)) = aim.ok().map(|aim| answer.optics.power(aim, eye.vertex())) {
            out.of(items::ALLOWED_POWER, power, answer.method);
        }
        if let Some(rx) = eye.get(LENS_POWER).and_then(|label| refraction(eye, answer, label)) {
            out.of(items::ALLOWED_REFRACTION, rx + half, answer.method);
        }
    }
}
