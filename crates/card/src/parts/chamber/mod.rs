//! The chamber under flow, and what holds a piece at the tip: an illustration from the numbers entered.

pub mod choices;
mod known;
pub mod limits;
pub mod table;

pub(crate) use known::{known_aspiration, known_pump, known_supply};

use crate::entered::Entered;
use crate::id::EntryId;
use crate::out::Out;
use crate::parts::pressure::table::cautions::HEAD_NEGATIVE;
use crate::parts::pressure::table::entries::{EYE_LEVEL, VACUUM_NUCLEUS};
use crate::parts::pressure::{known_ceiling, reached_at_tip, still};
use crate::rule::Rule;
use known::known_readings;
use limits::READINGS_APART;
use ocellus_core::fluids::chamber::{self, Pump, Supply};
use ocellus_core::fluids::hold;
use table::entries::*;
use table::{cautions, items};

const READINGS: [EntryId; 4] =
    [READING_FLOW_1.id(), READING_PRESSURE_1.id(), READING_FLOW_2.id(), READING_PRESSURE_2.id()];

pub(crate) const RULES: &[Rule] =
    &[Rule::Together(&READINGS, &READINGS), Rule::OneOf(READING_FLOW_1.id(), INFUSION_RESISTANCE.id())];

#[inline(never)]
pub(crate) fn plan(entered: &Entered, out: &mut Out) {
    read(entered, out);
    flow(entered, out);
    held(entered, out);
}

#[inline(never)]
fn read(entered: &Entered, out: &mut Out) {
    let Some(readings) = known_readings(entered) else { return };
    out.show(&READINGS);
    out.caution(cautions::ILLUSTRATION);
    let Ok(w) = readings else { return out.about(cautions::READINGS_RISE, READING_PRESSURE_2) };
    out.item(items::FOUND_RESISTANCE, w.resistance);
    out.item(items::FOUND_STILL, w.still);
    let Some(column) = still(entered) else { return };
    out.item(items::FOUND_LESS, w.still - column);
    if (w.still - column).abs() > READINGS_APART.get() {
        out.about(cautions::READINGS_APART, READING_PRESSURE_1);
    }
}

/// The entry that a pump of this kind is set by.
fn set_by(pump: Pump) -> EntryId {
    match pump {
        Pump::Flow(_) => ASPIRATION.id(),
        Pump::Vacuum(_) => VACUUM_NUCLEUS.id(),
    }
}

#[inline(never)]
fn flow(entered: &Entered, out: &mut Out) {
    // a column that pulls is reported before
    let Some(supply) = known_supply(entered).filter(|supply| supply.head > 0.0) else { return };
    let Some(pump) = known_pump(entered) else { return };
    let aspiration = known_aspiration(entered);
    if matches!(pump, Pump::Vacuum(_)) && aspiration.is_none() {
        return;
    }
    let of = [PUMP_KIND.id(), set_by(pump), INFUSION_RESISTANCE.id(), ASPIRATION_RESISTANCE.id(), LEAK.id()];
    out.show(&of);
    if !entered.is_made(LEAK) {
        out.about(cautions::LEAK_UNKNOWN, LEAK);
    }
    out.caution(cautions::ILLUSTRATION);
    let Ok(w) = chamber::working(supply, pump, aspiration) else {
        return out.about(cautions::LEAK_TOO_LARGE, LEAK);
    };
    let limit = reached_at_tip(entered, VACUUM_NUCLEUS).or_else(|| known_ceiling(entered));
    let follows = aspiration.map(|resistance| resistance * w.aspiration - w.pressure);
    match (pump, limit.filter(|limit| follows.is_some_and(|follows| follows > *limit))) {
        // it would need more vacuum than is set, or than there is
        (Pump::Flow(_), Some(limit)) => {
            out.about(cautions::FLOW_NOT_REACHED, ASPIRATION);
            if let Ok(w) = chamber::working(supply, Pump::Vacuum(limit), aspiration) {
                steady(&w, true, Some(limit), ASPIRATION.id(), out);
            }
        }
        (Pump::Flow(_), None) => steady(&w, false, follows, ASPIRATION.id(), out),
        (Pump::Vacuum(_), _) => steady(&w, true, None, VACUUM_NUCLEUS.id(), out),
    }
}

/// The steady chamber, and what follows of what is not set; nothing but that where no pressure is left in it.
#[inline(never)]
fn steady(w: &chamber::Working, flow_follows: bool, vacuum: Option<f64>, about: EntryId, out: &mut Out) {
    out.item(items::LEAK_RATE, w.conductance);
    out.item(items::CHAMBER_STILL, w.still);
    if w.pressure <= 0.0 {
        return out.about(cautions::CHAMBER_COLLAPSED, about);
    }
    out.item(items::CHAMBER, w.pressure);
    if flow_follows {
        out.item(items::CHAMBER_FLOW, w.aspiration);
    }
    if let Some(vacuum) = vacuum {
        out.item(items::VACUUM_FOLLOWS, vacuum);
    }
    out.item(items::CHAMBER_LEAK, w.leaking);
}

/// What holds a piece that closes the tip, with as much of the nucleus's vacuum as there is at it.
#[inline(never)]
fn held(entered: &Entered, out: &mut Out) {
    let Some(tip) = entered.get(TIP_BORE) else { return };
    let Some(vacuum) = reached_at_tip(entered, VACUUM_NUCLEUS) else { return };
    out.show(const { &[TIP_BORE.id(), VACUUM_NUCLEUS.id()] });
    out.item(items::HOLD_BARE, hold::force(vacuum, 0.0, tip));
    if let Some(column) = still(entered) {
        out.item(items::HOLD, hold::force(vacuum, column, tip));
    }
}

/// Whether column and leak leave a pressure; where they do not, that is reported.
pub(crate) fn is_left(supply: Supply, out: &mut Out) -> bool {
    let left = chamber::conductance(supply).is_ok();
    if supply.head <= 0.0 {
        out.about(HEAD_NEGATIVE, EYE_LEVEL);
    } else if !left {
        out.about(cautions::LEAK_TOO_LARGE, LEAK);
    }
    left
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, entered: &Entered, out: &mut Out) -> bool {
    out.caution(cautions::ILLUSTRATION);
    let read = match known_readings(entered) {
        Some(Ok(w)) => {
            w.show(out);
            true
        }
        Some(Err(_)) => {
            out.about(cautions::READINGS_RISE, READING_PRESSURE_2);
            false
        }
        None => false,
    };
    let (Some(supply), Some(pump)) = (known_supply(entered), known_pump(entered)) else { return read };
    is_left(supply, out);
    let Ok(w) = chamber::working(supply, pump, known_aspiration(entered)) else { return read };
    if w.pressure <= 0.0 {
        out.caution(cautions::CHAMBER_COLLAPSED);
    }
    w.show(out);
    true
}
