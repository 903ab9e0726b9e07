//! What is known of a cornea after a laser, and what the published adjustments make of a long eye.

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::{KAfterFrom, LongEye};
use crate::constant::eye::{K_AFTER_APART, K_AFTER_TODAY};
use crate::field::Field;
use crate::item::{Item, What};
use crate::lens::answer::{Answer, Answers};
use crate::lens::predict::{adjusted, after_laser, k_after, k_from_history, predict_at};
use crate::lens::shammas::Laser;
use crate::lens::{Method, long_eye};
use crate::quantity::AxialLength;
use crate::sink::Sink;

/// What is known of the cornea before and after a laser.
#[inline(never)]
pub(super) fn laser(case: &Case, sink: &mut dyn Sink) {
    let Some(laser) = after_laser(case) else { return };
    entries(
        case.draft(),
        sink,
        &[Field::KBefore, Field::RefractionBefore, Field::RefractionAfter, Field::KAfter, Field::KAfterFrom],
    );
    let history = k_from_history(case);
    if let Some(k) = history {
        sink.item(Item::one(What::KHistory, k.d()));
    }
    if case.k_after_from() == Some(KAfterFrom::BothSurfaces) {
        sink.caution(Caution::about(Code::KBothSurfaces, Field::KAfter));
    }
    // what it did to the cornea, by whatever is known of it
    let became = k_after(case).ok().or(history);
    let flatter = case.k_before().zip(became).map(|(before, after)| before.d() - after.d());
    if flatter.is_some_and(|by| if laser == Laser::Myopic { by < 0.0 } else { by > 0.0 }) {
        sink.caution(Caution::about(Code::LaserKind, Field::PreviousSurgery));
    }
    if became.is_some_and(|k| (k.d() - case.cornea.k()).abs() > K_AFTER_TODAY.get()) {
        sink.caution(Caution::about(Code::KAfterToday, Field::KAfter));
    }
    let apart = history.zip(case.k_after()).map(|(history, estimate)| (history.d() - estimate.d()).abs());
    if apart.is_some_and(|apart| apart > K_AFTER_APART.get()) {
        sink.caution(Caution::about(Code::KAfterDiffers, Field::KAfter));
    }
}

/// What the published adjustments make of a long eye: the one applied, or all of them side by side.
#[inline(never)]
pub(super) fn adjustments(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    let of = |answer: &Answer, what, value| Item::of(what, answer.method, value);
    for answer in answers.iter().flatten() {
        let Some(w) = adjusted(answer.method, case) else { continue };
        sink.item(of(answer, What::AdjustedLength, w.adjusted));
        sink.item(of(answer, What::AdjustedStep, w.step));
        sink.caution(Caution::of(Code::LengthAdjusted, answer.method));
    }
    if case.long_eye() != Some(LongEye::Compared) {
        return;
    }
    let mut any = false;
    for answer in answers.iter().flatten() {
        for (set, power, step) in [
            (LongEye::First2011, What::FirstSet, What::FirstStep),
            (LongEye::Second2011, What::SecondSet, What::SecondStep),
            (LongEye::Set2018, What::Set2018, What::Step2018),
        ] {
            if let Some((w, asked)) = under(set, answer.method, case) {
                sink.item(of(answer, power, asked));
                sink.item(of(answer, step, w.step));
                any = true;
            }
        }
    }
    if any {
        sink.caution(Caution::about(Code::SetsCompared, Field::LongEye));
    }
}

/// How a set adjusts the length for a method, and the exact power that follows.
#[inline(never)]
fn under(set: LongEye, method: Method, case: &Case) -> Option<(long_eye::Working, f64)> {
    let w = long_eye::working(set, method, case.axial_length?)?;
    let al = AxialLength::from_mm(w.adjusted).ok()?;
    let prediction = predict_at(al, method, case, &case.constants()).ok()?;
    Some((w, prediction.optics().power(case.target, case.vertex).ok()?))
}
