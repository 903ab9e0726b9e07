//! What the published adjustments make of a long eye: the one applied, or all of them side by side.

use super::answers::Lens;
use super::asked::{Asked, Constants, adjusted};
use super::table::entries::LONG_EYE;
use super::table::{cautions, items};
use crate::out::Out;
use crate::parts::eye::Eye;
use ocellus_core::lens::long_eye::{self, LongEye};
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::AxialLength;

#[inline(never)]
pub(super) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    for answer in lens.shown() {
        let Some(w) = adjusted(answer.method, eye) else { continue };
        out.of(items::ADJUSTED_LENGTH, w.adjusted, answer.method);
        out.of(items::ADJUSTED_STEP, w.step, answer.method);
        out.about_method(cautions::LENGTH_ADJUSTED, answer.method);
    }
    if eye.get(LONG_EYE) != Some(LongEye::Compared) {
        return;
    }
    let mut any = false;
    for answer in lens.shown() {
        for (set, power, step) in [
            (LongEye::First2011, items::FIRST_SET, items::FIRST_STEP),
            (LongEye::Second2011, items::SECOND_SET, items::SECOND_STEP),
            (LongEye::Set2018, items::SET_2018, items::STEP_2018),
        ] {
            if let Some((w, asked)) = under(set, answer.method, eye) {
                out.of(power, asked, answer.method);
                out.of(step, w.step, answer.method);
                any = true;
            }
        }
    }
    if any {
        out.about(cautions::SETS_COMPARED, LONG_EYE);
    }
}

/// How a set adjusts the length for a method, and the exact power that follows.
#[inline(never)]
fn under(set: LongEye, method: Method, eye: &Eye) -> Option<(long_eye::Working, f64)> {
    let w = long_eye::working(set, method, eye.axial_length()?)?;
    let length = Some(AxialLength::from_mm(w.adjusted).ok()?);
    let (asked, mut power) = (Asked { length, ..Asked::of(eye, method, Constants::OfLens) }, None);
    method.view(&asked, &mut |view| power = view.optics().power(eye.target(), eye.vertex()).ok()).ok()?;
    Some((w, power?))
}
