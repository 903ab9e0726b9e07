//! Chamber and aspiration line after an occlusion breaks: the run of the card, every step of it.

use super::Seen;
use super::plot::{Curve, Plot};
use crate::text;
use ocellus_core::bench::Bench;
use ocellus_core::caution::Code;
use ocellus_core::field::Field;
use ocellus_core::item::What;
use ocellus_core::plan;
use ocellus_core::pressure::surge::Stepper;

/// How much longer than the card's run is drawn, so that it is seen to be over; and how long a run is without an end.
const LONGER: f64 = 1.4;
const ENDLESS: f64 = 1000.0;

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let wanted = "all of a surge: see `ocellus explain surge CASE`, and a step that is short enough";
    let setup = Bench::check(seen.draft, &mut |_| {}).as_ref().and_then(plan::surge_setup).ok_or(wanted)?;
    let step = seen.get(What::SurgeStep).ok_or(wanted)?;
    let (mut state, stepper) = (setup.start().ok_or(wanted)?, Stepper::new(&setup, step).ok_or(wanted)?);
    let collapsed = seen.get(What::SurgeCollapsed);
    let end = collapsed.unwrap_or_else(|| seen.get(What::SurgeRecovered).map_or(ENDLESS, |over| over * LONGER));
    let (mut chamber, mut line) = (vec![(0.0, state.chamber)], vec![(0.0, -state.line / TENTH)]);
    let mut ms = 0.0;
    while ms < end {
        state = stepper.step(state).state;
        ms += step;
        chamber.push((ms, state.chamber.max(0.0)));
        line.push((ms, -state.line / TENTH));
    }
    let mut curves = vec![Curve::line("chamber, mmHg", chamber), Curve::dashed(LINE, line)];
    if let Some(rest) = seen.get(What::SurgeSteady) {
        curves.push(Curve::thin("where the chamber comes to rest", vec![(0.0, rest), (end, rest)]));
    }
    if let Some(trough) = seen.get(What::SurgeTrough).zip(seen.get(What::SurgeTroughTime)) {
        curves.push(Curve::cross("least pressure", (trough.1, trough.0)));
    }
    let said = |words: &str, what| seen.printed(what).map_or(String::new(), |number| format!("{words} {number}"));
    let end = match collapsed {
        Some(_) => said("Chamber collapsed, the model ends: at", What::SurgeCollapsed),
        None => [
            said("Least", What::SurgeTrough),
            said(" after", What::SurgeTroughTime),
            said("; recovered after", What::SurgeRecovered),
        ]
        .concat(),
    };
    let of_step = said("step", What::SurgeStep);
    let mut notes = vec![Code::Illustration.text().to_owned(), format!("{end}; {of_step}.")];
    notes.extend(seen.foot());
    Plot {
        title: format!("ILLUSTRATION: after an occlusion breaks at {}", text::value(seen.draft, Field::VacuumNucleus)),
        across: "time from the break, ms".to_owned(),
        up: "pressure, mmHg".to_owned(),
        square: false,
        curves,
        notes,
    }
    .draw()
    .map_err(|_| "a drawing that can be written")
}

/// A vacuum is ten times a chamber's pressure: it is drawn at a tenth.
pub(super) const TENTH: f64 = 10.0;
pub(super) const LINE: &str = "vacuum in the line, a tenth of it";
