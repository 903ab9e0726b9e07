//! How far the pump can pull: the air, the ceiling, and what of each vacuum that is set is reached.

use super::choices::FluidFrom;
use super::known::{known_air, siphon, still, temperature};
use super::limits::STATION_FAR;
use super::table::entries::*;
use super::table::{cautions, items};
use crate::entered::Entered;
use crate::entry::Entry;
use crate::id::ItemId;
use crate::out::Out;
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
pub(super) fn plan(entered: &Entered, density: Density, out: &mut Out) {
    let ceiling = of_air(entered, out);
    settings(entered, ceiling, out);
    if let Some(siphon) = siphon(entered, density) {
        out.show(const { &[PUMP_LEVEL.id()] });
        out.item(items::SIPHON, siphon);
    }
    reached(entered, density, ceiling, out);
}

#[inline(never)]
fn of_air(entered: &Entered, out: &mut Out) -> Option<f64> {
    // a temperature without air is used for nothing
    let Some((air, temperature)) = known_air(entered).and_then(|air| Some((air, temperature(entered)?))) else {
        out.about(cautions::NO_AIR, ALTITUDE);
        return None;
    };
    let w = ceiling::working(air, temperature);
    out.show(const { &[ALTITUDE.id(), STATION_PRESSURE.id()] });
    // reported before, with a column of water
    if still(entered).is_none() || entered.get(DENSITY_FROM) != Some(FluidFrom::Water) {
        out.show(const { &[TEMPERATURE.id()] });
    }
    let mmhg = |pascals| convert(pascals, Unit::Pa, Unit::MmHg);
    match air {
        Air::Station(station) => {
            out.item(items::STATION_AIR, mmhg(w.air));
            out.item(items::AIR_HEIGHT, air::height(station).altitude);
            if let Some(altitude) = entered.get(ALTITUDE) {
                out.about(cautions::STATION_BEATS_ALTITUDE, STATION_PRESSURE);
                let less = mmhg(w.air - air::working(altitude).pressure);
                out.item(items::STATION_LESS, less);
                if less.abs() > STATION_FAR.get() {
                    out.about(cautions::STATION_FAR, STATION_PRESSURE);
                }
            }
        }
        Air::Altitude(_) => out.item(items::AIR, mmhg(w.air)),
    }
    let magnus = vapour::magnus(temperature);
    out.item(items::VAPOUR, mmhg(w.vapour));
    out.item(items::MAGNUS, mmhg(magnus));
    out.item(items::MAGNUS_LESS, mmhg(magnus - w.vapour));
    out.item(items::CEILING, w.ceiling);
    out.item(items::CEILING_KPA, convert(w.ceiling, Unit::MmHg, Unit::KPa));
    out.item(items::CEILING_CMH2O, convert(w.ceiling, Unit::MmHg, Unit::CmH2O));
    out.caution(cautions::CEILING_IDEAL);
    Some(w.ceiling)
}

/// Each setting, and what is left of the ceiling above it.
#[inline(never)]
fn settings(entered: &Entered, ceiling: Option<f64>, out: &mut Out) {
    for (entry, margin) in SETTINGS {
        let Some(setting) = entered.get(entry).map(Vacuum::mmhg) else { continue };
        out.entry(entry.id());
        let Some(ceiling) = ceiling else { continue };
        out.item(margin, ceiling - setting);
        if setting > ceiling {
            out.about(cautions::VACUUM_UNREACHABLE, entry);
        }
    }
}

/// Each setting in other units, and what of it is reached.
#[inline(never)]
fn reached(entered: &Entered, density: Density, ceiling: Option<f64>, out: &mut Out) {
    let (siphon, mut boils) = (siphon(entered, density), false);
    for (row, (entry, _)) in SETTINGS.into_iter().enumerate() {
        let Some(setting) = entered.get(entry) else { continue };
        let mut tell = |what, value| out.in_row(what, value, row);
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
        out.about(cautions::VACUUM_UNREACHABLE, PUMP_LEVEL);
    }
}
