//! A verb that is left out of a program is not offered by it and is not known to it. Also to be run with some of them alone:
//! `cargo test -p ocellus-console --no-default-features --features nudge --test verbs`.
#![allow(clippy::unwrap_used, reason = "a test may stop where it stands")]

use ocellus_console::{Around, Console};

struct Desk;

impl Around for Desk {
    fn millis(&self) -> u32 {
        0
    }
}

/// Every verb, and whether it is there.
const VERBS: [(&str, bool); 17] = [
    ("show", true),
    ("plan", true),
    ("explain", true),
    ("nudge", cfg!(feature = "nudge")),
    ("draw", cfg!(feature = "draw")),
    ("convert", cfg!(feature = "convert")),
    ("sweep", cfg!(feature = "sweep")),
    ("strip", cfg!(feature = "strip")),
    ("exercise", cfg!(feature = "exercise")),
    ("answer", cfg!(feature = "exercise")),
    ("barometer", cfg!(feature = "barometer")),
    ("readback", true),
    ("identify", true),
    ("group", cfg!(feature = "group")),
    ("clear", true),
    ("help", true),
    ("jump", false),
];

fn said(line: &str) -> String {
    let (mut console, mut said) = (Console::without_echo(), String::new());
    for byte in line.bytes().chain(*b"\r") {
        console.byte(byte, 0, &Desk, &mut |text| said.push_str(text));
    }
    said.replace("\r\n", "\n")
}

#[test]
fn help_offers_what_there_is() {
    let help = said("help");
    let asked = help.split("To ask:\n").nth(1).unwrap();
    let offered: Vec<&str> = asked
        .lines()
        .filter_map(|line| line.strip_prefix("  ").filter(|line| !line.starts_with(' ')))
        .filter_map(|line| line.split(' ').next())
        .collect();
    let there: Vec<&str> = VERBS.iter().filter(|(_, is_there)| *is_there).map(|(verb, _)| *verb).collect();
    assert_eq!(offered, there, "{help}");
}

#[test]
fn what_is_left_out_is_unknown() {
    for (verb, is_there) in VERBS {
        let (answer, help) = (said(verb), said(&format!("help {verb}")));
        assert_eq!(answer.starts_with(&format!("{verb}: not a word that is known here")), !is_there, "{answer}");
        assert_eq!(help.starts_with(&format!("{verb}: no help for this word")), !is_there, "{help}");
    }
}

/// Nor is it named as what a misspelt word means.
#[test]
fn what_is_left_out_is_not_meant() {
    for (verb, is_there) in VERBS {
        let meant = said(&format!("{verb}q"));
        assert_eq!(meant.contains(&format!("perhaps {verb}\n")), is_there, "{meant}");
    }
}
