//! The toric lens that was chosen: what it leaves as it will lie, and as it may come to lie.

use super::limits::{HAS_DIRECTION, OFF_AXIS, RESIDUAL_LARGE};
use super::placed::chosen_lens;
use super::table::{cautions, items};
use crate::out::Out;
use crate::parts::cornea::limits::ACROSS;
use crate::parts::eye::Eye;
use crate::parts::lens::table::cautions::OFF_LABEL;
use crate::parts::lens::{Answer, Lens};
use crate::parts::toric::table::entries::{LENS_AXIS, LENS_CYLINDER};
use crate::parts::toric::{Label, cylinders};
use ocellus_core::astigmatism::expected::{self, Scatter};
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::{PowerVector, Turn};
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::astigmatism::toric::{Asked, asked, direction, left};
use ocellus_core::astigmatism::{on_dial, short_way};
use ocellus_core::lens::method::Method;

/// Turns of the lens chosen that are shown, degrees counter-clockwise; at 30 nothing of its correction is left.
static OFF: [(f64, Turn); 7] = [
    (-30.0, Turn::BACK_30),
    (-10.0, Turn::BACK_10),
    (-5.0, Turn::BACK_5),
    (0.0, Turn::NONE),
    (5.0, Turn::BY_5),
    (10.0, Turn::BY_10),
    (30.0, Turn::BY_30),
];

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
    // apart, so that its room on the stack is free again while the lenses are shown
    #[inline(never)]
    fn of(eye: &Eye, answer: &Answer, along: &PowerVector<Cornea>, vector: &PowerVector<Cornea>) -> Option<Placed> {
        let (thin, lens) = chosen_lens(eye, answer)?;
        let stronger = asked(&thin, lens.mean + 1.0, lens.cylinder).ok()?.half;
        let asked = asked(&thin, lens.mean, lens.cylinder).ok()?;
        let left = left(thin.kc, *vector, asked.along(*along)).minus_cylinder();
        Some(Placed { method: answer.method, asked, stronger, left })
    }
}

#[inline(never)]
pub(super) fn plan(lens: &Lens, label: &Label, vector: PowerVector<Cornea>, scatter: Scatter, out: &mut Out) {
    let eye = lens.eye;
    let Some((cylinder, mark)) = label.chosen else { return };
    let along = direction(mark);
    let mut placed = [None; Method::MOST];
    for (slot, answer) in placed.iter_mut().zip(lens.compared()) {
        *slot = Placed::of(eye, answer, &along, &vector);
    }
    let placed = || placed.iter().flatten();
    placed().for_each(|one| at_the_cornea(one, expected_of(one, &along, &vector, &scatter), out));
    placed().for_each(|one| in_spectacles(eye, one, out));
    // what another dioptre of its sphere would make of its cylinder at the cornea
    placed().for_each(|one| {
        out.of(items::SPHERE_EFFECT, 2.0 * (one.stronger - one.asked.half), one.method);
    });
    for (row, (off, turn)) in OFF.iter().enumerate().filter(|_| placed().next().is_some()) {
        out.in_row(items::OFF_BY, *off, row);
        let turned = along.turned_by(*turn);
        placed().for_each(|one| off_by(row, &turned, one, &vector, out));
    }
    if placed().any(|one| -one.left.cylinder > RESIDUAL_LARGE.get()) {
        out.about(cautions::RESIDUAL_LARGE, LENS_CYLINDER);
    }
    if let Some(best) = vector.strongest() {
        let apart = short_way(best.deg() - mark.deg()).abs();
        if apart > ACROSS.get() {
            out.about(cautions::AXIS_ACROSS, LENS_AXIS);
        } else if apart > OFF_AXIS.get() {
            out.about(cautions::OFF_AXIS_CHOSEN, LENS_AXIS);
        }
    }
    if !cylinders(eye).any(|c| c == cylinder) && cylinders(eye).next().is_some() {
        out.about(OFF_LABEL, LENS_CYLINDER);
    }
}

/// What it would leave, turned off its place.
#[inline(never)]
fn off_by(row: usize, turned: &PowerVector<Cornea>, one: &Placed, vector: &PowerVector<Cornea>, out: &mut Out) {
    // the mean of what is left does not turn and plays no part in its cylinder
    let left = one.asked.along(*turned).minus(*vector).cylinder();
    out.of_in_row(items::OFF_RESIDUAL, left, one.method, row);
}

/// The mean size of what it leaves, with all that scatters.
#[inline(never)]
fn expected_of(one: &Placed, along: &PowerVector<Cornea>, vector: &PowerVector<Cornea>, scatter: &Scatter) -> f64 {
    expected::mean(one.asked.along(*along), *vector, *scatter)
}

/// What it leaves at the cornea, in plus cylinder, nominal and expected.
#[inline(never)]
fn at_the_cornea(one: &Placed, expected: f64, out: &mut Out) {
    let mut tell = |what, value| out.of(what, value, one.method);
    let plus = one.left.transposed();
    tell(items::CHOSEN_RESIDUAL, plus.cylinder);
    if let Some(axis) = plus.axis.filter(|_| plus.cylinder >= HAS_DIRECTION) {
        tell(items::CHOSEN_RESIDUAL_AXIS, on_dial(axis));
    }
    tell(items::CHOSEN_CORNEA_SPHERE, plus.sphere);
    tell(items::CHOSEN_EXPECTED, expected);
}

/// The same in spectacles, in minus cylinder as it is prescribed.
#[inline(never)]
fn in_spectacles(eye: &Eye, one: &Placed, out: &mut Out) {
    let Ok(rx) = one.left.to_spectacles(eye.vertex()) else { return };
    let mut tell = |what, value| out.of(what, value, one.method);
    tell(items::CHOSEN_SPHERE, rx.sphere);
    tell(items::CHOSEN_CYLINDER, rx.cylinder);
    if let Some(axis) = rx.axis.filter(|_| rx.cylinder <= -HAS_DIRECTION) {
        tell(items::CHOSEN_AXIS, on_dial(axis));
    }
}
