//! The column at the eye, and how far the pump can pull here.

pub mod choices;
mod known;
pub mod limits;
mod rules;
pub mod table;
mod vacuum;

pub use known::fluid_density;
pub(crate) use known::{known_ceiling, reached_at_tip, still, temperature};
pub(crate) use rules::RULES;

use crate::caution::Caution;
use crate::entered::Entered;
use crate::item::Item;
use crate::parts::general::show;
use crate::sink::Sink;
use choices::FluidFrom;
use known::{column_working, known_air, levels, set, set_working};
use limits::HEAD_HIGH;
use ocellus_core::fluids::ceiling::Air;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::fluids::{air, ceiling, column as formulas, density};
use ocellus_core::quantity::Density;
use table::entries::*;
use table::{cautions, items};

/// How far apart the open levels of the table lie, and how wrong the level of the eye is in it, cm.
const BETWEEN: f64 = 15.0;
const ASTRAY: f64 = 5.0;

#[inline(never)]
pub(crate) fn plan(entered: &Entered, sink: &mut dyn Sink) {
    let Some(density) = fluid_density(entered) else { return };
    column(entered, density, sink);
    wanted(entered, density, sink);
    bottles(entered, density, sink);
    vacuum::plan(entered, density, sink);
}

#[inline(never)]
fn column(entered: &Entered, density: Density, sink: &mut dyn Sink) {
    let pressure = if let Some(w) = column_working(entered) {
        show(entered, sink, &[OPEN_LEVEL.id(), EYE_LEVEL.id(), GAS_PRESSURE.id()]);
        fluid(entered, density, sink);
        w.pressure
    } else if let Some(w) = set_working(entered) {
        show(entered, sink, &[SET_PRESSURE.id(), ASSUMED_LEVEL.id(), EYE_LEVEL.id()]);
        fluid(entered, density, sink);
        if w.height != 0.0 {
            sink.caution(Caution::about(cautions::LEVEL_ASSUMED, ASSUMED_LEVEL));
        }
        sink.item(Item::one(items::SET_COLUMN, w.column));
        w.pressure
    } else {
        return;
    };
    sink.item(Item::one(items::HEAD, pressure));
    sink.item(Item::one(items::HEAD_KPA, convert(pressure, Unit::MmHg, Unit::KPa)));
    sink.item(Item::one(items::HEAD_CMH2O, convert(pressure, Unit::MmHg, Unit::CmH2O)));
    sink.item(Item::one(items::PER_CM, formulas::of_column(1.0, density)));
    if levels(entered).is_some() {
        sink.caution(Caution::about(cautions::HEAD_STATIC, OPEN_LEVEL));
    }
    if pressure > HEAD_HIGH.get() {
        sink.caution(Caution::general(cautions::HEAD_HIGH));
    }
    if pressure < 0.0 {
        sink.caution(Caution::about(cautions::HEAD_NEGATIVE, EYE_LEVEL));
    }
}

/// The density that is used.
pub(crate) fn fluid(entered: &Entered, density: Density, sink: &mut dyn Sink) {
    if entered.has(DENSITY_FROM.id()) {
        sink.entry(DENSITY_FROM.id());
    }
    match entered.get(DENSITY_FROM) {
        Some(FluidFrom::Water) => {
            show(entered, sink, &[TEMPERATURE.id()]);
            sink.item(Item::one(items::DENSITY_USED, density.kg_m3()));
        }
        _ => show(entered, sink, &[DENSITY.id()]),
    }
}

/// Other bottles, and an eye that lies elsewhere than was entered.
#[inline(never)]
fn bottles(entered: &Entered, density: Density, sink: &mut dyn Sink) {
    let (Some((open, _)), Some(pressure)) = (levels(entered), still(entered)) else { return };
    let per_cm = formulas::of_column(1.0, density);
    let astray = ASTRAY * per_cm;
    for (row, above) in [-2.0 * BETWEEN, -BETWEEN, 0.0, BETWEEN, 2.0 * BETWEEN].into_iter().enumerate() {
        let there = pressure + above * per_cm;
        for (what, value) in [
            (items::BOTTLE, open.cm() + above),
            (items::BOTTLE_HEAD, there),
            (items::BOTTLE_HIGHER, there - astray),
            (items::BOTTLE_LOWER, there + astray),
        ] {
            sink.item(Item::one(what, value).in_row(row));
        }
    }
}

/// The level, or the setting, for a pressure that is wanted.
#[inline(never)]
fn wanted(entered: &Entered, density: Density, sink: &mut dyn Sink) {
    let (Some(wanted), Some(eye), Some(gas)) =
        (entered.get(WANTED_PRESSURE), entered.get(EYE_LEVEL), entered.get(GAS_PRESSURE))
    else {
        return;
    };
    show(entered, sink, &[WANTED_PRESSURE.id()]);
    // told before, with a column
    if still(entered).is_none() {
        show(entered, sink, &[EYE_LEVEL.id()]);
    }
    sink.item(Item::one(items::LEVEL_WANTED, formulas::level_for(wanted, gas, eye, density)));
    if let Some(assumed) = entered.get(ASSUMED_LEVEL) {
        if set(entered).is_none() {
            show(entered, sink, &[ASSUMED_LEVEL.id()]);
        }
        sink.item(Item::one(items::SETTING_WANTED, formulas::setting_for(wanted, assumed, eye, density)));
    }
    if wanted.mmhg() > HEAD_HIGH.get() {
        sink.caution(Caution::about(cautions::HEAD_HIGH, WANTED_PRESSURE));
    }
}

#[inline(never)]
pub(crate) fn explain(subject: u8, entered: &Entered, sink: &mut dyn Sink) -> bool {
    match subject {
        0 => explain_column(entered, sink),
        _ => explain_ceiling(entered, sink),
    }
}

fn explain_column(entered: &Entered, sink: &mut dyn Sink) -> bool {
    if entered.get(DENSITY_FROM) == Some(FluidFrom::Water)
        && let Some(temperature) = temperature(entered)
    {
        density::working(temperature).show(sink);
    }
    let column = column_working(entered).inspect(|w| w.show(sink)).is_some();
    set_working(entered).inspect(|w| w.show(sink)).is_some() || column
}

fn explain_ceiling(entered: &Entered, sink: &mut dyn Sink) -> bool {
    let Some((known, temperature)) = known_air(entered).zip(temperature(entered)) else { return false };
    if let Air::Station(station) = known {
        air::height(station).show(sink);
    }
    ceiling::show_all(known, temperature, sink);
    true
}
