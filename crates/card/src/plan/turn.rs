//! A toric lens that sits wrong: where to turn it, and what each turn would leave.

use super::axis::TOLD;
use super::entries;
use super::toric_chosen::chosen_lens;
use crate::astigmatism::on_dial;
use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::short_way;
use crate::astigmatism::toric::at_cornea;
use crate::astigmatism::turning::{Working, working};
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::constant::eye::RESIDUAL_LARGE;
use crate::constant::off_axis::{ACROSS, TURN_DISAGREES, TURN_LITTLE};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::Method;
use crate::lens::answer::{Answer, Answers, NONE, answer_shown};
use crate::quantity::Axis;
use crate::sink::Sink;

/// Degrees between two lines of the table.
const STEP: f64 = 5.0;

/// The correction still needed at the cornea, by the refraction found.
pub(crate) fn needed_now(case: &Case) -> Option<PowerVector<Cornea>> {
    Some(PowerVector::of(case.refraction_found()?.to_cornea(case.vertex).ok()?))
}

/// The best turn of the lens in one method's eye.
pub(crate) fn best(case: &Case, answer: &Answer) -> Option<Working> {
    let (eye, lens) = chosen_lens(case, answer)?;
    // a lens without a cylinder cannot be turned
    let lens = Some(at_cornea(&eye, lens).ok()?.cylinder()).filter(|cylinder| *cylinder >= TOLD)?;
    working(needed_now(case)?, lens, case.mark_found()?)
}

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Turn);
    entries(case.draft(), sink, &[Field::MarkFound]);
    let (Some(now), Some(_)) = (needed_now(case), case.mark_found()) else {
        if case.draft().has(Field::MarkFound) {
            sink.caution(Caution::about(Code::TurnNeeds, Field::MarkFound));
        }
        return;
    };
    sink.item(Item::one(What::NowCylinder, now.cylinder()));
    if let Some(axis) = now.plus_cylinder().axis {
        sink.item(Item::one(What::NowAxis, on_dial(axis)));
    }
    let mut answers = NONE;
    answer_shown(case, &mut |_| {}, &mut answers);
    let mut found = Found { most: 0.0, least_left: f64::INFINITY };
    turns(case, now, &answers, &mut found, sink);
    if found.least_left.is_infinite() {
        return;
    }
    if found.most.abs() < TURN_LITTLE.get() {
        return sink.caution(Caution::about(Code::TurnLittle, Field::MarkFound));
    }
    table(case, &answers, found.most, sink);
    against_plan(case, &answers, sink);
    sink.caution(Caution::about(Code::TurnSense, Field::MarkFound));
    sink.caution(Caution::about(Code::TurnLeaves, Field::MarkFound));
    let noise = case.draft().number_or_default(Field::RefractionSd);
    if noise.is_some_and(|noise| now.cylinder() - found.least_left <= noise) {
        sink.caution(Caution::about(Code::TurnWithinNoise, Field::MarkFound));
    }
}

/// The turn furthest from none, and the least cylinder that a best turn leaves.
struct Found {
    most: f64,
    least_left: f64,
}

fn of_compared<'a>(case: &'a Case, answers: &'a Answers) -> impl Iterator<Item = (Method, Working)> + 'a {
    answers.iter().flatten().filter(|answer| answer.compared).filter_map(|a| Some((a.method, best(case, a)?)))
}

/// The best turn by each method: from, to, both ways round, and the refraction after it.
#[inline(never)]
fn turns(case: &Case, now: PowerVector<Cornea>, answers: &Answers, found: &mut Found, sink: &mut dyn Sink) {
    for (method, w) in of_compared(case, answers) {
        if w.turn.abs() > found.most.abs() {
            found.most = w.turn;
        }
        found.least_left = found.least_left.min(w.left);
        let mut tell = |what, value| sink.item(Item::of(what, method, value));
        if let Ok(best) = Axis::from_deg(w.best) {
            tell(What::TurnTo, on_dial(best));
        }
        if w.turn.abs() >= TURN_LITTLE.get() {
            tell(What::TurnClock, w.clockwise());
            tell(What::TurnCounter, w.counter_clockwise());
        }
        tell(What::TurnLeft, w.left);
    }
    for (method, w) in of_compared(case, answers) {
        let Ok(rx) = w.after(w.turn, now.m).minus_cylinder().to_spectacles(case.vertex) else { continue };
        let mut tell = |what, value| sink.item(Item::of(what, method, value));
        tell(What::TurnedSphere, rx.sphere);
        tell(What::TurnedCylinder, rx.cylinder);
        if let Some(axis) = rx.axis.filter(|_| rx.cylinder <= -TOLD) {
            tell(What::TurnedAxis, on_dial(axis));
        }
    }
}

/// What the plan says against the turn: a slip in the refraction turns a lens the other way.
#[inline(never)]
fn against_plan(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    let Some((_, planned)) = case.toric().and_then(|label| label.chosen) else { return };
    let from_planned = |degrees: f64| short_way(degrees - planned.deg()).abs();
    let mut away = false;
    let mut not_enough = false;
    let mut across = false;
    let mut disagrees = false;
    let cornea = super::cornea::planned(case);
    for (_, w) in of_compared(case, answers) {
        let wanted = PowerVector::at(Cornea, 0.0, w.k_x / 2.0, w.k_y / 2.0);
        disagrees |= cornea.is_some_and(|cornea| wanted.minus(cornea).cylinder() > TURN_DISAGREES.get());
        away |= from_planned(w.best) > from_planned(w.m) + TURN_LITTLE.get();
        not_enough |= w.left > RESIDUAL_LARGE.get();
        across |= from_planned(w.m) > ACROSS.get();
    }
    for (code, is) in [
        (Code::TurnAway, away),
        (Code::TurnDisagrees, disagrees),
        (Code::TurnNotEnough, not_enough),
        (Code::MarkAcross, across),
    ] {
        if is {
            sink.caution(Caution::about(code, Field::MarkFound));
        }
    }
}

/// What every five degrees between here and the best turn would leave.
#[inline(never)]
fn table(case: &Case, answers: &Answers, most: f64, sink: &mut dyn Sink) {
    let step = if most < 0.0 { -STEP } else { STEP };
    // as far as the best turn and one step beyond, so that it is seen to be the best
    let rows = (most / step) as usize + 3;
    for row in 0..rows.min(19) {
        let turn = step * row as f64;
        sink.item(Item::one(What::TurnBy, turn).in_row(row));
        for (method, w) in of_compared(case, answers) {
            sink.item(Item::of(What::TurnResidual, method, w.after(turn, 0.0).cylinder()).in_row(row));
        }
    }
}
