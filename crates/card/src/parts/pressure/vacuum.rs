//! How far the pump can pull: the air, the ceiling, and what of each vacuum that is set is reached.

use super::choices::FluidFrom;
use super::known::{known_air, siphon, still, temperature};
use super::limits::STATION_FAR;
use super::table::entries::*;
use super::table::{cautions, items};
use crate::caution::Caution;
use crate::entered::Entered;
use crate::entry::Entry;
use crate::id::ItemId;
use crate::item::Item;
use crate::parts::general::show;
use crate::sink::Sink;
use ocellus_core::fluids::ceiling::{self, Air};
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::fluids::{air, vapour};
use ocellus_core::quantity::{Density, Vacuum};

/// The vacuum settings of a case, and what is left of the ceiling above each.
const SETTINGS: [(Entry<Vacuum>, ItemId); 3] = [
    (VACUUM_NUCLEUS, items::MARGIN_NUCLEUS),
    (VACUUM_CORTEX, items::MARGIN_CORTEX),
    (VACUUM_VISCOELASTIC, items::MARGIN_VISCOELASTIC),
];

#[inline(never)]
pub(super) fn plan(entered: &Entered, density: Density, sink: &mut dyn Sink) {
    let ceiling = of_air(entered, sink);
    settings(entered, ceiling, sink);
    if let Some(siphon) = siphon(entered, density) {
        show(entered, sink, &[PUMP_LEVEL.id()]);
        sink.item(Item::one(items::SIPHON, siphon));
    }
    reached(entered, density, ceiling, sink);
}

#[inline(never)]
fn of_air(entered: &Entered, sink: &mut dyn Sink) -> Option<f64> {
    let Some((air, temperature)) = known_air(entered).zip(temperature(entered)) else {
        sink.caution(Caution::about(cautions::NO_AIR, ALTITUDE));
        return None;
    };
    let w = ceiling::working(air, temperature);
    show(entered, sink, &[ALTITUDE.id(), STATION_PRESSURE.id()]);
    // told before, with a column of water
    if still(entered).is_none() || entered.get(DENSITY_FROM) != Some(FluidFrom::Water) {
        show(entered, sink, &[TEMPERATURE.id()]);
    }
    let mmhg = |pascals| convert(pascals, Unit::Pa, Unit::MmHg);
    match air {
        Air::Station(station) => {
            sink.item(Item::one(items::STATION_AIR, mmhg(w.air)));
            sink.item(Item::one(items::AIR_HEIGHT, air::height(station).altitude));
            if let Some(altitude) = entered.get(ALTITUDE) {
                sink.caution(Caution::about(cautions::STATION_BEATS_ALTITUDE, STATION_PRESSURE));
                let less = mmhg(w.air - air::working(altitude).pressure);
                sink.item(Item::one(items::STATION_LESS, less));
                if less.abs() > STATION_FAR.get() {
                    sink.caution(Caution::about(cautions::STATION_FAR, STATION_PRESSURE));
                }
            }
        }
        Air::Altitude(_) => sink.item(Item::one(items::AIR, mmhg(w.air))),
    }
    let magnus = vapour::magnus(temperature);
    sink.item(Item::one(items::VAPOUR, mmhg(w.vapour)));
    sink.item(Item::one(items::MAGNUS, mmhg(magnus)));
    sink.item(Item::one(items::MAGNUS_LESS, mmhg(magnus - w.vapour)));
    sink.item(Item::one(items::CEILING, w.ceiling));
    sink.item(Item::one(items::CEILING_KPA, convert(w.ceiling, Unit::MmHg, Unit::KPa)));
    sink.item(Item::one(items::CEILING_CMH2O, convert(w.ceiling, Unit::MmHg, Unit::CmH2O)));
    sink.caution(Caution::general(cautions::CEILING_IDEAL));
    Some(w.ceiling)
}

/// Each setting, and what is left of the ceiling above it.
#[inline(never)]
fn settings(entered: &Entered, ceiling: Option<f64>, sink: &mut dyn Sink) {
    for (entry, margin) in SETTINGS {
        let Some(setting) = entered.get(entry).map(Vacuum::mmhg) else { continue };
        sink.entry(entry.id());
        let Some(ceiling) = ceiling else { continue };
        sink.item(Item::one(margin, ceiling - setting));
        if setting > ceiling {
            sink.caution(Caution::about(cautions::VACUUM_UNREACHABLE, entry));
        }
    }
}

/// Each setting in other units, and what of it is reached.
#[inline(never)]
fn reached(entered: &Entered, density: Density, ceiling: Option<f64>, sink: &mut dyn Sink) {
    let (siphon, mut boils) = (siphon(entered, density), false);
    for (row, (entry, _)) in SETTINGS.into_iter().enumerate() {
        let Some(setting) = entered.get(entry) else { continue };
        let mut tell = |what, value| sink.item(Item::one(what, value).in_row(row));
        tell(items::VACUUM_SET, setting.mmhg());
        tell(items::SET_KPA, convert(setting.mmhg(), Unit::MmHg, Unit::KPa));
        tell(items::SET_CMH2O, convert(setting.mmhg(), Unit::MmHg, Unit::CmH2O));
        if let Some(ceiling) = ceiling {
            let (pump, tip) = ceiling::reached(setting, ceiling, siphon.unwrap_or(0.0));
            // lower than the eye a pump can ask more of the tip than the air gives
            if pump + siphon.unwrap_or(0.0) > ceiling {
                boils = true;
            }
            tell(items::REACHED_PUMP, pump);
            if siphon.is_some() {
                tell(items::REACHED_TIP, tip);
            }
        }
    }
    if boils {
        sink.caution(Caution::about(cautions::VACUUM_UNREACHABLE, PUMP_LEVEL));
    }
}
