//! What the first eye teaches: half of its error, beside this eye's numbers and never in them.

use super::lens;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::EyeState;
use crate::constant::eye::FIRST_EYE_FAR;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::answer::{NONE, answer_shown};
use crate::lens::second_eye::expected;
use crate::quantity::Refraction;
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::SecondEye);
    let Some((left, predicted)) = case.fellow_refraction().zip(case.fellow_predicted()) else { return };
    super::entries(case.draft(), sink, &[Field::FellowPredicted, Field::FellowRefraction]);
    if case.fellow_state() != Some(EyeState::Pseudophakic) {
        return sink.caution(Caution::about(Code::FirstEyeNoLens, Field::FellowState));
    }
    let (error, half) = expected(left, predicted);
    sink.item(Item::one(What::FirstError, error));
    sink.item(Item::one(What::HalfError, half));
    sink.caution(Caution::about(Code::HalfOfFirst, Field::FellowPredicted));
    if error.abs() > FIRST_EYE_FAR.get() {
        sink.caution(Caution::about(Code::FirstEyeFar, Field::FellowPredicted));
    }
    let mut answers = NONE;
    answer_shown(case, &mut |_| {}, &mut answers);
    // a lens that is predicted to leave the target less that half would then leave the target
    let aim = Refraction::from_d(case.target.d() - half);
    for answer in answers.iter().flatten() {
        if let Some(Ok(power)) = aim.ok().map(|aim| answer.optics.power(aim, case.vertex)) {
            sink.item(Item::of(What::AllowedPower, answer.method, power));
        }
        if let Some(rx) = case.lens_power().and_then(|label| lens::refraction(case, answer, label)) {
            sink.item(Item::of(What::AllowedRefraction, answer.method, rx + half));
        }
    }
}
