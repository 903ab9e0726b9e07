//! The program of a board, in an emulator, asked by the program that a person uses.

use ocellus_tests::check::{self, demo_cases};
use ocellus_tests::emulator::{BOARDS, Emulator};
use ocellus_tests::random_case;
use std::process::Command;

/// How many random cases each board computes; a longer run is asked for by the variable.
fn random_cases() -> usize {
    let asked = std::env::var("OCELLUS_RANDOM_CASES").ok();
    asked.map_or(100, |count| count.parse().expect("OCELLUS_RANDOM_CASES: a number of cases"))
}

fn ocellus(arguments: &[&str]) -> (String, Option<i32>) {
    let mut command = Command::new(env!("CARGO"));
    command.args(["run", "--quiet", "--package", "ocellus-cli", "--"]).args(arguments);
    let done = command.output().expect("cargo");
    let said = String::from_utf8_lossy(&done.stdout).into_owned() + &String::from_utf8_lossy(&done.stderr);
    (said, done.status.code())
}

#[test]
fn every_demo_case_is_equal_bit_by_bit() {
    for board in BOARDS {
        let emulator = Emulator::start(board);
        let cases: Vec<String> = demo_cases().iter().map(|path| path.display().to_string()).collect();
        let table = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data/batch/eyes.csv");
        let mut arguments = vec!["device", "compare", "--port", &emulator.port, table];
        arguments.extend(cases.iter().map(String::as_str));
        let (said, code) = ocellus(&arguments);
        assert_eq!(code, Some(0), "{board}: {said}");
        assert!(said.contains(board) && said.contains("all bits equal"), "{said}");
        let (said, code) = ocellus(&["device", "hello", "--port", &emulator.port]);
        assert_eq!(code, Some(0), "{board}: {said}");
        assert!(said.contains(board), "{said}");
    }
}

#[test]
fn random_cases_are_equal_bit_by_bit() {
    for board in BOARDS {
        let emulator = Emulator::start(board);
        let compared = check::compare(&emulator.port, random_case::drafts().take(random_cases()));
        println!("{board}: {} random cases, {} numbers, all bits equal", compared.cases, compared.numbers);
        assert_eq!((compared.cases, compared.refused), (random_cases(), 0));
    }
}

#[test]
fn a_damaged_line_yields_no_wrong_number() {
    for (seed, board) in (10..).step_by(10).zip(BOARDS) {
        let emulator = Emulator::start(board);
        let compared = check::survives_damage(&emulator.port, seed, 300);
        println!("{board}: 300 bytes damaged, {} cases whole and equal", compared.cases);
    }
}

#[test]
fn a_strip_chart_goes_on_by_itself() {
    for board in BOARDS {
        check::draws_a_strip(&Emulator::start(board).port);
    }
}

#[test]
fn text_and_frames_share_a_line() {
    for board in BOARDS {
        check::takes_text_and_frames(&Emulator::start(board).port);
    }
}

#[test]
fn noise_is_outlived() {
    for (seed, board) in (30..).zip(BOARDS) {
        check::outlives_noise(&Emulator::start(board).port, seed, 1 << 20);
    }
}

/// The card a device computes is the card, line for line.
#[test]
fn the_card_of_a_device_is_the_card() {
    let emulator = Emulator::start("microbit");
    let path = demo_cases().into_iter().find(|path| path.ends_with("long-toric.toml")).expect("a toric case");
    let path = path.to_str().expect("a path");
    let (theirs, code) = ocellus(&["device", "plan", path, "--port", &emulator.port]);
    let (ours, _) = ocellus(&["plan", path]);
    assert_eq!(code, Some(0));
    assert_eq!(theirs.trim_end().strip_suffix("Computed by microbit.").map(str::trim_end), Some(ours.trim_end()));
}

/// What a person types, and what a script types, come to the same code as the case file here.
#[test]
fn a_typed_session_comes_to_the_same_code() {
    for board in BOARDS {
        let emulator = Emulator::start(board);
        check::typed_session(&emulator.port);
    }
}
