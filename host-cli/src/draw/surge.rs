//! Chamber and aspiration line after an occlusion breaks: the run of the card, every step of it.

use super::Seen;
use super::plot::{Curve, Plot};
use crate::text;
use ocellus_card::cautions::ILLUSTRATION;
use ocellus_card::parts::surge::known_setup;
use ocellus_card::{entries, items};
use ocellus_core::fluids::surge::Stepper;

/// How much longer than the card's run is drawn, so that it is seen to be over; and how long a run is without an end.
const LONGER: f64 = 1.4;
const ENDLESS: f64 = 1000.0;

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let wanted = "all of a surge: see `ocellus explain surge CASE`, and a step that is short enough";
    let setup = seen.of_fluids(|known| known_setup(known.entered)).ok_or(wanted)?;
    let step = seen.get(items::SURGE_STEP).ok_or(wanted)?;
    let (mut state, stepper) = (setup.start().ok_or(wanted)?, Stepper::new(&setup, step).ok_or(wanted)?);
    let collapsed = seen.get(items::SURGE_COLLAPSED);
    let end = collapsed.unwrap_or_else(|| seen.get(items::SURGE_RECOVERED).map_or(ENDLESS, |over| over * LONGER));
    let (mut chamber, mut line) = (vec![(0.0, state.chamber)], vec![(0.0, -state.line / TENTH)]);
    let mut ms = 0.0;
    while ms < end {
        state = stepper.step(state).state;
        ms += step;
        chamber.push((ms, state.chamber.max(0.0)));
        line.push((ms, -state.line / TENTH));
    }
    let mut curves = vec![Curve::line("chamber, mmHg", chamber), Curve::dashed(LINE, line)];
    if let Some(rest) = seen.get(items::SURGE_STEADY) {
        curves.push(Curve::thin("where the chamber comes to rest", vec![(0.0, rest), (end, rest)]));
    }
    if let Some(trough) = seen.get(items::SURGE_TROUGH).zip(seen.get(items::SURGE_TROUGH_TIME)) {
        curves.push(Curve::cross("least pressure", (trough.1, trough.0)));
    }
    let said = |words: &str, what| seen.printed(what).map_or(String::new(), |number| format!("{words} {number}"));
    let end = match collapsed {
        Some(_) => said("Chamber collapsed, the model ends: at", items::SURGE_COLLAPSED),
        None => [
            said("Least", items::SURGE_TROUGH),
            said(" after", items::SURGE_TROUGH_TIME),
            said("; recovered after", items::SURGE_RECOVERED),
        ]
        .concat(),
    };
    let of_step = said("step", items::SURGE_STEP);
    let mut notes = vec![ILLUSTRATION.text().to_string(), format!("{end}; {of_step}.")];
    notes.extend(seen.foot());
    Plot {
        title: format!(
            "ILLUSTRATION: after an occlusion breaks at {}",
            text::value(seen.draft, entries::VACUUM_NUCLEUS)
        ),
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
