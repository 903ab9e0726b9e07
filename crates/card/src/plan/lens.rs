//! The lens: what was chosen, what each method says, and the labels around the target.

use super::{constants, entries, hard_eyes, label};
use crate::astigmatism::toric::{ToricLens, at_lens_plane};
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::{ConstantsFrom, CylinderPlane, LabelPower, SecondFor, SecondPlace};
use crate::constant::eye::*;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::answer::{Answer, Answers, NONE, answer_shown};
use crate::lens::ladder::{labels, on_label, range, widened};
use crate::lens::predict::{adjusted, after_laser, refusals};
use crate::quantity::LensPower;
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Lens);
    let mut answers = NONE;
    answer_shown(case, &mut |caution| sink.caution(caution), &mut answers);
    entries(case.draft(), sink, READ_OUT);
    hard_eyes::laser(case, sink);
    computed(case, &answers, sink);
    hard_eyes::adjustments(case, &answers, sink);
    label::plan(case, &answers, sink);
    constants::plan(case, sink);
    // no method after laser is adjusted: there the entry is used for nothing
    if after_laser(case).is_none() {
        entries(case.draft(), sink, &[Field::LongEye]);
    }
    entries(case.draft(), sink, MODEL);
}

/// What is read out at the table.
const READ_OUT: &[Field] =
    &[Field::LensModel, Field::LensPower, Field::LensCylinder, Field::LensAxis, Field::Target, Field::TargetFor];

/// What the numbers rest on.
const MODEL: &[Field] = &[
    Field::HaigisA1,
    Field::HaigisA2,
    Field::ConstantsFrom,
    Field::LabelRule,
    Field::Vertex,
    Field::LensStep,
    Field::LensLeast,
    Field::LensMost,
    Field::LensStyle,
    Field::Optic,
    Field::LensLength,
    Field::HapticAxis,
    Field::ShowSrk2,
];

#[inline(never)]
fn computed(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    let shown = answers.iter().flatten();
    // an eye without an answer has no lens to choose from, and has been told why
    let refused = refusals(case).next().is_some() || shown.clone().next().is_none() && after_laser(case).is_some();
    entered(case, refused || case.second_for().is_some(), sink);
    let compared = shown.clone().filter(|a| a.compared);
    if shown.clone().next().is_none() {
        // an eye that is refused has been told so already, and a lens by refraction needs no method
        if case.second_for() == Some(SecondFor::Added) {
            sink.caution(Caution::about(Code::FirstLensHidden, Field::SecondFor));
        } else if !refused && case.second_for().is_none() {
            sink.caution(Caution::about(Code::NoMethod, Field::AConstant));
        }
        return;
    }
    of_length(case, sink);
    unadjusted(case, answers, sink);
    constants::apart(case, sink);
    if case.second_for().is_some() && case.second_place() == Some(SecondPlace::Sulcus) {
        sink.caution(Caution::about(Code::FirstLensBag, Field::SecondPlace));
    }
    if case.constants_from() == Some(ConstantsFrom::Maker) {
        sink.caution(Caution::about(Code::ConstantsOfMaker, Field::ConstantsFrom));
    }
    for answer in shown.clone() {
        method(case, answer, sink);
    }
    if compared.clone().count() < 2 {
        sink.caution(Caution::general(Code::NothingToCompare));
    } else if let Some((least, most)) = range(compared.clone().map(|a| a.power)) {
        sink.item(Item::one(What::PowerSpread, most - least));
        sink.caution(Caution::general(Code::Agreement));
        if most - least > SPREAD_WIDE.get() {
            sink.caution(Caution::general(Code::SpreadWide));
        }
    }
    let weak_meridian =
        case.toric().is_some_and(|t| t.label_power == LabelPower::FlattestMeridian && t.chosen.is_none());
    if weak_meridian {
        sink.caution(Caution::about(Code::LabelNeedsCylinder, Field::LabelPower));
    }
    ladder(case, answers, sink);
    chosen(case, compared, sink);
}

/// What the length says by itself.
fn of_length(case: &Case, sink: &mut dyn Sink) {
    let mut when = |is: bool, code| {
        if is {
            sink.caution(Caution::about(code, Field::AxialLength));
        }
    };
    let al = case.axial_length.map_or(0.0, |al| al.mm());
    when(al < GUIDANCE_SHORT.get(), Code::ShortEye);
    when(al < VERY_SHORT.get(), Code::VeryShort);
}

/// What a label leaves out of its lens's mean power, D.
pub(super) fn beyond(case: &Case, answer: &Answer) -> Option<f64> {
    let label = LensPower::from_d(answer.power).ok()?;
    Some(mean_power(case, answer, label)?.d() - label.d())
}

/// What the entries alone say.
fn entered(case: &Case, no_choice: bool, sink: &mut dyn Sink) {
    if !case.draft().has(Field::LensModel) {
        sink.caution(Caution::about(Code::LensModelMissing, Field::LensModel));
    }
    if !(TARGET_LEAST.get()..=TARGET_MOST.get()).contains(&case.target.d()) {
        sink.caution(Caution::about(Code::TargetUnusual, Field::Target));
    }
    let Some(power) = case.lens_power() else {
        if !no_choice {
            sink.caution(Caution::about(Code::NoLensChosen, Field::LensPower));
        }
        return;
    };
    if power.d() < 0.0 {
        sink.caution(Caution::about(Code::MinusPower, Field::LensPower));
    }
    if !on_label(power, case) {
        sink.caution(Caution::about(Code::OffLabel, Field::LensPower));
    }
    if case.lens_least().is_some_and(|least| power < least) || case.lens_most().is_some_and(|most| power > most) {
        sink.caution(Caution::about(Code::OutOfRange, Field::LensPower));
    }
}

/// Which methods take a long eye as it was measured: all, or those that the set asked for has no line for.
fn unadjusted(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    if case.axial_length.is_none_or(|al| al.mm() <= LONG_EYE.get()) {
        return;
    }
    let methods = || answers.iter().flatten().map(|answer| answer.method);
    if methods().all(|method| adjusted(method, case).is_none()) {
        return sink.caution(Caution::about(Code::LongEye, Field::AxialLength));
    }
    for method in methods().filter(|method| adjusted(*method, case).is_none()) {
        sink.caution(Caution::of(Code::LongEye, method));
    }
}

fn method(case: &Case, answer: &Answer, sink: &mut dyn Sink) {
    let of = |what, value| Item::of(what, answer.method, value);
    sink.item(of(What::ExactPower, answer.power));
    if LensPower::from_d(answer.power).is_err() {
        sink.caution(Caution::of(Code::NoSuchLens, answer.method));
    }
    if let Some(eye) = answer.optics.thin_eye() {
        sink.item(of(What::LensPosition, eye.elp));
    }
    // guidance names none of those made for an eye after laser
    if after_laser(case).is_none() {
        sink.item(of(What::Guided, f64::from(u8::from(answer.guided))));
    }
    sink.item(of(What::Compared, f64::from(u8::from(answer.compared))));
    if let Some(rx) = case.lens_power().and_then(|label| refraction(case, answer, label)) {
        sink.item(of(What::Refraction, rx));
    }
}

/// The mean power of a lens of this label: a toric label that states its weak meridian lacks half its cylinder.
pub(crate) fn mean_power(case: &Case, answer: &Answer, label: LensPower) -> Option<LensPower> {
    let chosen = case.toric().and_then(|toric| Some((toric, toric.chosen?)));
    let Some((toric, (cylinder, mark))) = chosen else { return Some(label) };
    // a method without a lens position can take a cylinder at the lens, but none from the cornea there
    let own = match (toric.plane, answer.optics.thin_eye()) {
        (_, Some(eye)) => at_lens_plane(cylinder, toric.plane, &eye, case.target, case.vertex).ok()?,
        (CylinderPlane::Lens, None) => cylinder.d(),
        (CylinderPlane::Cornea, None) => return None,
    };
    LensPower::from_d(ToricLens::labelled(label.d(), toric.label_power, own, mark).mean).ok()
}

/// What a lens of this label leaves, by one method.
pub(super) fn refraction(case: &Case, answer: &Answer, label: LensPower) -> Option<f64> {
    answer.optics.refraction(mean_power(case, answer, label)?, case.vertex).ok()
}

#[inline(never)]
fn ladder(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    let shown = answers.iter().flatten();
    let fit = shown.clone().filter(|a| a.compared).map(|a| a.power);
    let Some((least, most)) = range(fit).or_else(|| range(shown.clone().map(|a| a.power))) else { return };
    // the labels stand around the mean power asked for, less what a label leaves out of its mean
    let middle = (least + most) / 2.0 - shown.clone().find_map(|answer| beyond(case, answer)).unwrap_or(0.0);
    if case.lens_least().is_some_and(|l| middle < l.d()) || case.lens_most().is_some_and(|m| middle > m.d()) {
        sink.caution(Caution::about(Code::ModelFallsShort, Field::LensModel));
    }
    let around = || labels(middle, case);
    // a lens chosen further away has a row of its own
    let chosen = case.lens_power().filter(|power| !around().any(|label| label == *power));
    let several = shown.clone().filter(|a| a.compared).count() >= 2;
    for (row, label) in around().chain(chosen).enumerate() {
        sink.item(Item::one(What::LadderPower, label.d()).in_row(row));
        let mut spread = None;
        for answer in shown.clone() {
            let Some(rx) = refraction(case, answer, label) else { continue };
            sink.item(Item::of(What::LadderRefraction, answer.method, rx).in_row(row));
            if answer.compared {
                spread = Some(widened(spread, rx));
            }
        }
        if let Some((least, most)) = spread.filter(|_| several) {
            sink.item(Item::one(What::LadderSpread, most - least).in_row(row));
        }
    }
}

/// Is the lens chosen the one for this target, and does the eye then go with its fellow?
fn chosen<'a>(case: &Case, compared: impl Iterator<Item = &'a Answer> + Clone, sink: &mut dyn Sink) {
    let with = |label: LensPower| compared.clone().filter_map(move |a| refraction(case, a, label));
    let expected = case.lens_power().and_then(|power| range(with(power)));
    if let Some((least, most)) = expected
        && (case.target.d() - least > FAR_FROM_TARGET.get() || most - case.target.d() > FAR_FROM_TARGET.get())
    {
        sink.caution(Caution::about(Code::FarFromTarget, Field::LensPower));
    }
    // the method that puts the two eyes furthest apart decides
    let (least, most) = expected.unwrap_or((case.target.d(), case.target.d()));
    let apart = case.fellow_refraction().map(|fellow| (fellow.d() - least).abs().max((most - fellow.d()).abs()));
    if apart.is_some_and(|apart| apart > ANISOMETROPIA.get()) {
        sink.caution(Caution::about(Code::Anisometropia, Field::FellowRefraction));
    }
}
