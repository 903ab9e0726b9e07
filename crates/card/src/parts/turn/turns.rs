//! The best turn by each method compared.

use super::limits::TURN_LITTLE;
use super::table::items;
use crate::out::Out;
use crate::parts::after::needed_now;
use crate::parts::axis::chosen_lens;
use crate::parts::axis::limits::HAS_DIRECTION;
use crate::parts::eye::Eye;
use crate::parts::lens::{Answer, Lens};
use crate::parts::toric::table::entries::MARK_FOUND;
use ocellus_core::astigmatism::on_dial;
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::toric::at_cornea;
use ocellus_core::astigmatism::turning::{Working, working};
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::{Axis, Vertex};

/// Degrees between two lines of the table.
const STEP: f64 = 5.0;

/// The best turn of the lens in one method's eye.
#[inline(never)]
pub(super) fn best(eye: &Eye, answer: &Answer) -> Option<Working> {
    let (now, mark) = (needed_now(eye)?, eye.get(MARK_FOUND)?);
    let (thin, lens) = chosen_lens(eye, answer)?;
    // a lens without a cylinder cannot be turned
    let lens = Some(at_cornea(&thin, lens).ok()?.cylinder()).filter(|cylinder| *cylinder >= HAS_DIRECTION)?;
    working(now, lens, mark)
}

/// The best turn by each method compared: computed anew for whoever asks, since a device has no room for all of them.
pub(super) struct Turns<'a>(pub(super) &'a Lens<'a>);

impl Turns<'_> {
    /// Hands them out one by one.
    #[inline(never)]
    pub(super) fn each(&self, then: &mut dyn FnMut(Method, &Working)) {
        for answer in self.0.compared() {
            if let Some(w) = best(self.0.eye, answer) {
                then(answer.method, &w);
            }
        }
    }

    /// The turn furthest from none, and the least cylinder that a best turn leaves.
    pub(super) fn most_and_least_left(&self) -> Option<(f64, f64)> {
        let (mut most, mut least_left) = (0.0f64, None);
        self.each(&mut |_, w| {
            if w.turn.abs() > most.abs() {
                most = w.turn;
            }
            least_left = Some(least_left.map_or(w.left, |least| f64::min(least, w.left)));
        });
        Some((most, least_left?))
    }

    /// From, to, both ways round, and the refraction after it.
    #[inline(never)]
    pub(super) fn tell(&self, vertex: Vertex, now: PowerVector<Cornea>, out: &mut Out) {
        self.each(&mut |method, w| {
            let mut tell = |what, value| out.of(what, value, method);
            if let Ok(best) = Axis::from_deg(w.best) {
                tell(items::TURN_TO, on_dial(best));
            }
            if w.turn.abs() >= TURN_LITTLE.get() {
                tell(items::TURN_CLOCK, w.clockwise());
                tell(items::TURN_COUNTER, w.counter_clockwise());
            }
            tell(items::TURN_LEFT, w.left);
        });
        self.each(&mut |method, w| {
            let Ok(rx) = w.after(w.turn, now.m).minus_cylinder().to_spectacles(vertex) else { return };
            let mut tell = |what, value| out.of(what, value, method);
            tell(items::TURNED_SPHERE, rx.sphere);
            tell(items::TURNED_CYLINDER, rx.cylinder);
            if let Some(axis) = rx.axis.filter(|_| rx.cylinder <= -HAS_DIRECTION) {
                tell(items::TURNED_AXIS, on_dial(axis));
            }
        });
    }

    /// What every five degrees between here and the best turn would leave.
    #[inline(never)]
    pub(super) fn table(&self, most: f64, out: &mut Out) {
        let step = if most < 0.0 { -STEP } else { STEP };
        // as far as the best turn and one step beyond, so that it is seen to be the best
        let rows = (most / step) as usize + 3;
        for row in 0..rows.min(19) {
            let turn = step * row as f64;
            out.in_row(items::TURN_BY, turn, row);
            self.each(&mut |method, w| {
                out.of_in_row(items::TURN_RESIDUAL, w.after(turn, 0.0).cylinder(), method, row);
            });
        }
    }
}
