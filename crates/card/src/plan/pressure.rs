//! The column at the eye, and how far the pump can pull here.

use super::entries;
use crate::bench::Bench;
use crate::caution::{Caution, Code};
use crate::choice::FluidFrom;
use crate::constant::flow::STATION_FAR;
use crate::constant::pressure::HEAD_HIGH;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::pressure::ceiling::Air;
use crate::pressure::unit::{Unit, convert};
use crate::pressure::{air, ceiling, head, vapour};
use crate::quantity::{Density, GasPressure, Level, Vacuum};
use crate::sink::Sink;

/// The vacuum settings of a case, and what is left of the ceiling above each.
const SETTINGS: [(Field, What); 3] = [
    (Field::VacuumNucleus, What::MarginNucleus),
    (Field::VacuumCortex, What::MarginCortex),
    (Field::VacuumViscoelastic, What::MarginViscoelastic),
];

/// How far apart the open levels of the table lie, and how wrong the level of the eye is in it, cm.
const BETWEEN: f64 = 15.0;
const ASTRAY: f64 = 5.0;

#[inline(never)]
pub(super) fn plan(bench: &Bench, sink: &mut dyn Sink) {
    sink.part(Part::Pressure);
    let Some(density) = bench.density() else { return };
    column(bench, density, sink);
    wanted(bench, density, sink);
    let ceiling = air(bench, sink);
    settings(bench, ceiling, sink);
    if let Some(siphon) = siphon(bench, density) {
        entries(bench.draft(), sink, &[Field::PumpLevel]);
        sink.item(Item::one(What::Siphon, siphon));
    }
    bottles(bench, density, sink);
    reached(bench, density, ceiling, sink);
}

/// Pressure at the eye with nothing flowing, of a column or of a machine that is set by pressure.
#[inline(never)]
pub(crate) fn still(bench: &Bench) -> Option<f64> {
    let of_column = || Some(column_working(bench)?.pressure);
    of_column().or_else(|| Some(set_working(bench)?.pressure))
}

/// The column of a set-up, where its levels are known.
pub(crate) fn column_working(bench: &Bench) -> Option<head::Working> {
    let (open, eye) = bench.levels()?;
    Some(head::working(open, eye, bench.gas, bench.density()?))
}

/// The same of a machine that is set by pressure.
pub(crate) fn set_working(bench: &Bench) -> Option<head::Set> {
    let (set, assumed) = bench.set()?;
    Some(head::set(set, assumed, bench.eye_level()?, bench.density()?))
}

#[inline(never)]
fn column(bench: &Bench, density: Density, sink: &mut dyn Sink) {
    let pressure = if let Some(w) = column_working(bench) {
        entries(bench.draft(), sink, &[Field::OpenLevel, Field::EyeLevel, Field::GasPressure]);
        fluid(bench, density, sink);
        w.pressure
    } else if let Some(w) = set_working(bench) {
        entries(bench.draft(), sink, &[Field::SetPressure, Field::AssumedLevel, Field::EyeLevel]);
        fluid(bench, density, sink);
        if w.height != 0.0 {
            sink.caution(Caution::about(Code::LevelAssumed, Field::AssumedLevel));
        }
        sink.item(Item::one(What::SetColumn, w.column));
        w.pressure
    } else {
        return;
    };
    sink.item(Item::one(What::Head, pressure));
    sink.item(Item::one(What::HeadKpa, convert(pressure, Unit::MmHg, Unit::KPa)));
    sink.item(Item::one(What::HeadCmh2o, convert(pressure, Unit::MmHg, Unit::CmH2O)));
    sink.item(Item::one(What::PerCm, head::of_column(1.0, density)));
    if bench.levels().is_some() {
        sink.caution(Caution::about(Code::HeadStatic, Field::OpenLevel));
    }
    if pressure > HEAD_HIGH.get() {
        sink.caution(Caution::general(Code::HeadHigh));
    }
    if pressure < 0.0 {
        sink.caution(Caution::about(Code::HeadNegative, Field::EyeLevel));
    }
}

/// The density that is used.
pub(super) fn fluid(bench: &Bench, density: Density, sink: &mut dyn Sink) {
    if bench.draft().has(Field::DensityFrom) {
        sink.entry(Field::DensityFrom);
    }
    match bench.get(Field::DensityFrom) {
        Some(FluidFrom::Water) => {
            entries(bench.draft(), sink, &[Field::Temperature]);
            sink.item(Item::one(What::DensityUsed, density.kg_m3()));
        }
        _ => entries(bench.draft(), sink, &[Field::Density]),
    }
}

/// Other bottles, and an eye that lies elsewhere than was entered.
#[inline(never)]
fn bottles(bench: &Bench, density: Density, sink: &mut dyn Sink) {
    let (Some((open, _)), Some(pressure)) = (bench.levels(), still(bench)) else { return };
    let per_cm = head::of_column(1.0, density);
    let astray = ASTRAY * per_cm;
    for (row, above) in [-2.0 * BETWEEN, -BETWEEN, 0.0, BETWEEN, 2.0 * BETWEEN].into_iter().enumerate() {
        let there = pressure + above * per_cm;
        for (what, value) in [
            (What::Bottle, open.cm() + above),
            (What::BottleHead, there),
            (What::BottleHigher, there - astray),
            (What::BottleLower, there + astray),
        ] {
            sink.item(Item::one(what, value).in_row(row));
        }
    }
}

/// The level, or the setting, for a pressure that is wanted.
#[inline(never)]
fn wanted(bench: &Bench, density: Density, sink: &mut dyn Sink) {
    let (Some(wanted), Some(eye)) = (bench.get::<GasPressure>(Field::WantedPressure), bench.eye_level()) else {
        return;
    };
    entries(bench.draft(), sink, &[Field::WantedPressure]);
    // told before, with a column
    if still(bench).is_none() {
        entries(bench.draft(), sink, &[Field::EyeLevel]);
    }
    sink.item(Item::one(What::LevelWanted, head::level_for(wanted, bench.gas, eye, density)));
    if let Some(assumed) = bench.get(Field::AssumedLevel) {
        if bench.set().is_none() {
            entries(bench.draft(), sink, &[Field::AssumedLevel]);
        }
        sink.item(Item::one(What::SettingWanted, head::setting_for(wanted, assumed, eye, density)));
    }
    if wanted.mmhg() > HEAD_HIGH.get() {
        sink.caution(Caution::about(Code::HeadHigh, Field::WantedPressure));
    }
}

/// The air of a set-up, where it is known: measured, or by its altitude.
pub(crate) fn known_air(bench: &Bench) -> Option<Air> {
    bench.get(Field::StationPressure).map(Air::Station).or(bench.get(Field::Altitude).map(Air::Altitude))
}

#[inline(never)]
fn air(bench: &Bench, sink: &mut dyn Sink) -> Option<f64> {
    let Some(air) = known_air(bench) else {
        sink.caution(Caution::about(Code::NoAir, Field::Altitude));
        return None;
    };
    let w = ceiling::working(air, bench.temperature);
    entries(bench.draft(), sink, &[Field::Altitude, Field::StationPressure]);
    // told before, with a column of water
    if still(bench).is_none() || bench.get(Field::DensityFrom) != Some(FluidFrom::Water) {
        entries(bench.draft(), sink, &[Field::Temperature]);
    }
    let mmhg = |pascals| convert(pascals, Unit::Pa, Unit::MmHg);
    match air {
        Air::Station(station) => {
            sink.item(Item::one(What::StationAir, mmhg(w.air)));
            sink.item(Item::one(What::AirHeight, air::height(station).altitude));
            if let Some(altitude) = bench.get(Field::Altitude) {
                sink.caution(Caution::about(Code::StationBeatsAltitude, Field::StationPressure));
                let less = mmhg(w.air - air::working(altitude).pressure);
                sink.item(Item::one(What::StationLess, less));
                if less.abs() > STATION_FAR.get() {
                    sink.caution(Caution::about(Code::StationFar, Field::StationPressure));
                }
            }
        }
        Air::Altitude(_) => sink.item(Item::one(What::Air, mmhg(w.air))),
    }
    let magnus = vapour::magnus(bench.temperature);
    sink.item(Item::one(What::Vapour, mmhg(w.vapour)));
    sink.item(Item::one(What::Magnus, mmhg(magnus)));
    sink.item(Item::one(What::MagnusLess, mmhg(magnus - w.vapour)));
    sink.item(Item::one(What::Ceiling, w.ceiling));
    sink.item(Item::one(What::CeilingKpa, convert(w.ceiling, Unit::MmHg, Unit::KPa)));
    sink.item(Item::one(What::CeilingCmh2o, convert(w.ceiling, Unit::MmHg, Unit::CmH2O)));
    sink.caution(Caution::general(Code::CeilingIdeal));
    Some(w.ceiling)
}

/// What of a vacuum that is set is there at the level of the eye, nothing flowing, mmHg: all of it where neither air nor pump
/// is known.
#[inline(never)]
pub(crate) fn reached_at_tip(bench: &Bench, field: Field) -> Option<f64> {
    let ceiling = ceiling(bench).unwrap_or(f64::MAX);
    let siphon = bench.density().and_then(|density| siphon(bench, density)).unwrap_or(0.0);
    Some(ceiling::reached(bench.get(field)?, ceiling, siphon).1)
}

/// The ceiling on vacuum, where the air is known.
pub(crate) fn ceiling(bench: &Bench) -> Option<f64> {
    known_air(bench).map(|air| ceiling::working(air, bench.temperature).ceiling)
}

/// What the level of the eye adds to a vacuum at the pump, mmHg.
pub(crate) fn siphon(bench: &Bench, density: Density) -> Option<f64> {
    let pump: Level = bench.get(Field::PumpLevel)?;
    Some(head::of_column(bench.eye_level()?.cm() - pump.cm(), density))
}

/// Each setting, and what is left of the ceiling above it.
#[inline(never)]
fn settings(bench: &Bench, ceiling: Option<f64>, sink: &mut dyn Sink) {
    for (field, margin) in SETTINGS {
        let Some(setting) = bench.draft().number(field) else { continue };
        sink.entry(field);
        let Some(ceiling) = ceiling else { continue };
        sink.item(Item::one(margin, ceiling - setting));
        if setting > ceiling {
            sink.caution(Caution::about(Code::VacuumUnreachable, field));
        }
    }
}

/// Each setting in other units, and what of it is reached.
#[inline(never)]
fn reached(bench: &Bench, density: Density, ceiling: Option<f64>, sink: &mut dyn Sink) {
    let (siphon, mut boils) = (siphon(bench, density), false);
    for (row, (field, _)) in SETTINGS.into_iter().enumerate() {
        let Some(setting) = bench.get::<Vacuum>(field) else { continue };
        let mut tell = |what, value| sink.item(Item::one(what, value).in_row(row));
        tell(What::VacuumSet, setting.mmhg());
        tell(What::SetKpa, convert(setting.mmhg(), Unit::MmHg, Unit::KPa));
        tell(What::SetCmh2o, convert(setting.mmhg(), Unit::MmHg, Unit::CmH2O));
        if let Some(ceiling) = ceiling {
            let (pump, tip) = ceiling::reached(setting, ceiling, siphon.unwrap_or(0.0));
            // lower than the eye a pump can ask more of the tip than the air gives
            if pump + siphon.unwrap_or(0.0) > ceiling {
                boils = true;
            }
            tell(What::ReachedPump, pump);
            if siphon.is_some() {
                tell(What::ReachedTip, tip);
            }
        }
    }
    if boils {
        sink.caution(Caution::about(Code::VacuumUnreachable, Field::PumpLevel));
    }
}
