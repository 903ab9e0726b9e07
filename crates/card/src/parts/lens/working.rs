//! How the numbers of a method came about, and what the constants entered mean in each other's terms.

use super::answers::{Answer, Answers, Lens, methods};
use super::asked::{Asked, Constants, adjusted};
use super::constants::as_a;
use super::label::mean_power;
use super::table::entries::LENS_POWER;
use super::table::{cautions, items};
use crate::caution::Caution;
use crate::item::Item;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::PREVIOUS_SURGERY;
use crate::parts::laser::after_laser;
use crate::sink::Sink;
use ocellus_core::lens::constants::family;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::view::Optics;

/// The method's own part, then the lens for the target, then the refraction for the lens chosen.
#[inline(never)]
pub(crate) fn explain_method(method: Method, eye: &Eye, sink: &mut dyn Sink) -> bool {
    if !methods(eye).any(|other| other == method) {
        sink.caution(match after_laser(eye) {
            Some(_) => Caution::about(cautions::PREVIOUS_SURGERY, PREVIOUS_SURGERY),
            None => Caution::of(cautions::NOT_THIS_EYE, method),
        });
        return false;
    }
    let answers = Answers::of_methods(eye, Constants::OfLens, [method].into_iter());
    // whether an eye after laser has any answer is said of the eye, whichever method is asked about
    let (any, _) = eye.entered().aside(|| Answers::of(eye, Constants::OfLens).all().next().is_some());
    answers.report_some(eye, any, &mut |caution| sink.caution(caution));
    let Some(answer) = answers.all().next() else { return false };
    show_method(method, eye, Constants::OfLens, sink);
    show_optics(eye, answer, sink);
    true
}

/// The method's own part, after that of a length that is adjusted for it.
#[inline(never)]
pub(crate) fn show_method(method: Method, eye: &Eye, constants: Constants, sink: &mut dyn Sink) {
    if let Some(w) = adjusted(method, eye) {
        w.show(sink);
    }
    // what it lacks was told before
    let _ = method.view(&Asked::of(eye, method, constants), &mut |view| view.show(sink));
}

/// The lens for the target, and the refraction for the lens chosen.
// apart, so that its room on the stack is not taken while the methods are asked
#[inline(never)]
fn show_optics(eye: &Eye, answer: &Answer, sink: &mut dyn Sink) {
    let method = answer.method;
    let mean = eye.get(LENS_POWER).and_then(|label| mean_power(eye, answer, label));
    match &answer.optics {
        Optics::Thin(thin) => {
            if let Ok(w) = thin.power(eye.target(), eye.vertex()) {
                w.show(sink);
            }
            if let Some(Ok(w)) = mean.map(|mean| thin.refraction(mean, eye.vertex())) {
                w.show(sink);
            }
        }
        Optics::Line(line) => {
            sink.item(Item::of(items::EXACT_POWER, method, line.power(eye.target())));
            if let Some(mean) = mean {
                sink.item(Item::of(items::REFRACTION, method, line.refraction(mean)));
            }
        }
    }
}

/// Each constant that was entered, and those that go with it.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, sink: &mut dyn Sink) -> bool {
    let mut any = false;
    for (_, what, a) in as_a(lens.eye) {
        let Some((a, family)) = a.and_then(|a| Some((a, family(a).ok()?))) else { continue };
        if let Some(what) = what {
            sink.item(Item::one(what, a.get()));
        }
        family.show(sink);
        any = true;
    }
    any
}
