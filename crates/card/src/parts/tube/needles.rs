//! Every gauge, and what it would lose with this length and flow: what another needle changes.

use super::choices::ViscosityFrom;
use super::known::{Line, known_fluid};
use super::limits::{LAMINAR, TOO_MUCH};
use super::table::entries::*;
use super::table::{cautions, items};
use crate::entered::Entered;
use crate::out::Out;
use ocellus_core::fluids::needle::{NEEDLES, Needle};
use ocellus_core::fluids::tube::{Fluid, Tube, working_at};
use ocellus_core::quantity::Bore;

#[inline(never)]
pub(super) fn plan(entered: &Entered, out: &mut Out) {
    if entered.get(GAUGE).is_none() {
        return;
    }
    let line = Line::of(entered);
    // reported before, with the rest of a tube
    if line.is_none() {
        out.show(const { &[GAUGE.id()] });
        out.about(cautions::BORE_NOMINAL, GAUGE);
    }
    let flow = line.and_then(|line| {
        let fluid = known_fluid(entered).filter(|_| entered.get(VISCOSITY_FROM) != Some(ViscosityFrom::ZeroShear))?;
        Some((line.first, fluid, line.flow(entered, fluid)?))
    });
    if let Some((_, _, flow)) = flow {
        out.item(items::NEEDLE_FLOW, flow);
    }
    for (row, needle) in NEEDLES.iter().enumerate() {
        a_needle(row, needle, flow, out);
    }
}

#[inline(never)]
fn a_needle(row: usize, needle: &Needle, through: Option<(Tube, Fluid, f64)>, out: &mut Out) {
    let mut tell = |what, value| out.in_row(what, value, row);
    tell(items::NEEDLE_GAUGE, f64::from(needle.gauge));
    tell(items::NEEDLE_OUTER, needle.outer);
    tell(items::NEEDLE_BORE, needle.bore);
    tell(items::NEEDLE_LEAST, needle.least);
    tell(items::NEEDLE_THIN, needle.least_thin);
    let Some((tube, fluid, flow)) = through else { return };
    for (what, mm) in [(items::NEEDLE_DROP, needle.bore), (items::NEEDLE_DROP_LEAST, needle.least)] {
        if let Ok(bore) = Bore::from_mm(mm) {
            let w = working_at(Tube { bore, ..tube }, fluid, flow);
            // what is not laminar loses more, and nobody would push it through
            if w.reynolds <= LAMINAR.get() && w.drop < TOO_MUCH {
                tell(what, w.drop);
            }
        }
    }
}
