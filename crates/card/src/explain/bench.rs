//! How the numbers of a set-up came about.

use crate::bench::Bench;
use crate::caution::{Caution, Code};
use crate::choice::{FluidFrom, ViscosityFrom};
use crate::field::Field;
use crate::plan;
use crate::pressure::ceiling::{self, Air};
use crate::pressure::surge::Ended;
use crate::pressure::{air, chamber, density, plunger, surge, tube, viscosity};
use crate::quantity::{Friction, SyringeBore};
use crate::sink::Sink;

pub(super) fn explain_head(bench: &Bench, sink: &mut dyn Sink) -> bool {
    if bench.get(Field::DensityFrom) == Some(FluidFrom::Water) {
        density::working(bench.temperature).show(sink);
    }
    let column = plan::column_working(bench).inspect(|w| w.show(sink)).is_some();
    plan::set_working(bench).inspect(|w| w.show(sink)).is_some() || column
}

pub(super) fn explain_ceiling(bench: &Bench, sink: &mut dyn Sink) -> bool {
    let Some(known) = plan::known_air(bench) else { return false };
    if let Air::Station(station) = known {
        air::height(station).show(sink);
    }
    ceiling::show_all(known, bench.temperature, sink);
    true
}

pub(super) fn explain_chamber(bench: &Bench, sink: &mut dyn Sink) -> bool {
    sink.caution(Caution::general(Code::Illustration));
    let read = match plan::known_readings(bench) {
        Some(Ok(w)) => {
            w.show(sink);
            true
        }
        Some(Err(_)) => {
            sink.caution(Caution::about(Code::ReadingsRise, Field::ReadingPressure2));
            false
        }
        None => false,
    };
    let (Some(supply), Some(pump)) = (plan::known_supply(bench), plan::known_pump(bench)) else { return read };
    left(supply, sink);
    let Ok(w) = chamber::working(supply, pump, plan::known_aspiration(bench)) else { return read };
    if w.pressure <= 0.0 {
        sink.caution(Caution::general(Code::ChamberCollapsed));
    }
    w.show(sink);
    true
}

/// Whether column and leak leave a pressure; where they do not, that is told.
fn left(supply: chamber::Supply, sink: &mut dyn Sink) -> bool {
    let left = chamber::conductance(supply).is_ok();
    if supply.head <= 0.0 {
        sink.caution(Caution::about(Code::HeadNegative, Field::EyeLevel));
    } else if !left {
        sink.caution(Caution::about(Code::LeakTooLarge, Field::Leak));
    }
    left
}

pub(super) fn explain_surge(bench: &Bench, sink: &mut dyn Sink) -> bool {
    sink.caution(Caution::general(Code::Illustration));
    let Some(setup) = plan::surge_setup(bench) else { return false };
    if !left(setup.supply, sink) {
        return false;
    }
    let Some(step) = plan::surge_step(bench, &setup) else {
        sink.caution(Caution::about(Code::StepLong, Field::SurgeStep));
        return false;
    };
    // of a run that did not come to rest the least and the last are not what they are called
    match surge::run(&setup, step) {
        Some((w, Ended::Recovered)) => {
            w.show(sink);
            true
        }
        Some((_, Ended::Collapsed)) => {
            sink.caution(Caution::general(Code::ChamberCollapsed));
            false
        }
        Some((_, Ended::Open)) => {
            sink.caution(Caution::general(Code::SurgeOpen));
            false
        }
        None => false,
    }
}

pub(super) fn explain_tube(bench: &Bench, sink: &mut dyn Sink) -> bool {
    let opened = plan::known_opening(bench).inspect(|(w, _)| w.show(sink)).is_some();
    let Some(tubes) = plan::known_tubes(bench) else { return opened };
    let Some(fluid) = plan::known_fluid(bench) else { return opened };
    match bench.viscosity_from() {
        Some(ViscosityFrom::Water) => viscosity::working(bench.temperature).show(sink),
        Some(ViscosityFrom::ZeroShear) => {
            sink.caution(Caution::about(Code::ZeroShear, Field::ViscosityFrom));
            return opened;
        }
        _ => {}
    }
    let (list, count) = plan::listed_tubes(tubes);
    let list = list.get(..count).unwrap_or(&[]);
    let Some(flow) = plan::known_flow(bench, list, fluid) else { return opened };
    let mut drop = 0.0;
    for tube in list {
        let w = tube::working_at(*tube, fluid, flow);
        w.show(sink);
        drop += w.drop;
    }
    if let (Some(syringe), Some(friction)) =
        (bench.get::<SyringeBore>(Field::SyringeBore), bench.get::<Friction>(Field::Friction))
    {
        plunger::working(drop, syringe, friction).show(sink);
    }
    true
}
