//! The chamber under flow, and what holds a piece at the tip: an illustration from the numbers entered.

use super::{entries, pressure};
use crate::bench::Bench;
use crate::caution::{Caution, Code};
use crate::choice::PumpKind;
use crate::constant::flow::READINGS_APART;
use crate::error::Error;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::pressure::chamber::{self, Pump, Supply};
use crate::pressure::hold;
use crate::pressure::readings::{self, Reading};
use crate::quantity::{Aspiration, Resistance, TipBore};
use crate::sink::Sink;

const READINGS: [Field; 4] =
    [Field::ReadingFlow1, Field::ReadingPressure1, Field::ReadingFlow2, Field::ReadingPressure2];

#[inline(never)]
pub(super) fn plan(bench: &Bench, sink: &mut dyn Sink) {
    sink.part(Part::Chamber);
    read(bench, sink);
    flow(bench, sink);
    held(bench, sink);
}

/// Both readings, where they were entered.
pub(crate) fn known_readings(bench: &Bench) -> Option<Result<readings::Working, Error>> {
    let reading = |flow, pressure| Some(Reading { flow: bench.get(flow)?, pressure: bench.get(pressure)? });
    let [flow1, pressure1, flow2, pressure2] = READINGS;
    Some(readings::working(reading(flow1, pressure1)?, reading(flow2, pressure2)?))
}

#[inline(never)]
fn read(bench: &Bench, sink: &mut dyn Sink) {
    let Some(readings) = known_readings(bench) else { return };
    entries(bench.draft(), sink, &READINGS);
    sink.caution(Caution::general(Code::Illustration));
    let Ok(w) = readings else { return sink.caution(Caution::about(Code::ReadingsRise, Field::ReadingPressure2)) };
    sink.item(Item::one(What::FoundResistance, w.resistance));
    sink.item(Item::one(What::FoundStill, w.still));
    let Some(head) = pressure::still(bench) else { return };
    sink.item(Item::one(What::FoundLess, w.still - head));
    if (w.still - head).abs() > READINGS_APART.get() {
        sink.caution(Caution::about(Code::ReadingsApart, Field::ReadingPressure1));
    }
}

/// What stands around the chamber, where column and infusion line are known.
#[inline(never)]
pub(crate) fn known_supply(bench: &Bench) -> Option<Supply> {
    let entered = || bench.get(Field::InfusionResistance).map(Resistance::mmhg_min_ml);
    let infusion = entered().or_else(|| Some(known_readings(bench)?.ok()?.resistance))?;
    let leak: Aspiration = bench.get(Field::Leak)?;
    Some(Supply { head: pressure::still(bench)?, infusion, leak: leak.ml_min() })
}

/// What the pump is set to: a flow, or a vacuum, which is the nucleus's.
pub(crate) fn known_pump(bench: &Bench) -> Option<Pump> {
    match bench.pump_kind()? {
        PumpKind::Flow => bench.get(Field::Aspiration).map(|flow: Aspiration| Pump::Flow(flow.ml_min())),
        PumpKind::Vacuum => pressure::reached_at_tip(bench, Field::VacuumNucleus).map(Pump::Vacuum),
    }
}

/// The resistance of tip and tubing.
pub(crate) fn known_aspiration(bench: &Bench) -> Option<f64> {
    bench.get(Field::AspirationResistance).map(Resistance::mmhg_min_ml)
}

/// The entry that a pump of this kind is set by.
pub(crate) fn set_by(pump: Pump) -> Field {
    match pump {
        Pump::Flow(_) => Field::Aspiration,
        Pump::Vacuum(_) => Field::VacuumNucleus,
    }
}

#[inline(never)]
fn flow(bench: &Bench, sink: &mut dyn Sink) {
    // a column that pulls is told of before
    let Some(supply) = known_supply(bench).filter(|supply| supply.head > 0.0) else { return };
    let Some(pump) = known_pump(bench) else { return };
    let aspiration = known_aspiration(bench);
    if matches!(pump, Pump::Vacuum(_)) && aspiration.is_none() {
        return;
    }
    entries(
        bench.draft(),
        sink,
        &[Field::PumpKind, set_by(pump), Field::InfusionResistance, Field::AspirationResistance],
    );
    entries(bench.draft(), sink, &[Field::Leak]);
    if !bench.draft().has(Field::Leak) {
        sink.caution(Caution::about(Code::LeakUnknown, Field::Leak));
    }
    sink.caution(Caution::general(Code::Illustration));
    let Ok(w) = chamber::working(supply, pump, aspiration) else {
        return sink.caution(Caution::about(Code::LeakTooLarge, Field::Leak));
    };
    let limit = pressure::reached_at_tip(bench, Field::VacuumNucleus).or_else(|| pressure::ceiling(bench));
    let follows = aspiration.map(|resistance| resistance * w.aspiration - w.pressure);
    match (pump, limit.filter(|limit| follows.is_some_and(|follows| follows > *limit))) {
        // it would need more vacuum than is set, or than there is
        (Pump::Flow(_), Some(limit)) => {
            sink.caution(Caution::about(Code::FlowNotReached, Field::Aspiration));
            if let Ok(w) = chamber::working(supply, Pump::Vacuum(limit), aspiration) {
                steady(&w, true, Some(limit), Field::Aspiration, sink);
            }
        }
        (Pump::Flow(_), None) => steady(&w, false, follows, Field::Aspiration, sink),
        (Pump::Vacuum(_), _) => steady(&w, true, None, Field::VacuumNucleus, sink),
    }
}

/// The steady chamber, and what follows of what is not set; nothing but that where no pressure is left in it.
#[inline(never)]
fn steady(w: &chamber::Working, flow_follows: bool, vacuum: Option<f64>, about: Field, sink: &mut dyn Sink) {
    sink.item(Item::one(What::LeakRate, w.conductance));
    sink.item(Item::one(What::ChamberStill, w.still));
    if w.pressure <= 0.0 {
        return sink.caution(Caution::about(Code::ChamberCollapsed, about));
    }
    sink.item(Item::one(What::Chamber, w.pressure));
    if flow_follows {
        sink.item(Item::one(What::ChamberFlow, w.aspiration));
    }
    if let Some(vacuum) = vacuum {
        sink.item(Item::one(What::VacuumFollows, vacuum));
    }
    sink.item(Item::one(What::ChamberLeak, w.leaking));
}

/// What holds a piece that closes the tip, with as much of the nucleus's vacuum as there is at it.
#[inline(never)]
fn held(bench: &Bench, sink: &mut dyn Sink) {
    let Some(tip) = bench.get::<TipBore>(Field::TipBore) else { return };
    let Some(vacuum) = pressure::reached_at_tip(bench, Field::VacuumNucleus) else { return };
    entries(bench.draft(), sink, &[Field::TipBore, Field::VacuumNucleus]);
    sink.item(Item::one(What::HoldBare, hold::force(vacuum, 0.0, tip)));
    if let Some(head) = pressure::still(bench) {
        sink.item(Item::one(What::Hold, hold::force(vacuum, head, tip)));
    }
}
