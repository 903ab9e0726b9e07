//! How the numbers of a method came about, and what the constants entered mean in each other's terms.

use super::answers::{Answer, Answers, Lens, methods};
use super::asked::{Asked, Constants, adjusted};
use super::constants::as_a;
use super::label::mean_power;
use super::table::entries::LENS_POWER;
use super::table::{cautions, items};
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::PREVIOUS_SURGERY;
use crate::parts::laser::after_laser;
use ocellus_core::lens::constants::family;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::view::Optics;

/// The method's own part, then the lens for the target, then the refraction for the lens chosen.
#[inline(never)]
pub(crate) fn explain_method(method: Method, lens: &Lens, out: &mut Out) -> bool {
    let eye = lens.eye;
    if !methods(eye).any(|other| other == method) {
        match after_laser(eye) {
            Some(_) => out.about(cautions::PREVIOUS_SURGERY, PREVIOUS_SURGERY),
            None => out.about_method(cautions::NOT_THIS_EYE, method),
        }
        return false;
    }
    // asked once more, so that what it read is noted, and nothing else
    let mut answers = Answers::none();
    answers.ask(eye, Constants::OfLens, Some(method));
    // whether an eye after laser has any answer is said of the eye, whichever method is asked about
    let (any, _) = eye.entered().aside(|| lens.answers().all().next().is_some());
    answers.report_some(eye, any, &mut |caution| out.pass(caution));
    let Some(answer) = answers.all().next() else { return false };
    show_method(method, eye, Constants::OfLens, out);
    show_optics(eye, answer, out);
    true
}

/// The method's own part, after that of a length that is adjusted for it.
#[inline(never)]
pub(crate) fn show_method(method: Method, eye: &Eye, constants: Constants, out: &mut Out) {
    if let Some(w) = adjusted(method, eye) {
        w.show(out);
    }
    // what it lacks was reported before
    let _ = method.view(&Asked::of(eye, method, constants), &mut |view| view.show(out));
}

/// The lens for the target, and the refraction for the lens chosen.
// apart, so that its room on the stack is not taken while the methods are asked
#[inline(never)]
fn show_optics(eye: &Eye, answer: &Answer, out: &mut Out) {
    let method = answer.method;
    let mean = eye.get(LENS_POWER).and_then(|label| mean_power(eye, answer, label));
    match &answer.optics {
        Optics::Thin(thin) => {
            if let Ok(w) = thin.power(eye.target(), eye.vertex()) {
                w.show(out);
            }
            if let Some(Ok(w)) = mean.map(|mean| thin.refraction(mean, eye.vertex())) {
                w.show(out);
            }
        }
        Optics::Line(line) => {
            out.of(items::EXACT_POWER, line.power(eye.target()), method);
            if let Some(mean) = mean {
                out.of(items::REFRACTION, line.refraction(mean), method);
            }
        }
    }
}

/// Each constant that was entered, and those that go with it.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, out: &mut Out) -> bool {
    let mut any = false;
    for (_, what, a) in as_a(lens.eye) {
        let Some((a, family)) = a.and_then(|a| Some((a, family(a).ok()?))) else { continue };
        if let Some(what) = what {
            out.item(what, a.get());
        }
        family.show(out);
        any = true;
    }
    any
}
