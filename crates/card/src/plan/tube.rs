//! Tubes, needles, openings: what is lost in them, and what they let through.

use super::{entries, pressure};
use crate::bench::Bench;
use crate::caution::{Caution, Code};
use crate::choice::ViscosityFrom;
use crate::constant::flow::LAMINAR;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::pressure::needle::{self, NEEDLES, Needle};
use crate::pressure::tube::{self, Fluid, Tube};
use crate::pressure::unit::{Unit, convert};
use crate::pressure::{opening, plunger, viscosity};
use crate::quantity::{Bore, Drive, Friction, Gauge, Opening, SyringeBore, TubeFlow, Viscosity, Volume};
use crate::sink::Sink;

/// What is beyond any bench: seconds or mmHg that nobody would read.
const TOO_MUCH: f64 = 1e7;

#[inline(never)]
pub(super) fn plan(bench: &Bench, sink: &mut dyn Sink) {
    sink.part(Part::Tube);
    through(bench, sink);
    open(bench, sink);
    needles(bench, sink);
}

/// The bore entered, or the nominal one of the gauge.
fn bore(bench: &Bench) -> Option<Bore> {
    bench.get(Field::Bore).or_else(|| Bore::from_mm(needle::of(bench.get(Field::Gauge)?)?.bore).ok())
}

/// The tube, and the one in series with it where there is one.
pub(crate) fn known_tubes(bench: &Bench) -> Option<(Tube, Option<Tube>)> {
    let one = crate::quantity::Tubes::new(1.0).ok()?;
    let second = bench.get(Field::Bore2).zip(bench.get(Field::TubeLength2));
    let second = second.map(|(bore, length)| Tube { bore, length, side_by_side: one });
    let side_by_side = bench.get(Field::SideBySide)?;
    Some((Tube { bore: bore(bench)?, length: bench.get(Field::TubeLength)?, side_by_side }, second))
}

/// The fluid: water at its temperature, or with a viscosity of its own.
#[inline(never)]
pub(crate) fn known_fluid(bench: &Bench) -> Option<Fluid> {
    let viscosity = match bench.viscosity_from()? {
        ViscosityFrom::Water => Viscosity::from_mpa_s(viscosity::working(bench.temperature).viscosity).ok(),
        ViscosityFrom::AtShear | ViscosityFrom::ZeroShear => bench.get(Field::Viscosity),
    };
    Some(Fluid { viscosity: viscosity?, density: bench.density()? })
}

/// The flow through the tubes: entered, or what the pressure drives, mL/min.
#[inline(never)]
pub(crate) fn known_flow(bench: &Bench, tubes: &[Tube], fluid: Fluid) -> Option<f64> {
    let driven = || bench.get::<Drive>(Field::Drive).map(|drive| tube::driven(tubes, fluid, drive));
    bench.get(Field::TubeFlow).map(TubeFlow::ml_min).or_else(driven)
}

/// Both tubes as a list.
pub(crate) fn listed((first, second): (Tube, Option<Tube>)) -> ([Tube; 2], usize) {
    ([first, second.unwrap_or(first)], 1 + usize::from(second.is_some()))
}

#[inline(never)]
fn through(bench: &Bench, sink: &mut dyn Sink) {
    let Some(tubes) = known_tubes(bench) else { return };
    let Some(fluid) = known_fluid(bench) else { return };
    let (list, count) = listed(tubes);
    let list = list.get(..count).unwrap_or(&[]);
    told(bench, fluid, sink);
    // what is thick at rest is thin in a needle, and drives no flow that could be reckoned
    let at_rest = bench.viscosity_from() == Some(ViscosityFrom::ZeroShear);
    let flow = if at_rest { bench.get(Field::TubeFlow).map(TubeFlow::ml_min) } else { known_flow(bench, list, fluid) };
    if at_rest {
        sink.caution(Caution::about(Code::ZeroShear, Field::ViscosityFrom));
    }
    let Some(flow) = flow else { return };
    if !bench.draft().has(Field::TubeFlow) {
        sink.item(Item::one(What::FlowDriven, flow));
    }
    let w = tube::working_at(tubes.0, fluid, flow);
    sink.item(Item::one(What::Velocity, w.velocity));
    sink.item(Item::one(What::WallShear, w.shear));
    if !at_rest {
        lost(bench, (&w, tubes.1), fluid, flow, sink);
    }
    if let Some(volume) = bench.get::<Volume>(Field::Volume) {
        entries(bench.draft(), sink, &[Field::Volume]);
        let seconds = volume.ml() / flow * 60.0;
        if seconds < TOO_MUCH {
            sink.item(Item::one(What::VolumeTime, seconds));
        }
    }
}

/// What was entered of the tubes and of the fluid.
#[inline(never)]
fn told(bench: &Bench, fluid: Fluid, sink: &mut dyn Sink) {
    let draft = bench.draft();
    entries(draft, sink, &[Field::Gauge, Field::Bore]);
    if !draft.has(Field::Bore) {
        bore(bench).into_iter().for_each(|bore| sink.item(Item::one(What::BoreUsed, bore.mm())));
        sink.caution(Caution::about(Code::BoreNominal, Field::Gauge));
    } else if draft.has(Field::Gauge) {
        sink.caution(Caution::about(Code::BoreEntered, Field::Bore));
    }
    if draft.has(Field::Gauge) || draft.has(Field::SyringeBore) {
        sink.caution(Caution::general(Code::Jet));
    }
    entries(
        draft,
        sink,
        &[Field::TubeLength, Field::SideBySide, Field::Bore2, Field::TubeLength2, Field::ViscosityFrom],
    );
    match bench.viscosity_from() {
        Some(ViscosityFrom::Water) => {
            entries(draft, sink, &[Field::Temperature]);
            sink.item(Item::one(What::ViscosityUsed, fluid.viscosity.mpa_s()));
        }
        _ => entries(draft, sink, &[Field::Viscosity]),
    }
    pressure::fluid(bench, fluid.density, sink);
    entries(draft, sink, &[Field::TubeFlow, Field::Drive]);
}

/// What is lost in all of it, and what a thumb must push.
#[inline(never)]
fn lost(bench: &Bench, tubes: (&tube::Working, Option<Tube>), fluid: Fluid, flow: f64, sink: &mut dyn Sink) {
    let (w, second) = tubes;
    sink.item(Item::one(What::Reynolds, w.reynolds));
    sink.item(Item::one(What::DropLaminar, w.laminar));
    sink.item(Item::one(What::DropKinetic, w.kinetic));
    let second = second.map(|tube| tube::working_at(tube, fluid, flow));
    if let Some(second) = &second {
        sink.item(Item::one(What::DropSecond, second.drop));
    }
    let drop = w.drop + second.as_ref().map_or(0.0, |second| second.drop);
    sink.item(Item::one(What::Drop, drop));
    sink.item(Item::one(What::DropKpa, convert(drop, Unit::MmHg, Unit::KPa)));
    let first = (Some(w), Field::Bore, Field::TubeLength);
    for (w, bore, length) in [first, (second.as_ref(), Field::Bore2, Field::TubeLength2)] {
        let Some(w) = w else { continue };
        if w.reynolds > LAMINAR.get() {
            sink.caution(Caution::about(Code::Turbulent, bore));
        }
        if w.entrance >= w.length / 2.0 {
            sink.caution(Caution::about(Code::TubeShort, length));
        }
    }
    if let (Some(syringe), Some(friction)) =
        (bench.get::<SyringeBore>(Field::SyringeBore), bench.get::<Friction>(Field::Friction))
    {
        entries(bench.draft(), sink, &[Field::SyringeBore, Field::Friction]);
        let w = plunger::working(drop, syringe, friction);
        sink.item(Item::one(What::PlungerFluid, w.fluid));
        sink.item(Item::one(What::Plunger, w.force));
    }
}

/// Every gauge, and what it would lose with this length and flow: what another needle changes.
#[inline(never)]
fn needles(bench: &Bench, sink: &mut dyn Sink) {
    if bench.get::<Gauge>(Field::Gauge).is_none() {
        return;
    }
    let tubes = known_tubes(bench);
    // told before, with the rest of a tube
    if tubes.is_none() {
        entries(bench.draft(), sink, &[Field::Gauge]);
        sink.caution(Caution::about(Code::BoreNominal, Field::Gauge));
    }
    let flow = tubes.and_then(|tubes| {
        let fluid = known_fluid(bench).filter(|_| bench.viscosity_from() != Some(ViscosityFrom::ZeroShear))?;
        let (list, count) = listed(tubes);
        Some((tubes.0, fluid, known_flow(bench, list.get(..count)?, fluid)?))
    });
    if let Some((_, _, flow)) = flow {
        sink.item(Item::one(What::NeedleFlow, flow));
    }
    for (row, needle) in NEEDLES.iter().enumerate() {
        a_needle(row, needle, flow, sink);
    }
}

#[inline(never)]
fn a_needle(row: usize, needle: &Needle, through: Option<(Tube, Fluid, f64)>, sink: &mut dyn Sink) {
    let mut tell = |what, value| sink.item(Item::one(what, value).in_row(row));
    tell(What::NeedleGauge, f64::from(needle.gauge));
    tell(What::NeedleOuter, needle.outer);
    tell(What::NeedleBore, needle.bore);
    tell(What::NeedleLeast, needle.least);
    tell(What::NeedleThin, needle.least_thin);
    let Some((tube, fluid, flow)) = through else { return };
    for (what, mm) in [(What::NeedleDrop, needle.bore), (What::NeedleDropLeast, needle.least)] {
        if let Ok(bore) = Bore::from_mm(mm) {
            let w = tube::working_at(Tube { bore, ..tube }, fluid, flow);
            // what is not laminar loses more, and nobody would push it through
            if w.reynolds <= LAMINAR.get() && w.drop < TOO_MUCH {
                tell(what, w.drop);
            }
        }
    }
}

/// A sharp opening, at the pressure entered or at that of the column.
#[inline(never)]
fn open(bench: &Bench, sink: &mut dyn Sink) {
    if let Some((w, _)) = known_opening(bench) {
        entries(bench.draft(), sink, &[Field::Opening, Field::Discharge]);
        entries(bench.draft(), sink, &[Field::Drive]);
        sink.item(Item::one(What::OpeningFlow, w.flow));
    }
}

/// The opening, and the pressure across it.
pub(crate) fn known_opening(bench: &Bench) -> Option<(opening::Working, f64)> {
    let opening: Opening = bench.get(Field::Opening)?;
    let entered = bench.get(Field::Drive).map(Drive::mmhg);
    let across = entered.or_else(|| pressure::still(bench)).filter(|across| *across > 0.0)?;
    Some((opening::working_at(opening, bench.get(Field::Discharge)?, across, bench.density()?), across))
}
