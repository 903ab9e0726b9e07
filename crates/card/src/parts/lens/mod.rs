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
pub(crate) use answers::{chain, is_refused, refusals};
pub(crate) use asked::Constants;
pub(crate) use label::{mean_power, refraction};
pub(crate) use rules::RULES;
pub(crate) use working::{explain, explain_method, show_method};

use crate::id::{EntryId, SignOffId};
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::{AXIAL_LENGTH, FELLOW_REFRACTION};
use crate::parts::laser::{self, after_laser};
use crate::parts::target::choices::{SecondFor, SecondPlace};
use crate::parts::target::table::entries::{SECOND_FOR, SECOND_PLACE, TARGET, TARGET_FOR, VERTEX};
use crate::parts::toric::Label;
use crate::parts::toric::table::entries::{LABEL_POWER, LENS_AXIS, LENS_CYLINDER};
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
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    lens.report(&mut |caution| out.pass(caution));
    out.tell(&READ_OUT);
    laser::plan(eye, out);
    computed(lens, out);
    adjustments::plan(lens, out);
    label::plan(lens, out);
    constants::plan(eye, out);
    // no method after laser is adjusted: there the entry is used for nothing
    if after_laser(eye).is_none() {
        out.show(const { &[LONG_EYE.id()] });
    }
    out.show(&MODEL);
    out.tell(const { &[LENS_STYLE.id()] });
}

pub(crate) fn signs(_lens: &Lens) -> &'static [SignOffId] {
    &[sign_offs::LENS_BOX]
}

#[inline(never)]
fn computed(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let any = lens.shown().next().is_some();
    // an eye without an answer has no lens to choose from, and the reason is reported already
    let refused = is_refused(eye) || !any && after_laser(eye).is_some();
    let purpose = eye.get(SECOND_FOR);
    entered(eye, refused || purpose.is_some(), out);
    if !any {
        // that an eye is refused is reported already, and a lens by refraction needs no method
        if purpose == Some(SecondFor::Added) {
            out.about(cautions::FIRST_LENS_HIDDEN, SECOND_FOR);
        } else if !refused && purpose.is_none() {
            out.about(cautions::NO_METHOD, A_CONSTANT);
        }
        return;
    }
    of_length(eye, out);
    unadjusted(lens, out);
    constants::apart(eye, out);
    if purpose.is_some() && eye.get(SECOND_PLACE) == Some(SecondPlace::Sulcus) {
        out.about(cautions::FIRST_LENS_BAG, SECOND_PLACE);
    }
    if eye.get(CONSTANTS_FROM) == Some(ConstantsFrom::Maker) {
        out.about(cautions::CONSTANTS_OF_MAKER, CONSTANTS_FROM);
    }
    for answer in lens.shown() {
        method(eye, answer, out);
    }
    if lens.compared().count() < 2 {
        out.caution(cautions::NOTHING_TO_COMPARE);
    } else if let Some((least, most)) = lens.range(&|answer| Some(answer.power)) {
        out.item(items::POWER_SPREAD, most - least);
        out.caution(cautions::AGREEMENT);
        if most - least > SPREAD_WIDE.get() {
            out.caution(cautions::SPREAD_WIDE);
        }
    }
    if Label::of(eye).is_some_and(|label| label.is_unsettled()) {
        out.about(cautions::LABEL_NEEDS_CYLINDER, LABEL_POWER);
    }
    labels::plan(lens, out);
    chosen(lens, out);
}

/// What the length says by itself.
fn of_length(eye: &Eye, out: &mut Out) {
    let mut when = |is: bool, code| {
        if is {
            out.about(code, AXIAL_LENGTH);
        }
    };
    let al = eye.axial_length().map_or(0.0, |al| al.mm());
    when(al < GUIDANCE_SHORT.get(), cautions::SHORT_EYE);
    when(al < VERY_SHORT.get(), cautions::VERY_SHORT);
}

/// What the entries alone say.
fn entered(eye: &Eye, no_choice: bool, out: &mut Out) {
    if !eye.entered().is_made(LENS_MODEL) {
        out.about(cautions::LENS_MODEL_MISSING, LENS_MODEL);
    }
    if !(TARGET_LEAST.get()..=TARGET_MOST.get()).contains(&eye.target().d()) {
        out.about(cautions::TARGET_UNUSUAL, TARGET);
    }
    let Some(power) = eye.get(LENS_POWER) else {
        if !no_choice {
            out.about(cautions::NO_LENS_CHOSEN, LENS_POWER);
        }
        return;
    };
    if power.d() < 0.0 {
        out.about(cautions::MINUS_POWER, LENS_POWER);
    }
    let Some(labels) = labels(eye) else { return };
    if !labels.has(power) {
        out.about(cautions::OFF_LABEL, LENS_POWER);
    }
    if !labels.reaches(power.d()) {
        out.about(cautions::OUT_OF_RANGE, LENS_POWER);
    }
}

/// Which methods take a long eye as it was measured: all, or those that the set asked for has no line for.
fn unadjusted(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    if eye.axial_length().is_none_or(|al| al.mm() <= LONG_EYE_FROM.get()) {
        return;
    }
    let methods = || lens.shown().map(|answer| answer.method);
    if methods().all(|method| adjusted(method, eye).is_none()) {
        return out.about(cautions::LONG_EYE, AXIAL_LENGTH);
    }
    for method in methods().filter(|method| adjusted(*method, eye).is_none()) {
        out.about_method(cautions::LONG_EYE, method);
    }
}

fn method(eye: &Eye, answer: &Answer, out: &mut Out) {
    let method = answer.method;
    out.of(items::EXACT_POWER, answer.power, method);
    if LensPower::from_d(answer.power).is_err() {
        out.about_method(cautions::NO_SUCH_LENS, answer.method);
    }
    if let Some(thin) = answer.optics.thin_eye() {
        out.of(items::LENS_POSITION, thin.elp, method);
    }
    // guidance names none of those made for an eye after laser
    if after_laser(eye).is_none() {
        out.of(items::GUIDED, f64::from(u8::from(answer.guided)), method);
    }
    out.of(items::COMPARED, f64::from(u8::from(answer.compared)), method);
    if let Some(rx) = eye.get(LENS_POWER).and_then(|label| refraction(eye, answer, label)) {
        out.of(items::REFRACTION, rx, method);
    }
}

/// Is the lens chosen the one for this target, and does the eye then go with its fellow?
fn chosen(lens: &Lens, out: &mut Out) {
    let (eye, target) = (lens.eye, lens.eye.target().d());
    let expected = eye.get(LENS_POWER).and_then(|label| lens.range(&|answer| refraction(eye, answer, label)));
    if let Some((least, most)) = expected
        && (target - least > FAR_FROM_TARGET.get() || most - target > FAR_FROM_TARGET.get())
    {
        out.about(cautions::FAR_FROM_TARGET, LENS_POWER);
    }
    // the method that puts the two eyes furthest apart decides
    let (least, most) = expected.unwrap_or((target, target));
    let apart = eye.get(FELLOW_REFRACTION).map(|fellow| (fellow.d() - least).abs().max((most - fellow.d()).abs()));
    if apart.is_some_and(|apart| apart > ANISOMETROPIA.get()) {
        out.about(cautions::ANISOMETROPIA, FELLOW_REFRACTION);
    }
}
