//! A lens by the refraction that the eye has: added before another, in the place of another, or where there is none.

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::{EyeState, KKind, LensStyle, PreviousSurgery, SecondFor, SecondPlace};
use crate::constant::eye::{FAR_FROM_TARGET, SECOND_APART};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::Method;
use crate::lens::answer::{NONE, answer_all};
use crate::lens::ladder::{range, widened};
use crate::lens::predict::{after_laser, k_after};
use crate::lens::second::{Place, refraction, working};
use crate::quantity::Refraction;
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Second);
    let Some((purpose, now)) = case.second_for().zip(case.refraction_now()) else { return };
    entries(
        case.draft(),
        sink,
        &[
            Field::SecondFor,
            Field::SecondPower,
            Field::RefractionNow,
            Field::LensInEye,
            Field::SecondPlace,
            Field::SecondStyle,
            Field::SecondPosition,
        ],
    );
    let shifted = case.second_position().is_none() || purpose == SecondFor::Exchange;
    if shifted && case.second_place() == Some(SecondPlace::Sulcus) {
        entries(case.draft(), sink, &[Field::SulcusShift]);
    }
    if let Some(refusal) = refused(case, purpose) {
        return sink.caution(refusal);
    }
    spoken(case, purpose, sink);
    let (mut placed, mut powers, mut far) = (false, None, false);
    places(case, purpose, &mut |method, place| {
        placed = true;
        let of = |what, value| Item { method, ..Item::one(what, value) };
        sink.item(of(What::SecondAt, place.elp));
        if let Ok(w) = working(&place, now, case.target, case.vertex) {
            sink.item(of(What::SecondExact, w.power));
            powers = Some(widened(powers, w.power));
        }
        let left = case.second_power().map(|lens| refraction(&place, now, lens, case.vertex));
        if let Some(Ok(left)) = left {
            sink.item(of(What::SecondLeft, left));
            far |= (left - case.target.d()).abs() > FAR_FROM_TARGET.get();
        }
    });
    let Some((least, most)) = powers else {
        let code = if placed { Code::NoSolution } else { Code::SecondNeedsPosition };
        return sink.caution(Caution::about(code, Field::SecondPosition));
    };
    if apart(case, purpose, least, most) {
        sink.caution(Caution::about(Code::SecondApart, Field::RefractionNow));
    }
    if far {
        sink.caution(Caution::about(Code::SecondFar, Field::SecondPower));
    }
    sink.caution(Caution::about(Code::SecondVergence, Field::RefractionNow));
}

/// Whether the methods for a first lens ask for quite another power, where the eye is to have no other lens.
#[inline(never)]
fn apart(case: &Case, purpose: SecondFor, least: f64, most: f64) -> bool {
    if purpose == SecondFor::Added {
        return false;
    }
    let mut answers = NONE;
    answer_all(case, &case.constants(), &mut |_| {}, &mut answers);
    let asked = range(answers.iter().flatten().filter(|answer| answer.compared).map(|answer| answer.power));
    asked.is_some_and(|(low, high)| least > high + SECOND_APART.get() || most < low - SECOND_APART.get())
}

/// Why no such lens is computed.
fn refused(case: &Case, purpose: SecondFor) -> Option<Caution> {
    let one_piece =
        case.second_place() == Some(SecondPlace::Sulcus) && case.second_style() == Some(LensStyle::OnePiece);
    let no_lens = purpose == SecondFor::Exchange && case.lens_in_eye().is_none();
    [
        (case.k_kind == KKind::Total, Code::TotalK, Field::KKind),
        (case.eye_state == EyeState::SiliconeOil, Code::SiliconeOil, Field::EyeState),
        (unfit(case), Code::CorneaUnfit, Field::PreviousSurgery),
        (one_piece, Code::OnePieceSulcus, Field::SecondStyle),
        (no_lens, Code::SecondNeedsLens, Field::LensInEye),
    ]
    .into_iter()
    .find_map(|(is, code, field)| is.then_some(Caution::about(code, field)))
}

/// Whether nothing that is measured of this cornea holds.
fn unfit(case: &Case) -> bool {
    case.previous_surgery != PreviousSurgery::None && after_laser(case).is_none()
}

fn spoken(case: &Case, purpose: SecondFor, sink: &mut dyn Sink) {
    let expected = if purpose == SecondFor::Aphakic { EyeState::Aphakic } else { EyeState::Pseudophakic };
    if after_laser(case).is_some() {
        sink.caution(Caution::about(Code::SecondLaser, Field::PreviousSurgery));
    }
    if case.eye_state != expected || purpose == SecondFor::Aphakic && case.lens_in_eye().is_some() {
        sink.caution(Caution::about(Code::SecondState, Field::EyeState));
    }
    if case.second_place() == Some(SecondPlace::Sulcus) && case.second_style().is_none() {
        sink.caution(Caution::about(Code::BackupStyleUnknown, Field::SecondStyle));
    }
    if purpose == SecondFor::Added && case.second_place() == Some(SecondPlace::Bag) {
        sink.caution(Caution::about(Code::AddedInBag, Field::SecondPlace));
    }
    if case.lens_power().is_some() && case.second_power().is_some() {
        sink.caution(Caution::about(Code::TwoLenses, Field::SecondPower));
    }
    match case.second_power() {
        None => sink.caution(Caution::about(Code::NoSecondPower, Field::SecondPower)),
        Some(power) if power.d() < 0.0 => sink.caution(Caution::about(Code::MinusPower, Field::SecondPower)),
        Some(_) => {}
    }
}

/// Where the lens may lie: as entered, and else as each method compared has it.
pub(crate) fn places(case: &Case, purpose: SecondFor, each: &mut dyn FnMut(Option<Method>, Place)) {
    let exchange = purpose == SecondFor::Exchange;
    let in_place = case.lens_in_eye().filter(|_| exchange).map_or(0.0, |lens| lens.d());
    let forward = match case.second_place() {
        Some(SecondPlace::Sulcus) => case.sulcus_shift().map_or(0.0, |shift| shift.mm()),
        _ => 0.0,
    };
    // a lens that is exchanged lies in the bag, wherever the new one goes
    let behind = if exchange { forward } else { 0.0 };
    let k = after_laser(case).and_then(|_| k_after(case).ok()).map_or(case.cornea.k(), |k| k.d());
    let at = |elp| Place { k, elp, in_place, behind };
    if let Some(position) = case.second_position() {
        return each(None, at(position.mm()));
    }
    let mut answers = NONE;
    answer_all(case, &case.constants(), &mut |_| {}, &mut answers);
    for answer in answers.iter().flatten().filter(|answer| answer.compared) {
        if let Some(eye) = answer.optics.thin_eye() {
            each(Some(answer.method), at(eye.elp - forward));
        }
    }
}

/// The refraction today, where a lens is to be computed from it and nothing forbids it.
pub(crate) fn known(case: &Case) -> Option<(SecondFor, Refraction)> {
    let (purpose, now) = case.second_for().zip(case.refraction_now())?;
    refused(case, purpose).is_none().then_some((purpose, now))
}
