//! A toric lens that sits wrong: where to turn it, and what each turn would leave.

pub mod limits;
pub mod table;
mod turns;

use crate::out::Out;
use crate::parts::after::needed_now;
use crate::parts::axis::limits::RESIDUAL_LARGE;
use crate::parts::certainty::REFRACTION_SD;
use crate::parts::cornea::limits::ACROSS;
use crate::parts::cornea::planned;
use crate::parts::lens::Lens;
use crate::parts::toric::Label;
use crate::parts::toric::table::entries::MARK_FOUND;
use limits::{TURN_DISAGREES, TURN_LITTLE};
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::short_way;
use table::{cautions, items};
use turns::{Turns, best};

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    out.show(const { &[MARK_FOUND.id()] });
    if !eye.entered().is_made(MARK_FOUND) {
        return;
    }
    let Some(now) = needed_now(eye) else {
        return out.about(cautions::TURN_NEEDS, MARK_FOUND);
    };
    out.item(items::NOW_CYLINDER, now.cylinder());
    out.meridian(items::NOW_AXIS, now.plus_cylinder().axis);
    let turns = Turns(lens);
    let Some((most, least_left)) = turns.most_and_least_left() else { return };
    turns.tell(eye.vertex(), now, out);
    if most.abs() < TURN_LITTLE.get() {
        return out.about(cautions::TURN_LITTLE, MARK_FOUND);
    }
    turns.table(most, out);
    against_plan(lens, &turns, out);
    out.about(cautions::TURN_SENSE, MARK_FOUND);
    out.about(cautions::TURN_LEAVES, MARK_FOUND);
    if eye.get(REFRACTION_SD).is_some_and(|noise| now.cylinder() - least_left <= noise.d()) {
        out.about(cautions::TURN_WITHIN_NOISE, MARK_FOUND);
    }
}

/// What in the plan contradicts the turn: a slip in the refraction turns a lens the other way.
#[inline(never)]
fn against_plan(lens: &Lens, turns: &Turns, out: &mut Out) {
    let Some((_, planned_at)) = Label::of(lens.eye).and_then(|label| label.chosen) else { return };
    let from_planned = |degrees: f64| short_way(degrees - planned_at.deg()).abs();
    let mut away = false;
    let mut not_enough = false;
    let mut across = false;
    let mut disagrees = false;
    let cornea = planned(lens.eye);
    turns.each(&mut |_, w| {
        let wanted = PowerVector::at(Cornea, 0.0, w.k_x / 2.0, w.k_y / 2.0);
        disagrees |= cornea.is_some_and(|cornea| wanted.minus(cornea).cylinder() > TURN_DISAGREES.get());
        away |= from_planned(w.best) > from_planned(w.m) + TURN_LITTLE.get();
        not_enough |= w.left > RESIDUAL_LARGE.get();
        across |= from_planned(w.m) > ACROSS.get();
    });
    for (code, is) in [
        (cautions::TURN_AWAY, away),
        (cautions::TURN_DISAGREES, disagrees),
        (cautions::TURN_NOT_ENOUGH, not_enough),
        (cautions::MARK_ACROSS, across),
    ] {
        if is {
            out.about(code, MARK_FOUND);
        }
    }
}

/// The best turn of the lens by each method.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, out: &mut Out) -> bool {
    let mut any = false;
    for answer in lens.answers().compared() {
        if let Some(w) = best(lens.eye, answer) {
            out.of(items::TURN_LEFT, w.left, answer.method);
            w.show(out);
            any = true;
        }
    }
    any
}
