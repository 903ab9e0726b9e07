//! The chamber under flow, and after an occlusion breaks: illustrations, and their arithmetic.

use ocellus_card::Entered;
use ocellus_card::case::Case;
use ocellus_card::parts::surge::known_setup;
use ocellus_core::fluids::chamber::{self, Pump, Supply};
use ocellus_core::fluids::readings::{self, Reading};
use ocellus_core::fluids::surge::{self, Ended, Setup, State, Stepped, Stepper};
use ocellus_core::quantity::{Aspiration, GasPressure};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::{card, symbol};
use crate::values::Value;

pub(super) fn register(registry: &mut Registry) {
    flow(registry);
    breaks(registry);
    integrated(registry);
}

fn reading(value: &Value, number: u8) -> Result<Reading, Failed> {
    let of = |what| value.number(&format!("{what}_{number}"));
    Ok(Reading { flow: Aspiration::from_ml_min(of("flow")?)?, pressure: GasPressure::from_mmhg(of("pressure")?)? })
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

pub(super) type Step = fn(&Stepper, State) -> Stepped;

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
        known_setup, Setup::shortest => "card-fluids-surge-shortest-ms-*" => |known_setup, shortest; value|
            on_card(value, |entered| shortest(&known_setup(entered)?));
        // A quarter of it.
        Setup::longest_step => "card-fluids-surge-shortest-ms-*" => |longest_step; value|
            on_card(value, |entered| Some(4.0 * longest_step(&known_setup(entered)?)?));
        known_setup, Setup::start => "card-fluids-surge-start-mmhg-*" => |known_setup, start; value|
            on_card(value, |entered| Some(start(&known_setup(entered)?)?.chamber));
        Setup::step => "card-fluids-surge-step-taken-ms-*" => |step; value| {
            // where no step was entered
            match value.number("surge_step_ms") {
                Ok(entered) => Ok(vec![entered]),
                Err(_) => on_card(value, |entered| step(&known_setup(entered)?)),
            }
        };
        // the pressures after so long are those at rest
        Setup::end => "vacpump-p-*" => |end; value| at_rest(end, &resting(value)?);
        Setup::end => "flowpump-p-*" => |end; value| at_rest(end, &resting(value)?);
    }
}

/// Something of the set-up that the entries of a card make.
fn on_card(value: &Value, of: impl Fn(&Entered) -> Option<f64>) -> Answer {
    let draft = card::entered(value)?;
    Ok(vec![Case::try_from(&draft)?.known(|known| of(known.entered)).ok_or("no set-up")?])
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
