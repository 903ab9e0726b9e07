//! The column at the eye, and how far the pump can pull here.

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::constant::pressure::HEAD_HIGH;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::pressure::ceiling::Air;
use crate::pressure::unit::{Unit, convert};
use crate::pressure::{ceiling, head};
use crate::sink::Sink;

/// The vacuum settings of a case, and what is left of the ceiling above each.
const SETTINGS: [(Field, What); 3] = [
    (Field::VacuumNucleus, What::MarginNucleus),
    (Field::VacuumCortex, What::MarginCortex),
    (Field::VacuumViscoelastic, What::MarginViscoelastic),
];

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Pressure);
    column(case, sink);
    let ceiling = air(case, sink);
    settings(case, ceiling, sink);
}

fn column(case: &Case, sink: &mut dyn Sink) {
    let Some(head) = working_head(case) else { return };
    entries(case, sink, &[Field::OpenLevel, Field::EyeLevel, Field::GasPressure, Field::Density]);
    sink.item(Item::one(What::Head, head.pressure));
    sink.item(Item::one(What::HeadKpa, convert(head.pressure, Unit::MmHg, Unit::KPa)));
    sink.item(Item::one(What::HeadCmh2o, convert(head.pressure, Unit::MmHg, Unit::CmH2O)));
    sink.item(Item::one(What::PerCm, head.per_cm));
    sink.caution(Caution::about(Code::HeadStatic, Field::OpenLevel));
    if head.pressure > HEAD_HIGH.get() {
        sink.caution(Caution::general(Code::HeadHigh));
    }
    if head.pressure < 0.0 {
        sink.caution(Caution::about(Code::HeadNegative, Field::EyeLevel));
    }
}

/// The column of a case, where its levels are known.
pub(crate) fn working_head(case: &Case) -> Option<head::Working> {
    let (open, eye) = case.levels()?;
    Some(head::working(open, eye, case.gas, case.density))
}

/// The air of a case, where it is known: measured, or by its altitude.
pub(crate) fn known_air(case: &Case) -> Option<Air> {
    case.station_pressure().map(Air::Station).or(case.altitude().map(Air::Altitude))
}

fn air(case: &Case, sink: &mut dyn Sink) -> Option<f64> {
    let Some(air) = known_air(case) else {
        sink.caution(Caution::about(Code::NoAir, Field::Altitude));
        return None;
    };
    let w = ceiling::working(air, case.temperature);
    entries(case, sink, &[Field::Altitude, Field::StationPressure, Field::Temperature]);
    if case.station_pressure().is_some() && case.altitude().is_some() {
        sink.caution(Caution::about(Code::StationBeatsAltitude, Field::StationPressure));
    }
    let what = match air {
        Air::Station(_) => What::StationAir,
        Air::Altitude(_) => What::Air,
    };
    sink.item(Item::one(what, convert(w.air, Unit::Pa, Unit::MmHg)));
    sink.item(Item::one(What::Vapour, convert(w.vapour, Unit::Pa, Unit::MmHg)));
    sink.item(Item::one(What::Ceiling, w.ceiling));
    sink.item(Item::one(What::CeilingKpa, convert(w.ceiling, Unit::MmHg, Unit::KPa)));
    sink.caution(Caution::general(Code::CeilingIdeal));
    Some(w.ceiling)
}

/// Each setting, and what is left of the ceiling above it.
fn settings(case: &Case, ceiling: Option<f64>, sink: &mut dyn Sink) {
    for (field, margin) in SETTINGS {
        let Some(setting) = case.draft().number(field) else { continue };
        sink.entry(field);
        let Some(ceiling) = ceiling else { continue };
        sink.item(Item::one(margin, ceiling - setting));
        if setting > ceiling {
            sink.caution(Caution::about(Code::VacuumUnreachable, field));
        }
    }
}
