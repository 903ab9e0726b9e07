//! What happens when an occlusion breaks: an illustration from the numbers entered.

use super::{chamber, entries, pressure};
use crate::bench::Bench;
use crate::caution::{Caution, Code};
use crate::constant::flow::CHAMBER_VOLUME;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::pressure::chamber::Pump;
use crate::pressure::surge::{self, Ended, Setup, State};
use crate::quantity::{Compliance, SurgeStep};
use crate::sink::Sink;

/// The set-up of a surge, where all of it is known.
///
/// ```
/// use ocellus_core::{bench::Bench, draft::Draft, field::Field, plan};
/// let mut draft = Draft::default();
/// for (field, text) in [
///     (Field::OpenLevel, "90"), (Field::EyeLevel, "0"), (Field::PumpKind, "flow"), (Field::Aspiration, "30"),
///     (Field::InfusionResistance, "0.2"), (Field::AspirationResistance, "6"), (Field::VacuumNucleus, "400"),
///     (Field::EyeCompliance, "1"),
/// ] {
///     draft.enter(field, text)?;
/// }
/// assert!(plan::surge_setup(&Bench::check(&draft, &mut |_| {}).unwrap()).is_none());
/// draft.enter(Field::TubingCompliance, "0.09")?;
/// assert!(plan::surge_setup(&Bench::check(&draft, &mut |_| {}).unwrap()).is_some());
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
#[inline(never)]
pub fn known(bench: &Bench) -> Option<Setup> {
    let compliance = |field| bench.get(field).map(Compliance::ul_mmhg);
    let setup = Setup {
        supply: chamber::known_supply(bench)?,
        aspiration: chamber::known_aspiration(bench)?,
        vacuum: pressure::reached_at_tip(bench, Field::VacuumNucleus)?,
        pumped: match chamber::known_pump(bench)? {
            Pump::Flow(flow) => Some(flow),
            Pump::Vacuum(_) => None,
        },
        eye: compliance(Field::EyeCompliance)?,
        line: compliance(Field::TubingCompliance)?,
    };
    // a pump that would need more than is set holds what is set
    let too_much = |rest: State| rest.line < -setup.vacuum;
    Some(if setup.end().is_some_and(too_much) { Setup { pumped: None, ..setup } } else { setup })
}

/// The step to take: entered, where it is short enough, or the longest that is.
pub(crate) fn step(bench: &Bench, setup: &Setup) -> Option<f64> {
    match bench.get::<SurgeStep>(Field::SurgeStep) {
        Some(step) => setup.longest_step().filter(|longest| step.ms() <= *longest).map(|_| step.ms()),
        None => setup.step(),
    }
}

#[inline(never)]
pub(super) fn plan(bench: &Bench, sink: &mut dyn Sink) {
    sink.part(Part::Surge);
    let Some(setup) = known(bench) else { return };
    entries(bench.draft(), sink, &[Field::VacuumNucleus, Field::EyeCompliance, Field::TubingCompliance]);
    entries(bench.draft(), sink, &[Field::SurgeStep]);
    sink.caution(Caution::general(Code::Illustration));
    sink.caution(Caution::about(Code::ComplianceEntered, Field::EyeCompliance));
    // a leak that leaves nothing, and a column that pulls, are told of before
    let Some(shortest) = setup.shortest() else { return };
    sink.item(Item::one(What::SurgeConstant, shortest));
    let Some(step) = step(bench, &setup) else { return sink.caution(Caution::about(Code::StepLong, Field::SurgeStep)) };
    if let Some((w, ended)) = surge::run(&setup, step) {
        told(&w, ended, sink);
    }
}

#[inline(never)]
fn told(w: &surge::Working, ended: Ended, sink: &mut dyn Sink) {
    let mut tell = |what, value| sink.item(Item::one(what, value));
    tell(What::SurgeStep, w.step);
    tell(What::SurgeStart, w.start);
    match ended {
        Ended::Collapsed => tell(What::SurgeCollapsed, w.steps * w.step),
        Ended::Recovered => {
            tell(What::SurgeTrough, w.trough);
            tell(What::SurgeTroughTime, w.trough_time);
            tell(What::SurgeVolume, w.volume);
            tell(What::SurgeRecovered, w.recovered);
            tell(What::SurgeSteady, w.steady);
        }
        // the least so far is not the least
        Ended::Open => {}
    }
    tell(What::SurgeRoom, w.room);
    tell(What::SurgeVolumeLeft, w.volume_left);
    tell(What::SurgeEnergyLeft, w.energy_left);
    match ended {
        Ended::Recovered if w.volume > CHAMBER_VOLUME.get() => {
            sink.caution(Caution::about(Code::VolumeBeyond, Field::EyeCompliance));
        }
        Ended::Recovered => {}
        Ended::Collapsed => sink.caution(Caution::about(Code::ChamberCollapsed, Field::VacuumNucleus)),
        Ended::Open => sink.caution(Caution::general(Code::SurgeOpen)),
    }
}
