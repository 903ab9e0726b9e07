//! Tubes, needles, openings: what is lost in them, and what they let through.

pub mod choices;
mod known;
pub mod limits;
mod needles;
mod rules;
pub mod table;

pub(crate) use rules::RULES;

use crate::entered::Entered;
use crate::out::Out;
use crate::parts::pressure::table::entries::TEMPERATURE;
use crate::parts::pressure::{self, temperature};
use choices::ViscosityFrom;
use known::{Line, known_bore, known_flow, known_fluid, known_opening};
use limits::{LAMINAR, TOO_MUCH};
use ocellus_core::fluids::tube::{Fluid, Working, working_at};
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::fluids::{plunger, viscosity};
use table::entries::*;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(entered: &Entered, out: &mut Out) {
    through(entered, out);
    open(entered, out);
    needles::plan(entered, out);
}

/// What is thick at rest is thin in a needle, and drives no flow that could be computed.
fn is_at_rest(entered: &Entered) -> bool {
    entered.get(VISCOSITY_FROM) == Some(ViscosityFrom::ZeroShear)
}

#[inline(never)]
fn through(entered: &Entered, out: &mut Out) {
    let Some(line) = Line::of(entered) else { return };
    let Some(fluid) = known_fluid(entered) else { return };
    tell(entered, fluid, out);
    let at_rest = is_at_rest(entered);
    let flow = if at_rest { known_flow(entered) } else { line.flow(entered, fluid) };
    if at_rest {
        out.about(cautions::ZERO_SHEAR, VISCOSITY_FROM);
    }
    let Some(flow) = flow else { return };
    if !entered.is_made(TUBE_FLOW) {
        out.item(items::FLOW_DRIVEN, flow);
    }
    let w = working_at(line.first, fluid, flow);
    out.item(items::VELOCITY, w.velocity);
    out.item(items::WALL_SHEAR, w.shear);
    if !at_rest {
        lost(entered, &w, line.second.map(|tube| working_at(tube, fluid, flow)), out);
    }
    if let Some(volume) = entered.get(VOLUME) {
        out.show(const { &[VOLUME.id()] });
        let seconds = volume.ml() / flow * 60.0;
        if seconds < TOO_MUCH {
            out.item(items::VOLUME_TIME, seconds);
        }
    }
}

/// What was entered of the tubes and of the fluid.
#[inline(never)]
fn tell(entered: &Entered, fluid: Fluid, out: &mut Out) {
    out.show(const { &[GAUGE.id(), BORE.id()] });
    if !entered.is_made(BORE) {
        known_bore(entered).into_iter().for_each(|bore| out.item(items::BORE_USED, bore.mm()));
        out.about(cautions::BORE_NOMINAL, GAUGE);
    } else if entered.is_made(GAUGE) {
        out.about(cautions::BORE_ENTERED, BORE);
    }
    if entered.is_made(GAUGE) || entered.is_made(SYRINGE_BORE) {
        out.caution(cautions::JET);
    }
    let of = [TUBE_LENGTH.id(), SIDE_BY_SIDE.id(), BORE_2.id(), TUBE_LENGTH_2.id(), VISCOSITY_FROM.id()];
    out.show(&of);
    match entered.get(VISCOSITY_FROM) {
        Some(ViscosityFrom::Water) => {
            out.show(const { &[TEMPERATURE.id()] });
            out.item(items::VISCOSITY_USED, fluid.viscosity.mpa_s());
        }
        _ => out.show(const { &[VISCOSITY.id()] }),
    }
    pressure::fluid(entered, fluid.density, out);
    out.show(const { &[TUBE_FLOW.id(), DRIVE.id()] });
}

/// What is lost in all of it, and what a thumb must push.
#[inline(never)]
fn lost(entered: &Entered, w: &Working, second: Option<Working>, out: &mut Out) {
    out.item(items::REYNOLDS, w.reynolds);
    out.item(items::DROP_LAMINAR, w.laminar);
    out.item(items::DROP_KINETIC, w.kinetic);
    if let Some(second) = &second {
        out.item(items::DROP_SECOND, second.drop);
    }
    let drop = w.drop + second.as_ref().map_or(0.0, |second| second.drop);
    out.item(items::DROP, drop);
    out.item(items::DROP_KPA, convert(drop, Unit::MmHg, Unit::KPa));
    let first = (Some(w), BORE, TUBE_LENGTH);
    for (w, bore, length) in [first, (second.as_ref(), BORE_2, TUBE_LENGTH_2)] {
        let Some(w) = w else { continue };
        if w.reynolds > LAMINAR.get() {
            out.about(cautions::TURBULENT, bore);
        }
        if w.entrance >= w.length / 2.0 {
            out.about(cautions::TUBE_SHORT, length);
        }
    }
    if let (Some(syringe), Some(friction)) = (entered.get(SYRINGE_BORE), entered.get(FRICTION)) {
        out.show(const { &[SYRINGE_BORE.id(), FRICTION.id()] });
        let w = plunger::working(drop, syringe, friction);
        out.item(items::PLUNGER_FLUID, w.fluid);
        out.item(items::PLUNGER, w.force);
    }
}

/// A sharp opening, at the pressure entered or at that of the column.
#[inline(never)]
fn open(entered: &Entered, out: &mut Out) {
    if let Some(w) = known_opening(entered) {
        out.show(const { &[OPENING.id(), DISCHARGE.id(), DRIVE.id()] });
        out.item(items::OPENING_FLOW, w.flow);
    }
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, entered: &Entered, out: &mut Out) -> bool {
    let opened = known_opening(entered).inspect(|w| w.show(out)).is_some();
    let Some(line) = Line::of(entered) else { return opened };
    let Some(fluid) = known_fluid(entered) else { return opened };
    if is_at_rest(entered) {
        out.about(cautions::ZERO_SHEAR, VISCOSITY_FROM);
        return opened;
    }
    if let (Some(ViscosityFrom::Water), Some(temperature)) = (entered.get(VISCOSITY_FROM), temperature(entered)) {
        viscosity::working(temperature).show(out);
    }
    let Some(flow) = line.flow(entered, fluid) else { return opened };
    let mut drop = 0.0;
    for tube in line.tubes() {
        let w = working_at(tube, fluid, flow);
        w.show(out);
        drop += w.drop;
    }
    if let (Some(syringe), Some(friction)) = (entered.get(SYRINGE_BORE), entered.get(FRICTION)) {
        plunger::working(drop, syringe, friction).show(out);
    }
    true
}
