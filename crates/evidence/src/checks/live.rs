//! A chamber that goes on, and one whose tip is closed, against other ways to solve the same equations.

use ocellus_core::fluids::live::{Change, INVENTED, Live, STRETCH, Seen};
use ocellus_core::fluids::surge::{Setup, State, Stepper};
use ocellus_core::quantity::Density;

use crate::check::{Compared, Registry};
use crate::checks::surge::Step;
use crate::{compare, oracles};

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        Live::advance, Live::new, Live::change => "the network in steps of a microsecond, by Euler's rule" =>
            |advance, new, change| as_by_euler(advance, new, change);
        Stepper::occluded, Stepper::step => "a closed tip: one exponential, and a straight line" => |occluded, step| as_closed(occluded, step);
    }
}

/// An hour's worth of what a teacher does, against steps so short that no rule matters. Time in us.
fn as_by_euler(
    advance: fn(&mut Live) -> Option<Seen>,
    new: fn(Setup, Density) -> Option<Live>,
    change: fn(&mut Live, Change),
) -> Compared {
    let density = Density::from_kg_m3(1000.0)?;
    let mut live = new(INVENTED, density).ok_or("no strip")?;
    // conductances in uL/s per mmHg
    let per = |resistance: f64| 1000.0 / 60.0 / resistance;
    let (inward, through) = (per(INVENTED.supply.infusion), per(INVENTED.aspiration));
    let leak =
        1000.0 / 60.0 * INVENTED.supply.leak / (INVENTED.supply.head - INVENTED.supply.infusion * INVENTED.supply.leak);
    let pumped = INVENTED.pumped.ok_or("no pump")? * 1000.0 / 60.0;
    let (mut head, mut vacuum, mut open) = (INVENTED.supply.head, INVENTED.vacuum, true);
    let rest = INVENTED.end().ok_or("no rest")?;
    let (mut p, mut pt) = (rest.chamber, rest.line);
    let script = [
        (5, Change::Occlude),
        (20, Change::Release),
        (15, Change::BottleUp),
        (3, Change::BottleUp),
        (8, Change::BottleDown),
        (4, Change::VacuumDown),
        (6, Change::Occlude),
        (30, Change::VacuumDown),
        (2, Change::VacuumUp),
        (9, Change::Release),
        (30, Change::Occlude),
    ];
    let (mut count, lift) = (0, 5.0 * 98.0665 / 133.322387415);
    for (stretches, done) in script {
        for _ in 0..stretches {
            let (mut least, mut most) = (p, p);
            for _ in 0..(STRETCH * 1000.0) as u32 {
                let flow = if open { through * (p - pt) } else { 0.0 };
                let drawn = if pt <= -vacuum { 0.0 } else { pumped };
                p += 1e-6 / INVENTED.eye * (inward * (head - p) - flow - leak * p);
                pt = (pt + 1e-6 / INVENTED.line * (flow - drawn)).max(-vacuum);
                (least, most) = (least.min(p), most.max(p));
            }
            let seen = advance(&mut live).ok_or("collapsed")?;
            for (ours, theirs, within) in
                [(seen.chamber, p, 0.15), (seen.line, pt, 1.5), (seen.least, least, 0.15), (seen.most, most, 0.15)]
            {
                if !compare::agrees(ours, theirs, within) {
                    return Err(format!("{ours} after {count} stretches, not {theirs}").into());
                }
            }
            count += 1;
        }
        match done {
            Change::Occlude => open = false,
            Change::Release => open = true,
            Change::BottleUp => head += lift,
            Change::BottleDown => head -= lift,
            Change::VacuumUp => vacuum += 25.0,
            Change::VacuumDown => {
                vacuum -= 25.0;
                pt = pt.max(-vacuum);
            }
        }
        change(&mut live, done);
    }
    Ok(count)
}

/// With the tip closed the chamber fills by itself, and the pump draws its line down evenly.
fn as_closed(occluded: fn(&Setup, f64) -> Option<Stepper>, step: Step) -> Compared {
    let setup = INVENTED;
    let stepper = occluded(&setup, 0.1).ok_or("no step")?;
    let per = |resistance: f64| 1000.0 / 60.0 / resistance;
    let leak = 1000.0 / 60.0 * setup.supply.leak / (setup.supply.head - setup.supply.infusion * setup.supply.leak);
    let rate = (per(setup.supply.infusion) + leak) / setup.eye;
    let full = per(setup.supply.infusion) * setup.supply.head / (per(setup.supply.infusion) + leak);
    let mut state = State { chamber: 20.0, line: -50.0 };
    for done in 1..=500 {
        state = step(&stepper, state).state;
        let seconds = f64::from(done) * 1e-4;
        let line = -50.0 - 30.0 * 1000.0 / 60.0 / setup.line * seconds;
        if !compare::agrees(state.chamber, full - (full - 20.0) * exp(-rate * seconds), 1e-3)
            || !compare::agrees(state.line, line, 1e-9)
        {
            return Err(format!("{state:?} after {seconds} s").into());
        }
    }
    Ok(1000)
}

/// By the standard library, as an outside oracle.
#[expect(clippy::disallowed_methods, reason = "an outside check, and no number of ours")]
fn exp(x: f64) -> f64 {
    x.exp()
}
