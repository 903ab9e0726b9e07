//! What happens when an occlusion breaks: an illustration from the numbers entered.

mod known;
pub mod limits;
pub mod table;

pub use known::known_setup;

use crate::entered::Entered;
use crate::out::Out;
use crate::parts::chamber::is_left;
use crate::parts::chamber::table::cautions::{CHAMBER_COLLAPSED, ILLUSTRATION};
use crate::parts::pressure::table::entries::VACUUM_NUCLEUS;
use known::step;
use limits::CHAMBER_VOLUME;
use ocellus_core::fluids::surge::{self, Ended};
use table::entries::*;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(entered: &Entered, out: &mut Out) {
    let Some(setup) = known_setup(entered) else { return };
    let of = [VACUUM_NUCLEUS.id(), EYE_COMPLIANCE.id(), TUBING_COMPLIANCE.id(), SURGE_STEP.id()];
    out.show(&of);
    out.caution(ILLUSTRATION);
    out.about(cautions::COMPLIANCE_ENTERED, EYE_COMPLIANCE);
    // a leak that leaves nothing, and a column that pulls, are reported before
    let Some(shortest) = setup.shortest() else { return };
    out.item(items::SURGE_CONSTANT, shortest);
    let Some(step) = step(entered, &setup) else {
        return out.about(cautions::STEP_LONG, SURGE_STEP);
    };
    if let Some((w, ended)) = surge::run(&setup, step) {
        tell(&w, ended, out);
    }
}

#[inline(never)]
fn tell(w: &surge::Working, ended: Ended, out: &mut Out) {
    let mut tell = |what, value| out.item(what, value);
    tell(items::SURGE_STEP, w.step);
    tell(items::SURGE_START, w.start);
    match ended {
        Ended::Collapsed => tell(items::SURGE_COLLAPSED, w.steps * w.step),
        Ended::Recovered => {
            tell(items::SURGE_TROUGH, w.trough);
            tell(items::SURGE_TROUGH_TIME, w.trough_time);
            tell(items::SURGE_VOLUME, w.volume);
            tell(items::SURGE_RECOVERED, w.recovered);
            tell(items::SURGE_STEADY, w.steady);
        }
        // the least so far is not the least
        Ended::Open => {}
    }
    tell(items::SURGE_ROOM, w.room);
    tell(items::SURGE_VOLUME_LEFT, w.volume_left);
    tell(items::SURGE_ENERGY_LEFT, w.energy_left);
    match ended {
        Ended::Recovered if w.volume > CHAMBER_VOLUME.get() => {
            out.about(cautions::VOLUME_BEYOND, EYE_COMPLIANCE);
        }
        Ended::Recovered => {}
        Ended::Collapsed => out.about(CHAMBER_COLLAPSED, VACUUM_NUCLEUS),
        Ended::Open => out.caution(cautions::SURGE_OPEN),
    }
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, entered: &Entered, out: &mut Out) -> bool {
    out.caution(ILLUSTRATION);
    let Some(setup) = known_setup(entered) else { return false };
    if !is_left(setup.supply, out) {
        return false;
    }
    let Some(step) = step(entered, &setup) else {
        out.about(cautions::STEP_LONG, SURGE_STEP);
        return false;
    };
    // of a run that did not come to rest the least and the last are not what they are called
    match surge::run(&setup, step) {
        Some((w, Ended::Recovered)) => {
            w.show(out);
            return true;
        }
        Some((_, Ended::Collapsed)) => out.caution(CHAMBER_COLLAPSED),
        Some((_, Ended::Open)) => out.caution(cautions::SURGE_OPEN),
        None => {}
    }
    false
}
