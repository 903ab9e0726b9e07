//! The chamber under flow, and after an occlusion breaks: illustrations, and their arithmetic.

use ocellus_core::bench::Bench;
use ocellus_core::plan::surge_setup;
use ocellus_core::fluids::chamber::{self, Pump, Supply};
use ocellus_core::fluids::live::{Change, INVENTED, Live, STRETCH, Seen};
use ocellus_core::fluids::readings::{self, Reading};
use ocellus_core::fluids::surge::{self, Ended, Setup, State, Stepped, Stepper};
use ocellus_core::quantity::{Aspiration, Density, GasPressure};

use crate::check::{Answer, Compared, Failed, Registry};
use crate::checks::card;
use crate::checks::symbol;
use crate::values::Value;
use crate::{checks, compare, oracles};

pub(super) fn register(registry: &mut Registry) {
    flow(registry);
    breaks(registry);
    integrated(registry);
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

fn reading(value: &Value, number: u8) -> Result<Reading, Failed> {
    Ok(Reading {
        flow: Aspiration::from_ml_min(value.number(&format!("flow_{number}"))?)?,
        pressure: GasPressure::from_mmhg(value.number(&format!("pressure_{number}"))?)?,
    })
}

/// Column, infusion line, and the leak at rest that has this conductance.
fn supply(value: &Value) -> Result<Supply, Failed> {
    let (head, infusion, g) = (value.number("head")?, value.number("r_in")?, value.number("g")?);
    Ok(Supply { head, infusion, leak: g * head / (1.0 + infusion * g) })
}

fn flow(registry: &mut Registry) {
    checks! { registry;
        readings::working, readings::Working::show => ["readings-r-*", "readings-p0-*"] => |working, show; value| {
            let w = working(reading(value, 1)?, reading(value, 2)?)?;
            let wanted = if value.id.starts_with("readings-r") { "R_in" } else { "P0" };
            symbol(&[wanted], |sink| show(&w, sink))
        };
        chamber::conductance => "leak-g-*" => |conductance; value| {
            let (head, infusion) = (value.number("head")?, value.number("r_in")?);
            Ok(vec![conductance(Supply { head, infusion, leak: value.number("leak_ml_min")? })?])
        };
        chamber::working, chamber::Working::show => "flowpump-p-*" => |working, show; value| {
            let w = working(supply(value)?, Pump::Flow(value.number("aspiration")?), None)?;
            symbol(&["P"], |sink| show(&w, sink))
        };
        chamber::working => "flowpump-v-*" => |working; value| {
            let w = working(supply(value)?, Pump::Flow(value.number("aspiration")?), None)?;
            Ok(vec![value.number("r_asp")? * w.aspiration - w.pressure])
        };
        chamber::working => ["vacpump-p-*", "vacpump-q-*"] => |working; value| {
            let pump = Pump::Vacuum(value.number("vacuum")?);
            let w = working(supply(value)?, pump, Some(value.number("r_asp")?))?;
            Ok(vec![if value.id.starts_with("vacpump-p") { w.pressure } else { w.aspiration }])
        };
    }
}

fn setup(value: &Value) -> Result<Setup, Failed> {
    Ok(Setup {
        supply: supply(value)?,
        aspiration: value.number("r_asp")?,
        vacuum: value.number("vacuum")?,
        pumped: if value.text("pump")? == "flow" { Some(value.number("aspiration")?) } else { None },
        eye: value.number("eye_compliance")?,
        line: value.number("tube_compliance")?,
    })
}

fn breaks(registry: &mut Registry) {
    checks! { registry;
        surge::run, surge::Working::show => [
            "surge-trough-#", "surge-trough-time-#", "surge-recovery-#", "surge-volume-#", "surge-room-#",
            "surge-exact-trough-#", "surge-exact-trough-time-#", "surge-exact-recovery-#",
        ] => |run, show; value| {
            let (w, ended) = run(&setup(value)?, 1.0).ok_or("no run")?;
            if ended != Ended::Recovered {
                return Err("not recovered".into());
            }
            let wanted = match value.id.trim_start_matches("surge-").trim_start_matches("exact-") {
                id if id.starts_with("trough-time") => "t_trough",
                id if id.starts_with("trough") => "P_trough",
                id if id.starts_with("recovery") => "t_recovered",
                id if id.starts_with("volume") => "V_eye",
                _ => "V_line",
            };
            symbol(&[wanted], |sink| show(&w, sink))
        };
        surge::run => ["surge-collapse-time-#", "surge-collapse-time-##"] => |run; value| {
            let (w, ended) = run(&setup(value)?, 1.0).ok_or("no run")?;
            if ended == Ended::Collapsed { Ok(vec![w.steps * w.step]) } else { Err("not collapsed".into()) }
        };
    }
}

type Step = fn(&Stepper, State) -> Stepped;

/// The state after so many milliseconds, with steps of this length and what is left as a last one.
fn after(
    step: Step,
    start: State,
    new: fn(&Setup, f64) -> Option<Stepper>,
    setup: &Setup,
    ms: f64,
    step_ms: f64,
) -> Result<State, Failed> {
    let (whole, mut state) = ((ms / step_ms) as u32, start);
    let stepper = new(setup, step_ms).ok_or("no step")?;
    for _ in 0..whole {
        state = step(&stepper, state).state;
    }
    let left = ms - f64::from(whole) * step_ms;
    if left > 0.0 {
        state = step(&new(setup, left).ok_or("no step")?, state).state;
    }
    Ok(state)
}

fn integrated(registry: &mut Registry) {
    checks! { registry;
        Stepper::step, Stepper::new, Setup::start => [
            "surge-p-*", "surge-pt-*", "surge-exact-p-*", "surge-exact-pt-*",
        ] => |step, new, start; value| {
            let setup = setup(value)?;
            let state = after(step, start(&setup).ok_or("no start")?, new, &setup, value.number("at_ms")?, 1.0)?;
            Ok(vec![if value.id.contains("-pt-") { state.line } else { state.chamber }])
        };
        Stepper::step, Stepper::new => "surge-midpoint-*" => |step, new; value| {
            let setup = setup(value)?;
            let start = setup.start().ok_or("no start")?;
            Ok(vec![after(step, start, new, &setup, value.number("at_ms")?, value.number("step_ms")?)?.chamber])
        };
        // errors of 2 and of 1 ms against steps so short that they stand for none
        Stepper::step, Stepper::new => "surge-order-#" => |step, new; value| {
            let setup = setup(value)?;
            let start = setup.start().ok_or("no start")?;
            let at = |ms| Ok::<_, Failed>(after(step, start, new, &setup, value.number("at_ms")?, ms)?.chamber);
            let exact = at(0.0078125)?;
            Ok(vec![log2(((at(2.0)? - exact) / (at(1.0)? - exact)).abs())])
        };
        Setup::shortest => "card-fluids-surge-shortest-ms-*" => |shortest; value|
            Ok(vec![shortest(&entered(value)?).ok_or("no set-up")?]);
        Setup::step => ["card-fluids-surge-step-taken-ms-*"] => |step; value| {
            // where no step was entered
            match value.number("surge_step_ms") {
                Ok(entered) => Ok(vec![entered]),
                Err(_) => Ok(vec![step(&entered(value)?).ok_or("no set-up")?]),
            }
        };
        // the pressures after so long are those at rest
        Setup::end => "vacpump-p-*" => |end; value| at_rest(end, &resting(value)?);
        Setup::end => "flowpump-p-*" => |end; value| at_rest(end, &resting(value)?);
    }
}

/// The set-up of entries.
fn entered(value: &Value) -> Result<Setup, Failed> {
    let draft = card::entered(value)?;
    let bench = Bench::check(&draft, &mut |_| {}).ok_or("no bench")?;
    Ok(surge_setup(&bench).ok_or("no surge")?)
}

/// Of a number of this program's tests, by the standard library.
#[expect(clippy::disallowed_methods, reason = "an outside check, and no number of ours")]
fn log2(ratio: f64) -> f64 {
    ratio.log2()
}

/// A set-up of a steady chamber.
fn resting(value: &Value) -> Result<Setup, Failed> {
    let flow = value.number("aspiration").ok();
    let vacuum = value.number("vacuum").unwrap_or(100.0);
    Ok(Setup { supply: supply(value)?, aspiration: value.number("r_asp")?, vacuum, pumped: flow, eye: 1.0, line: 0.1 })
}

fn at_rest(end: fn(&Setup) -> Option<State>, setup: &Setup) -> Answer {
    Ok(vec![end(setup).ok_or("no rest")?.chamber])
}
