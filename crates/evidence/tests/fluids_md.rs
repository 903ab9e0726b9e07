//! How far a step is from none: the table of `crates/core/FLUIDS.md`, against the pressures that a general solver of
//! differential equations gave.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

use ocellus_core::decimal::{Sign, fixed};
use ocellus_core::fluids::chamber::Supply;
use ocellus_core::fluids::surge::{Setup, Stepper, run};
use ocellus_evidence::values::{self, Value};

const PAGE: &str = include_str!("../../core/FLUIDS.md");

/// Steps of the table, ms.
const STEPS: [f64; 5] = [4.0, 2.0, 1.0, 0.5, 0.25];

fn setup(value: &Value) -> Setup {
    let number = |key| value.number(key).unwrap_or_else(|_| panic!("{}: no {key}", value.id));
    let (head, infusion, g) = (number("head"), number("r_in"), number("g"));
    Setup {
        supply: Supply { head, infusion, leak: g * head / (1.0 + infusion * g) },
        aspiration: number("r_asp"),
        vacuum: number("vacuum"),
        pumped: (value.given["pump"] == "flow").then(|| number("aspiration")),
        eye: number("eye_compliance"),
        line: number("tube_compliance"),
    }
}

/// How far steps of this length are off the solver's pressures of the chamber from 20 ms on, at the most, mmHg.
fn farthest(values: &[Value], step: f64) -> f64 {
    let mut most = 0.0_f64;
    for value in values.iter().filter(|value| value.id.starts_with("surge-p-")) {
        let ms = value.number("at_ms").unwrap();
        // whole steps only
        if ms < 20.0 || (ms / step).fract() != 0.0 {
            continue;
        }
        let setup = setup(value);
        let (mut state, stepper) = (setup.start().unwrap(), Stepper::new(&setup, step).unwrap());
        for _ in 0..(ms / step) as u32 {
            state = stepper.step(state).state;
        }
        most = most.max((state.chamber - value.expect.parse::<f64>().unwrap()).abs());
    }
    most
}

/// How far the least pressure is off the solver's.
fn trough(values: &[Value], step: f64) -> f64 {
    let of_trough = |value: &&Value| value.id.starts_with("surge-trough-") && !value.id.contains("time");
    values.iter().filter(of_trough).fold(0.0_f64, |most, value| {
        let (run, _) = run(&setup(value), step).unwrap();
        most.max((run.trough - value.expect.parse::<f64>().unwrap()).abs())
    })
}

#[test]
fn the_table_is_what_is_computed() {
    let values = values::all().unwrap();
    for step in STEPS {
        let rounded = |mmhg: f64| fixed(mmhg, 4, Sign::Minus).unwrap();
        let row = format!("| {step} | {} | {} |", rounded(farthest(&values, step)), rounded(trough(&values, step)));
        assert!(PAGE.contains(&row), "FLUIDS.md should have: {row}");
    }
}

/// Each half of a step leaves a quarter of the error.
#[test]
fn the_rule_is_of_second_order() {
    let values = values::all().unwrap();
    for step in [2.0, 1.0, 0.5] {
        let ratio = farthest(&values, step) / farthest(&values, step / 2.0);
        assert!((3.7..4.3).contains(&ratio), "{step} ms: {ratio}");
    }
}
