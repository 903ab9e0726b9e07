//! What happens when an occlusion breaks: an illustration from the numbers entered.

mod known;
pub mod limits;
pub mod table;

pub use known::known_setup;

use crate::caution::Caution;
use crate::entered::Entered;
use crate::item::Item;
use crate::parts::chamber::is_left;
use crate::parts::chamber::table::cautions::{CHAMBER_COLLAPSED, ILLUSTRATION};
use crate::parts::general::show;
use crate::parts::pressure::table::entries::VACUUM_NUCLEUS;
use crate::sink::Sink;
use known::step;
use limits::CHAMBER_VOLUME;
use ocellus_core::fluids::surge::{self, Ended};
use table::entries::*;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(entered: &Entered, sink: &mut dyn Sink) {
    let Some(setup) = known_setup(entered) else { return };
    let of = [VACUUM_NUCLEUS.id(), EYE_COMPLIANCE.id(), TUBING_COMPLIANCE.id(), SURGE_STEP.id()];
    show(entered, sink, &of);
    sink.caution(Caution::general(ILLUSTRATION));
    sink.caution(Caution::about(cautions::COMPLIANCE_ENTERED, EYE_COMPLIANCE));
    // a leak that leaves nothing, and a column that pulls, are told of before
    let Some(shortest) = setup.shortest() else { return };
    sink.item(Item::one(items::SURGE_CONSTANT, shortest));
    let Some(step) = step(entered, &setup) else {
        return sink.caution(Caution::about(cautions::STEP_LONG, SURGE_STEP));
    };
    if let Some((w, ended)) = surge::run(&setup, step) {
        tell(&w, ended, sink);
    }
}

#[inline(never)]
fn tell(w: &surge::Working, ended: Ended, sink: &mut dyn Sink) {
    let mut tell = |what, value| sink.item(Item::one(what, value));
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
            sink.caution(Caution::about(cautions::VOLUME_BEYOND, EYE_COMPLIANCE));
        }
        Ended::Recovered => {}
        Ended::Collapsed => sink.caution(Caution::about(CHAMBER_COLLAPSED, VACUUM_NUCLEUS)),
        Ended::Open => sink.caution(Caution::general(cautions::SURGE_OPEN)),
    }
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, entered: &Entered, sink: &mut dyn Sink) -> bool {
    sink.caution(Caution::general(ILLUSTRATION));
    let Some(setup) = known_setup(entered) else { return false };
    if !is_left(setup.supply, sink) {
        return false;
    }
    let Some(step) = step(entered, &setup) else {
        sink.caution(Caution::about(cautions::STEP_LONG, SURGE_STEP));
        return false;
    };
    // of a run that did not come to rest the least and the last are not what they are called
    match surge::run(&setup, step) {
        Some((w, Ended::Recovered)) => {
            w.show(sink);
            return true;
        }
        Some((_, Ended::Collapsed)) => sink.caution(Caution::general(CHAMBER_COLLAPSED)),
        Some((_, Ended::Open)) => sink.caution(Caution::general(cautions::SURGE_OPEN)),
        None => {}
    }
    false
}
