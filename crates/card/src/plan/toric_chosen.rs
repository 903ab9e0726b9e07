//! The toric lens that was chosen: what it leaves as it will lie, and as it may come to lie.

use super::axis::{Seen, TOLD};
use crate::astigmatism::expected::{self, Scatter};
use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::{PowerVector, Turn};
use crate::astigmatism::sphero_cylinder::SpheroCylinder;
use crate::astigmatism::toric::{Asked, ToricLens, asked, at_lens_plane, direction, left};
use crate::astigmatism::{on_dial, short_way};
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::constant::eye::{OFF_AXIS, RESIDUAL_LARGE};
use crate::constant::off_axis::ACROSS;
use crate::field::Field;
use crate::item::{Item, What};
use crate::lens::Method;
use crate::lens::answer::{Answer, Answers, NONE};
use crate::lens::vergence::ThinEye;
use crate::sink::Sink;

/// The toric lens that was chosen, in one method's eye.
pub(crate) fn chosen_lens(case: &Case, answer: &Answer) -> Option<(ThinEye, ToricLens)> {
    let label = case.toric()?;
    let (cylinder, mark) = label.chosen?;
    let one = Seen::of(case, answer)?;
    let own = at_lens_plane(cylinder, label.plane, &one.eye, case.target, case.vertex).ok()?;
    Some((one.eye, one.lens(&label, own, mark)))
}

/// The lens chosen, as one method's eye sees it: what it asks of the cornea, with another dioptre of sphere too, and what it
/// leaves.
#[derive(Clone, Copy)]
struct Placed {
    method: Method,
    asked: Asked,
    stronger: f64,
    left: SpheroCylinder<Cornea>,
}

impl Placed {
    fn of(case: &Case, answer: &Answer, along: PowerVector<Cornea>, vector: PowerVector<Cornea>) -> Option<Placed> {
        let (eye, lens) = chosen_lens(case, answer).filter(|_| answer.compared)?;
        let stronger = asked(&eye, lens.mean + 1.0, lens.cylinder).ok()?.half;
        let asked = asked(&eye, lens.mean, lens.cylinder).ok()?;
        let left = left(eye.kc, vector, asked.along(along)).minus_cylinder();
        Some(Placed { method: answer.method, asked, stronger, left })
    }
}

#[inline(never)]
pub(super) fn plan(case: &Case, vector: PowerVector<Cornea>, scatter: Scatter, answers: &Answers, sink: &mut dyn Sink) {
    let Some((cylinder, mark)) = case.toric().and_then(|label| label.chosen) else { return };
    let along = direction(mark);
    let mut placed = [None; NONE.len()];
    for (slot, answer) in placed.iter_mut().zip(answers) {
        *slot = answer.as_ref().and_then(|answer| Placed::of(case, answer, along, vector));
    }
    let placed = || placed.iter().flatten();
    placed().for_each(|one| at_the_cornea(one, expected::mean(one.asked.along(along), vector, scatter), sink));
    placed().for_each(|one| in_spectacles(case, one, sink));
    // what another dioptre of its sphere would make of its cylinder at the cornea
    placed().for_each(|one| sink.item(Item::of(What::SphereEffect, one.method, 2.0 * (one.stronger - one.asked.half))));
    for (row, off) in OFF.into_iter().enumerate().filter(|_| placed().next().is_some()) {
        sink.item(Item::one(What::OffBy, off).in_row(row));
        let turned = along.turned_by(Turn::by(off));
        for one in placed() {
            // the mean of what is left does not turn and plays no part in its cylinder
            let left = one.asked.along(turned).minus(vector).cylinder();
            sink.item(Item::of(What::OffResidual, one.method, left).in_row(row));
        }
    }
    if placed().any(|one| -one.left.cylinder > RESIDUAL_LARGE.get()) {
        sink.caution(Caution::about(Code::ResidualLarge, Field::LensCylinder));
    }
    if let Some(best) = vector.strongest() {
        let apart = short_way(best.deg() - mark.deg()).abs();
        if apart > ACROSS.get() {
            sink.caution(Caution::about(Code::AxisAcross, Field::LensAxis));
        } else if apart > OFF_AXIS.get() {
            sink.caution(Caution::about(Code::OffAxisChosen, Field::LensAxis));
        }
    }
    if !case.cylinders().any(|c| c == cylinder) && case.cylinders().next().is_some() {
        sink.caution(Caution::about(Code::OffLabel, Field::LensCylinder));
    }
}

/// What it leaves at the cornea, in plus cylinder, nominal and expected.
#[inline(never)]
fn at_the_cornea(one: &Placed, expected: f64, sink: &mut dyn Sink) {
    let mut tell = |what, value| sink.item(Item::of(what, one.method, value));
    let plus = one.left.transposed();
    tell(What::ChosenResidual, plus.cylinder);
    if let Some(axis) = plus.axis.filter(|_| plus.cylinder >= TOLD) {
        tell(What::ChosenResidualAxis, on_dial(axis));
    }
    tell(What::ChosenCorneaSphere, plus.sphere);
    tell(What::ChosenExpected, expected);
}

/// The same in spectacles, in minus cylinder as it is prescribed.
#[inline(never)]
fn in_spectacles(case: &Case, one: &Placed, sink: &mut dyn Sink) {
    let Ok(rx) = one.left.to_spectacles(case.vertex) else { return };
    let mut tell = |what, value| sink.item(Item::of(what, one.method, value));
    tell(What::ChosenSphere, rx.sphere);
    tell(What::ChosenCylinder, rx.cylinder);
    if let Some(axis) = rx.axis.filter(|_| rx.cylinder <= -TOLD) {
        tell(What::ChosenAxis, on_dial(axis));
    }
}

/// Turns of the lens chosen that are told, degrees counter-clockwise; at 30 nothing of its correction is left.
const OFF: [f64; 7] = [-30.0, -10.0, -5.0, 0.0, 5.0, 10.0, 30.0];
