//! The lens: what was chosen, what each method says, and the labels around the target.

mod adjustments;
mod answers;
mod asked;
pub mod choices;
mod constants;
mod label;
mod labels;
pub mod limits;
mod rules;
pub mod table;
mod working;

pub use answers::{Answer, Answers, Lens};
pub(crate) use answers::{methods, moving, refusals};
pub(crate) use asked::Constants;
pub(crate) use label::{mean_power, refraction};
pub(crate) use rules::RULES;
pub(crate) use working::{explain, explain_method, show_method};

use crate::caution::Caution;
use crate::id::{EntryId, SignOffId};
use crate::item::Item;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::{AXIAL_LENGTH, FELLOW_REFRACTION};
use crate::parts::general::{range, show, tell};
use crate::parts::laser::{self, after_laser};
use crate::parts::target::choices::{SecondFor, SecondPlace};
use crate::parts::target::table::entries::{SECOND_FOR, SECOND_PLACE, TARGET, TARGET_FOR, VERTEX};
use crate::parts::toric::Label;
use crate::parts::toric::table::entries::{LABEL_POWER, LENS_AXIS, LENS_CYLINDER};
use crate::sink::Sink;
use asked::adjusted;
use choices::ConstantsFrom;
use label::labels;
use limits::*;
use ocellus_core::constant::lens::GUIDANCE_SHORT;
use ocellus_core::quantity::LensPower;
use table::entries::*;
use table::{cautions, items, sign_offs};

/// What is read out at the table.
const READ_OUT: [EntryId; 6] =
    [LENS_MODEL.id(), LENS_POWER.id(), LENS_CYLINDER.id(), LENS_AXIS.id(), TARGET.id(), TARGET_FOR.id()];

/// What the numbers rest on.
const MODEL: [EntryId; 9] = [
    HAIGIS_A1.id(),
    HAIGIS_A2.id(),
    CONSTANTS_FROM.id(),
    LABEL_RULE.id(),
    VERTEX.id(),
    LENS_STEP.id(),
    LENS_LEAST.id(),
    LENS_MOST.id(),
    SHOW_SRK2.id(),
];

#[inline(never)]
pub(crate) fn plan(lens: &Lens, sink: &mut dyn Sink) {
    let eye = lens.eye;
    lens.report(&mut |caution| sink.caution(caution));
    tell(eye.entered(), sink, &READ_OUT);
    laser::plan(eye, sink);
    computed(lens, sink);
    adjustments::plan(lens, sink);
    label::plan(lens, sink);
    constants::plan(eye, sink);
    // no method after laser is adjusted: there the entry is used for nothing
    if after_laser(eye).is_none() {
        show(eye.entered(), sink, &[LONG_EYE.id()]);
    }
    show(eye.entered(), sink, &MODEL);
}

pub(crate) fn signs(_lens: &Lens) -> &'static [SignOffId] {
    &[sign_offs::LENS_BOX]
}

#[inline(never)]
fn computed(lens: &Lens, sink: &mut dyn Sink) {
    let eye = lens.eye;
    let any = lens.shown().next().is_some();
    // an eye without an answer has no lens to choose from, and has been told why
    let refused = refusals(eye).next().is_some() || !any && after_laser(eye).is_some();
    let purpose = eye.get(SECOND_FOR);
    entered(eye, refused || purpose.is_some(), sink);
    if !any {
        // an eye that is refused has been told so already, and a lens by refraction needs no method
        if purpose == Some(SecondFor::Added) {
            sink.caution(Caution::about(cautions::FIRST_LENS_HIDDEN, SECOND_FOR));
        } else if !refused && purpose.is_none() {
            sink.caution(Caution::about(cautions::NO_METHOD, A_CONSTANT));
        }
        return;
    }
    of_length(eye, sink);
    unadjusted(lens, sink);
    constants::apart(eye, sink);
    if purpose.is_some() && eye.get(SECOND_PLACE) == Some(SecondPlace::Sulcus) {
        sink.caution(Caution::about(cautions::FIRST_LENS_BAG, SECOND_PLACE));
    }
    if eye.get(CONSTANTS_FROM) == Some(ConstantsFrom::Maker) {
        sink.caution(Caution::about(cautions::CONSTANTS_OF_MAKER, CONSTANTS_FROM));
    }
    for answer in lens.shown() {
        method(eye, answer, sink);
    }
    if lens.compared().count() < 2 {
        sink.caution(Caution::general(cautions::NOTHING_TO_COMPARE));
    } else if let Some((least, most)) = range(lens.compared().map(|a| a.power)) {
        sink.item(Item::one(items::POWER_SPREAD, most - least));
        sink.caution(Caution::general(cautions::AGREEMENT));
        if most - least > SPREAD_WIDE.get() {
            sink.caution(Caution::general(cautions::SPREAD_WIDE));
        }
    }
    if Label::of(eye).is_some_and(|label| label.is_unsettled()) {
        sink.caution(Caution::about(cautions::LABEL_NEEDS_CYLINDER, LABEL_POWER));
    }
    labels::plan(lens, sink);
    chosen(lens, sink);
}

/// What the length says by itself.
fn of_length(eye: &Eye, sink: &mut dyn Sink) {
    let mut when = |is: bool, code| {
        if is {
            sink.caution(Caution::about(code, AXIAL_LENGTH));
        }
    };
    let al = eye.axial_length().map_or(0.0, |al| al.mm());
    when(al < GUIDANCE_SHORT.get(), cautions::SHORT_EYE);
    when(al < VERY_SHORT.get(), cautions::VERY_SHORT);
}

/// What the entries alone say.
fn entered(eye: &Eye, no_choice: bool, sink: &mut dyn Sink) {
    if !eye.entered().is_made(LENS_MODEL) {
        sink.caution(Caution::about(cautions::LENS_MODEL_MISSING, LENS_MODEL));
    }
    if !(TARGET_LEAST.get()..=TARGET_MOST.get()).contains(&eye.target().d()) {
        sink.caution(Caution::about(cautions::TARGET_UNUSUAL, TARGET));
    }
    let Some(power) = eye.get(LENS_POWER) else {
        if !no_choice {
            sink.caution(Caution::about(cautions::NO_LENS_CHOSEN, LENS_POWER));
        }
        return;
    };
    if power.d() < 0.0 {
        sink.caution(Caution::about(cautions::MINUS_POWER, LENS_POWER));
    }
    let Some(labels) = labels(eye) else { return };
    if !labels.has(power) {
        sink.caution(Caution::about(cautions::OFF_LABEL, LENS_POWER));
    }
    if !labels.reaches(power.d()) {
        sink.caution(Caution::about(cautions::OUT_OF_RANGE, LENS_POWER));
    }
}

/// Which methods take a long eye as it was measured: all, or those that the set asked for has no line for.
fn unadjusted(lens: &Lens, sink: &mut dyn Sink) {
    let eye = lens.eye;
    if eye.axial_length().is_none_or(|al| al.mm() <= LONG_EYE_FROM.get()) {
        return;
    }
    let methods = || lens.shown().map(|answer| answer.method);
    if methods().all(|method| adjusted(method, eye).is_none()) {
        return sink.caution(Caution::about(cautions::LONG_EYE, AXIAL_LENGTH));
    }
    for method in methods().filter(|method| adjusted(*method, eye).is_none()) {
        sink.caution(Caution::of(cautions::LONG_EYE, method));
    }
}

fn method(eye: &Eye, answer: &Answer, sink: &mut dyn Sink) {
    let of = |what, value| Item::of(what, answer.method, value);
    sink.item(of(items::EXACT_POWER, answer.power));
    if LensPower::from_d(answer.power).is_err() {
        sink.caution(Caution::of(cautions::NO_SUCH_LENS, answer.method));
    }
    if let Some(thin) = answer.optics.thin_eye() {
        sink.item(of(items::LENS_POSITION, thin.elp));
    }
    // guidance names none of those made for an eye after laser
    if after_laser(eye).is_none() {
        sink.item(of(items::GUIDED, f64::from(u8::from(answer.guided))));
    }
    sink.item(of(items::COMPARED, f64::from(u8::from(answer.compared))));
    if let Some(rx) = eye.get(LENS_POWER).and_then(|label| refraction(eye, answer, label)) {
        sink.item(of(items::REFRACTION, rx));
    }
}

/// Is the lens chosen the one for this target, and does the eye then go with its fellow?
fn chosen(lens: &Lens, sink: &mut dyn Sink) {
    let (eye, target) = (lens.eye, lens.eye.target().d());
    let with = |label: LensPower| lens.compared().filter_map(move |answer| refraction(eye, answer, label));
    let expected = eye.get(LENS_POWER).and_then(|power| range(with(power)));
    if let Some((least, most)) = expected
        && (target - least > FAR_FROM_TARGET.get() || most - target > FAR_FROM_TARGET.get())
    {
        sink.caution(Caution::about(cautions::FAR_FROM_TARGET, LENS_POWER));
    }
    // the method that puts the two eyes furthest apart decides
    let (least, most) = expected.unwrap_or((target, target));
    let apart = eye.get(FELLOW_REFRACTION).map(|fellow| (fellow.d() - least).abs().max((most - fellow.d()).abs()));
    if apart.is_some_and(|apart| apart > ANISOMETROPIA.get()) {
        sink.caution(Caution::about(cautions::ANISOMETROPIA, FELLOW_REFRACTION));
    }
}
