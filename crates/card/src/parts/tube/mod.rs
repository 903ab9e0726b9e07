//! Tubes, needles, openings: what is lost in them, and what they let through.

pub mod choices;
mod known;
pub mod limits;
mod needles;
mod rules;
pub mod table;

pub(crate) use rules::RULES;

use crate::caution::Caution;
use crate::entered::Entered;
use crate::item::Item;
use crate::parts::general::show;
use crate::parts::pressure::table::entries::TEMPERATURE;
use crate::parts::pressure::{self, temperature};
use crate::sink::Sink;
use choices::ViscosityFrom;
use known::{Line, known_bore, known_flow, known_fluid, known_opening};
use limits::LAMINAR;
use ocellus_core::fluids::tube::{Fluid, Working, working_at};
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::fluids::{plunger, viscosity};
use table::entries::*;
use table::{cautions, items};

/// What is beyond any bench: seconds or mmHg that nobody would read.
const TOO_MUCH: f64 = 1e7;

#[inline(never)]
pub(crate) fn plan(entered: &Entered, sink: &mut dyn Sink) {
    through(entered, sink);
    open(entered, sink);
    needles::plan(entered, sink);
}

/// What is thick at rest is thin in a needle, and drives no flow that could be computed.
fn is_at_rest(entered: &Entered) -> bool {
    entered.get(VISCOSITY_FROM) == Some(ViscosityFrom::ZeroShear)
}

#[inline(never)]
fn through(entered: &Entered, sink: &mut dyn Sink) {
    let Some(line) = Line::of(entered) else { return };
    let Some(fluid) = known_fluid(entered) else { return };
    tell(entered, fluid, sink);
    let at_rest = is_at_rest(entered);
    let flow = if at_rest { known_flow(entered) } else { line.flow(entered, fluid) };
    if at_rest {
        sink.caution(Caution::about(cautions::ZERO_SHEAR, VISCOSITY_FROM));
    }
    let Some(flow) = flow else { return };
    if !entered.is_made(TUBE_FLOW) {
        sink.item(Item::one(items::FLOW_DRIVEN, flow));
    }
    let w = working_at(line.first, fluid, flow);
    sink.item(Item::one(items::VELOCITY, w.velocity));
    sink.item(Item::one(items::WALL_SHEAR, w.shear));
    if !at_rest {
        lost(entered, &w, line.second.map(|tube| working_at(tube, fluid, flow)), sink);
    }
    if let Some(volume) = entered.get(VOLUME) {
        show(entered, sink, &[VOLUME.id()]);
        let seconds = volume.ml() / flow * 60.0;
        if seconds < TOO_MUCH {
            sink.item(Item::one(items::VOLUME_TIME, seconds));
        }
    }
}

/// What was entered of the tubes and of the fluid.
#[inline(never)]
fn tell(entered: &Entered, fluid: Fluid, sink: &mut dyn Sink) {
    show(entered, sink, &[GAUGE.id(), BORE.id()]);
    if !entered.is_made(BORE) {
        known_bore(entered).into_iter().for_each(|bore| sink.item(Item::one(items::BORE_USED, bore.mm())));
        sink.caution(Caution::about(cautions::BORE_NOMINAL, GAUGE));
    } else if entered.is_made(GAUGE) {
        sink.caution(Caution::about(cautions::BORE_ENTERED, BORE));
    }
    if entered.is_made(GAUGE) || entered.is_made(SYRINGE_BORE) {
        sink.caution(Caution::general(cautions::JET));
    }
    let of = [TUBE_LENGTH.id(), SIDE_BY_SIDE.id(), BORE_2.id(), TUBE_LENGTH_2.id(), VISCOSITY_FROM.id()];
    show(entered, sink, &of);
    match entered.get(VISCOSITY_FROM) {
        Some(ViscosityFrom::Water) => {
            show(entered, sink, &[TEMPERATURE.id()]);
            sink.item(Item::one(items::VISCOSITY_USED, fluid.viscosity.mpa_s()));
        }
        _ => show(entered, sink, &[VISCOSITY.id()]),
    }
    pressure::fluid(entered, fluid.density, sink);
    show(entered, sink, &[TUBE_FLOW.id(), DRIVE.id()]);
}

/// What is lost in all of it, and what a thumb must push.
#[inline(never)]
fn lost(entered: &Entered, w: &Working, second: Option<Working>, sink: &mut dyn Sink) {
    sink.item(Item::one(items::REYNOLDS, w.reynolds));
    sink.item(Item::one(items::DROP_LAMINAR, w.laminar));
    sink.item(Item::one(items::DROP_KINETIC, w.kinetic));
    if let Some(second) = &second {
        sink.item(Item::one(items::DROP_SECOND, second.drop));
    }
    let drop = w.drop + second.as_ref().map_or(0.0, |second| second.drop);
    sink.item(Item::one(items::DROP, drop));
    sink.item(Item::one(items::DROP_KPA, convert(drop, Unit::MmHg, Unit::KPa)));
    let first = (Some(w), BORE, TUBE_LENGTH);
    for (w, bore, length) in [first, (second.as_ref(), BORE_2, TUBE_LENGTH_2)] {
        let Some(w) = w else { continue };
        if w.reynolds > LAMINAR.get() {
            sink.caution(Caution::about(cautions::TURBULENT, bore));
        }
        if w.entrance >= w.length / 2.0 {
            sink.caution(Caution::about(cautions::TUBE_SHORT, length));
        }
    }
    if let (Some(syringe), Some(friction)) = (entered.get(SYRINGE_BORE), entered.get(FRICTION)) {
        show(entered, sink, &[SYRINGE_BORE.id(), FRICTION.id()]);
        let w = plunger::working(drop, syringe, friction);
        sink.item(Item::one(items::PLUNGER_FLUID, w.fluid));
        sink.item(Item::one(items::PLUNGER, w.force));
    }
}

/// A sharp opening, at the pressure entered or at that of the column.
#[inline(never)]
fn open(entered: &Entered, sink: &mut dyn Sink) {
    if let Some(w) = known_opening(entered) {
        show(entered, sink, &[OPENING.id(), DISCHARGE.id(), DRIVE.id()]);
        sink.item(Item::one(items::OPENING_FLOW, w.flow));
    }
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, entered: &Entered, sink: &mut dyn Sink) -> bool {
    let opened = known_opening(entered).inspect(|w| w.show(sink)).is_some();
    let Some(line) = Line::of(entered) else { return opened };
    let Some(fluid) = known_fluid(entered) else { return opened };
    if is_at_rest(entered) {
        sink.caution(Caution::about(cautions::ZERO_SHEAR, VISCOSITY_FROM));
        return opened;
    }
    if let (Some(ViscosityFrom::Water), Some(temperature)) = (entered.get(VISCOSITY_FROM), temperature(entered)) {
        viscosity::working(temperature).show(sink);
    }
    let Some(flow) = line.flow(entered, fluid) else { return opened };
    let mut drop = 0.0;
    for tube in line.tubes() {
        let w = working_at(tube, fluid, flow);
        w.show(sink);
        drop += w.drop;
    }
    if let (Some(syringe), Some(friction)) = (entered.get(SYRINGE_BORE), entered.get(FRICTION)) {
        plunger::working(drop, syringe, friction).show(sink);
    }
    true
}
