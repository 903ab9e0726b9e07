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

use crate::entered::Entered;
use crate::out::Out;
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
pub(crate) fn plan(entered: &Entered, out: &mut Out) {
    let Some(density) = fluid_density(entered) else { return };
    column(entered, density, out);
    wanted(entered, density, out);
    bottles(entered, density, out);
    vacuum::plan(entered, density, out);
}

#[inline(never)]
fn column(entered: &Entered, density: Density, out: &mut Out) {
    let pressure = if let Some(w) = column_working(entered) {
        out.show(const { &[OPEN_LEVEL.id(), EYE_LEVEL.id(), GAS_PRESSURE.id()] });
        fluid(entered, density, out);
        w.pressure
    } else if let Some(w) = set_working(entered) {
        out.show(const { &[SET_PRESSURE.id(), ASSUMED_LEVEL.id(), EYE_LEVEL.id()] });
        fluid(entered, density, out);
        if w.height != 0.0 {
            out.about(cautions::LEVEL_ASSUMED, ASSUMED_LEVEL);
        }
        out.item(items::SET_COLUMN, w.column);
        w.pressure
    } else {
        return;
    };
    out.item(items::HEAD, pressure);
    out.item(items::HEAD_KPA, convert(pressure, Unit::MmHg, Unit::KPa));
    out.item(items::HEAD_CMH2O, convert(pressure, Unit::MmHg, Unit::CmH2O));
    out.item(items::PER_CM, formulas::of_column(1.0, density));
    if levels(entered).is_some() {
        out.about(cautions::HEAD_STATIC, OPEN_LEVEL);
    }
    if pressure > HEAD_HIGH.get() {
        out.caution(cautions::HEAD_HIGH);
    }
    if pressure < 0.0 {
        out.about(cautions::HEAD_NEGATIVE, EYE_LEVEL);
    }
}

/// The density that is used.
pub(crate) fn fluid(entered: &Entered, density: Density, out: &mut Out) {
    if entered.has(DENSITY_FROM.id()) {
        out.entry(DENSITY_FROM.id());
    }
    match entered.get(DENSITY_FROM) {
        Some(FluidFrom::Water) => {
            out.show(const { &[TEMPERATURE.id()] });
            out.item(items::DENSITY_USED, density.kg_m3());
        }
        _ => out.show(const { &[DENSITY.id()] }),
    }
}

/// Other bottles, and an eye that lies elsewhere than was entered.
#[inline(never)]
fn bottles(entered: &Entered, density: Density, out: &mut Out) {
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
            out.in_row(what, value, row);
        }
    }
}

/// The level, or the setting, for a pressure that is wanted.
#[inline(never)]
fn wanted(entered: &Entered, density: Density, out: &mut Out) {
    let (Some(wanted), Some(eye), Some(gas)) =
        (entered.get(WANTED_PRESSURE), entered.get(EYE_LEVEL), entered.get(GAS_PRESSURE))
    else {
        return;
    };
    out.show(const { &[WANTED_PRESSURE.id()] });
    // reported before, with a column
    if still(entered).is_none() {
        out.show(const { &[EYE_LEVEL.id()] });
    }
    out.item(items::LEVEL_WANTED, formulas::level_for(wanted, gas, eye, density));
    if let Some(assumed) = entered.get(ASSUMED_LEVEL) {
        if set(entered).is_none() {
            out.show(const { &[ASSUMED_LEVEL.id()] });
        }
        out.item(items::SETTING_WANTED, formulas::setting_for(wanted, assumed, eye, density));
    }
    if wanted.mmhg() > HEAD_HIGH.get() {
        out.about(cautions::HEAD_HIGH, WANTED_PRESSURE);
    }
}

#[inline(never)]
pub(crate) fn explain(subject: u8, entered: &Entered, out: &mut Out) -> bool {
    match subject {
        0 => explain_column(entered, out),
        _ => explain_ceiling(entered, out),
    }
}

fn explain_column(entered: &Entered, out: &mut Out) -> bool {
    if entered.get(DENSITY_FROM) == Some(FluidFrom::Water)
        && let Some(temperature) = temperature(entered)
    {
        density::working(temperature).show(out);
    }
    let column = column_working(entered).inspect(|w| w.show(out)).is_some();
    set_working(entered).inspect(|w| w.show(out)).is_some() || column
}

fn explain_ceiling(entered: &Entered, out: &mut Out) -> bool {
    let Some((known, temperature)) = known_air(entered).zip(temperature(entered)) else { return false };
    if let Air::Station(station) = known {
        air::height(station).show(out);
    }
    ceiling::show_all(known, temperature, out);
    true
}
