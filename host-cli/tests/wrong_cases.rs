//! What is said of a case file that is wrong: the file, the line, the entry as typed, what would be accepted.

mod ocellus;
use ocellus::{Folder, GOOD, problems};
use ocellus_cli::case_file;

/// The problems of a file's bytes, with nothing else printed.
fn refused(bytes: impl AsRef<[u8]>) -> Vec<String> {
    let done = Folder::new().with("case.toml", bytes).run(&["plan", "case.toml"], "");
    assert_eq!((done.code, done.out.as_str()), (2, ""), "{}", done.err);
    assert!(!done.err.contains("panicked"), "{}", done.err);
    problems(&done.err)
}

/// The one problem of the good case with one line changed.
fn one(line: &str, changed: &str) -> String {
    assert!(GOOD.contains(line), "{line}");
    let problems = refused(GOOD.replacen(line, changed, 1));
    assert_eq!(problems.len(), 1, "{changed}: {problems:#?}");
    problems[0].clone()
}

#[test]
fn the_good_case_is_accepted() {
    let done = Folder::new().with("case.toml", GOOD).run(&["plan", "case.toml"], "");
    assert_eq!((done.code, done.err.as_str()), (0, ""));
}

#[test]
fn numbers_that_are_none() {
    let range = "accepted: 12 to 40 mm, at most 2 decimals (shorter and longer eyes are not met)";
    for (typed, wrong) in [
        ("23,46", "a comma; write the decimal point as a point, as in 23.5"),
        ("23, 46", "a comma; write the decimal point as a point, as in 23.5"),
        ("1,023.46", "a comma; write the decimal point as a point, as in 23.5"),
        ("\"23.46\"", "a number in quotes; write the number without quotes"),
        ("nan", "not a plain decimal number"),
        ("-inf", "not a plain decimal number"),
        ("1e999", "not a plain decimal number"),
        ("2.346e1", "not a plain decimal number"),
        ("2_3.46", "not a plain decimal number"),
        ("0x17", "not a plain decimal number"),
        (".5", "not a plain decimal number"),
        ("23.", "not a plain decimal number"),
        ("23.46 mm", "not a plain decimal number"),
        ("23.46mm", "not a plain decimal number"),
        ("\u{2212}23.46", "not a plain decimal number"),
        ("true", "not a plain decimal number"),
        ("{ mm = 23.46 }", "not a plain decimal number"),
        ("23.461", "more decimals than this entry has"),
        ("23.4600000000000001", "too long to be held exactly"),
        ("11.99", "outside the range that is accepted"),
        ("40.01", "outside the range that is accepted"),
        ("-23.46", "outside the range that is accepted"),
    ] {
        let problem = one("axial_length_mm = 23.46", &format!("axial_length_mm = {typed} # why"));
        let said = format!("case.toml:6: axial_length_mm = {typed}: {wrong}");
        assert!(problem.starts_with(&said), "{problem}\n{said}");
        assert!(problem.contains(range), "{problem}");
    }
}

#[test]
fn entries_that_are_not_toml() {
    for (typed, wrong) in [
        ("axial_length_mm: 23.46", "no equals sign after a key"),
        ("axial_length_mm", "no equals sign after a key"),
        ("axial_length_mm =", "not a plain decimal number"),
        ("axial_length_mm = [23.46]", "a list, not a value"),
        ("axial_length_mm = 023.46", "unexpected leading zero"),
    ] {
        let problem = one("axial_length_mm = 23.46", typed);
        assert!(problem.starts_with("case.toml:6: axial_length_mm"), "{problem}");
        assert!(problem.contains(wrong) && problem.contains("12 to 40 mm"), "{problem}");
    }
}

#[test]
fn words_names_and_dates() {
    let words = "accepted: one of \"right\", \"left\"";
    for (line, typed, wrong, accepted) in [
        ("eye = \"right\"", "eye = \"RIGHT\"", "not one of the words that are accepted", words),
        ("eye = \"right\"", "eye = right", "a word without quotes", words),
        ("eye = \"right\"", "eye = 1", "not a word in quotes", words),
        ("eye = \"right\"", "eye = \"right", "invalid basic string", "one of \"right\", \"left\""),
        ("guttata = \"no\"", "guttata = false", "not a word in quotes", "accepted: one of \"no\", \"yes\""),
        ("id = \"test\"", "id = 7", "not a word in quotes", "1 to 24 printable ASCII characters, in quotes"),
        ("id = \"test\"", "id = \"\"", "not a name of 1 to 24", "1 to 24 printable ASCII characters, in quotes"),
        ("id = \"test\"", "id = \"tést\"", "not a name of 1 to 24", "1 to 24 printable ASCII characters, in quotes"),
        (
            "surgery_date = 2026-12-01",
            "surgery_date = 2026-02-30",
            "not a calendar date",
            "accepted: a date as YYYY-MM-DD",
        ),
        (
            "surgery_date = 2026-12-01",
            "surgery_date = 01.12.2026",
            "not a calendar date",
            "accepted: a date as YYYY-MM-DD",
        ),
        (
            "surgery_date = 2026-12-01",
            "surgery_date = \"1 Dec\"",
            "not a calendar date",
            "accepted: a date as YYYY-MM-DD",
        ),
        ("surgery_date = 2026-12-01", "surgery_date = 2026-12-01T08:00:00", "not a calendar date", "YYYY-MM-DD"),
    ] {
        let number = 1 + GOOD.lines().position(|l| l == line).unwrap_or(usize::MAX - 1);
        let problem = one(line, typed);
        assert!(problem.starts_with(&format!("case.toml:{number}: {typed}: {wrong}")), "{problem}");
        assert!(problem.contains(accepted), "{problem}");
    }
}

#[test]
fn dates_may_be_in_quotes() {
    let case = GOOD.replace("2026-12-01", "\"2026-12-01\"");
    assert_eq!(Folder::new().with("case.toml", case).run(&["plan", "case.toml"], "").code, 0);
}

#[test]
fn the_wrong_unit_is_recognised() {
    for (line, typed, looks) in [
        ("k1_d = 43.25", "k1_d = 7.80", "it looks like a corneal radius in mm: r1_mm"),
        ("axial_length_mm = 23.46", "axial_length_mm = 234.6", "a length without its decimal point"),
        (
            "axial_length_mm = 23.46",
            "axial_length_mm = 2.346",
            "more decimals than this entry has; it looks like centimetres",
        ),
        ("altitude_m = 1609", "altitude_m = 12000", "it looks like feet; this entry is in metres"),
    ] {
        let problem = one(line, typed);
        assert!(problem.contains(&format!(": {typed}: ")) && problem.contains(looks), "{problem}");
    }
}

#[test]
fn a_misspelt_key_is_reported_with_its_neighbour() {
    let problems = refused(GOOD.replacen("axial_length_mm", "Axial_lenght", 1));
    assert_eq!(problems.len(), 2, "{problems:#?}");
    assert!(problems[0].starts_with("case.toml:6: Axial_lenght = 23.46: no entry of a case has this key"));
    assert!(problems[0].contains("accepted: in [biometry], perhaps axial_length_mm (axial length)"));
    assert!(problems[1].starts_with("case.toml: axial_length_mm: not given, and the case needs it"));
    assert!(problems[1].contains("accepted: in [biometry], 12 to 40 mm"));

    let problem = one("k1_d = 43.25", "k1_d = 43.25\nqqqqqq = 1");
    assert!(problem.starts_with("case.toml:8: qqqqqq = 1: no entry of a case has this key"), "{problem}");
    assert!(problem.contains("axial_length_mm, k1_d, k1_axis_deg") && !problem.contains("target_d"), "{problem}");
}

#[test]
fn a_key_in_the_wrong_table_is_reported_with_its_own() {
    let problem = one("[target]\n", "[target]\na_constant = 118.90\n").replace('\n', " ");
    assert_eq!(
        problem,
        "case.toml:18: a_constant = 118.90: this key does not stand in [target]     accepted: in [lens]"
    );
    let problem = one("id = \"test\"", "k1_axis_deg = 90");
    assert!(problem.starts_with("case.toml:1: k1_axis_deg = 90: this key does not stand before the first table"));
    assert!(problem.contains("accepted: in [biometry]"), "{problem}");
}

#[test]
fn tables() {
    for (typed, wrong, accepted) in [
        ("[presure]", "[presure]", "perhaps [pressure]"),
        (
            "[qqqqqqqqq]",
            "[qqqqqqqqq]",
            "[biometry], [spectacles], [fellow], [target], [laser], [lens], [toric], [certainty], [backup], [second]",
        ),
    ] {
        let problem = one("[pressure]", typed);
        assert!(
            problem.starts_with(&format!("case.toml:25: {wrong}: no table of a case file has this name")),
            "{problem}"
        );
        assert!(problem.contains(accepted), "{problem}");
    }
    let problem = one("[pressure]", "[[pressure]]");
    assert!(problem.starts_with("case.toml:25: [[pressure]]: a table, not a value or a list"), "{problem}");
    assert!(problem.contains("accepted: [pressure] once"), "{problem}");
    let problem = one("[pressure]", "[pressure");
    assert!(problem.starts_with("case.toml:25: [pressure: unclosed table"), "{problem}");
}

#[test]
fn twice_is_reported_with_the_first() {
    let problem = one("k1_d = 43.25", "k1_d = 43.25\nk1_d = 43.50");
    assert!(problem.starts_with("case.toml:8: k1_d = 43.50: given twice; first on line 7"), "{problem}");
    let problem = one("[risks]", "[target]\nvertex_mm = 12.0\n[risks]");
    assert!(problem.starts_with("case.toml:28: [target]: given twice; first on line 17"), "{problem}");
}

#[test]
fn entries_that_need_or_contradict_another() {
    for (line, typed, said, accepted) in [
        (
            "k2_d = 44.00\n",
            "",
            "case.toml: k2_d: not given, and an entry that was made needs it",
            "in [biometry], 25 to 65 D",
        ),
        ("acd_from = \"epithelium\"\n", "", "case.toml: acd_from: not given", "one of \"epithelium\", \"endothelium\""),
        ("eye_state = \"phakic\"\n", "", "case.toml: eye_state: not given, and the case needs it", "\"pseudophakic\""),
        (
            "biometry_date = 2026-10-12",
            "biometry_date = 2026-12-02",
            "case.toml:15: biometry_date = 2026-12-02: does not agree",
            "not later than surgery_date",
        ),
        (
            "k2_d = 44.00",
            "k2_d = 44.00\nr1_mm = 7.80\nr2_mm = 7.50",
            "case.toml:10: r2_mm = 7.50: does not agree",
            "the radius of k2_d at the keratometric_index",
        ),
        (
            "a_constant = 118.90",
            "a_constant = 118.90\nlens_least_d = 10.00\nlens_most_d = 5.00",
            "case.toml:24: lens_most_d = 5.00: does not agree",
            "not below lens_least_d",
        ),
    ] {
        let problem = one(line, typed);
        assert!(problem.starts_with(said), "{problem}");
        assert!(problem.contains(accepted), "{problem}");
    }
}

#[test]
fn nothing_at_all() {
    for empty in ["", "\n \n", "\u{feff}"] {
        let problems = refused(empty);
        assert_eq!(problems.len(), 1);
        assert!(problems[0].starts_with("case.toml: the file is empty\n    accepted: "), "{}", problems[0]);
    }
    let problems = refused("# only a comment\n");
    assert!(problems.iter().any(|p| p.starts_with("case.toml: axial_length_mm: not given")), "{problems:#?}");
}

#[test]
fn bytes_that_are_not_text() {
    let mut bytes = GOOD.replacen("test", "t\u{e9}st", 1).into_bytes();
    bytes.remove(7);
    for bytes in [bytes, b"\xff\xfee\0y\0e\0".to_vec()] {
        let problems = refused(&bytes);
        assert_eq!(problems, ["case.toml:1: not UTF-8 text\n    accepted: plain text, saved as UTF-8"]);
    }
}

#[test]
fn byte_order_mark_and_line_ends_of_other_machines_are_fine() {
    let case = format!("\u{feff}{}", GOOD.replace('\n', "\r\n"));
    let done = Folder::new().with("case.toml", &case).run(&["plan", "case.toml"], "");
    assert_eq!((done.code, done.err.as_str()), (0, ""));
    let problems = refused(case.replace("23.46", "23,46"));
    assert_eq!(problems.len(), 1);
    assert!(problems[0].starts_with("case.toml:6: axial_length_mm = 23,46: a comma"), "{}", problems[0]);
}

#[test]
fn control_characters_are_not_passed_on() {
    let problems = refused(GOOD.replacen("test", "\u{1b}[31mtest", 1));
    assert!(problems.iter().all(|problem| !problem.contains('\u{1b}')), "{problems:#?}");
}

#[test]
fn every_mistake_is_reported_in_the_order_of_the_file() {
    let case = GOOD
        .replace("eye = \"right\"", "eye = \"both\"")
        .replace("axial_length_mm = 23.46", "axial_length_mm: 23.46")
        .replace("k1_d = 43.25", "k1_d = 43,25")
        .replace("target_d = -0.25", "target_d = \"-0.25\"")
        .replace("altitude_m = 1609", "altitude_m = 99999");
    let problems = refused(case);
    let starts =
        ["case.toml:2: eye", "case.toml:6: axial", "case.toml:7: k1_d", "case.toml:18: target_d", "case.toml:26: alt"];
    assert_eq!(problems.len(), starts.len(), "{problems:#?}");
    assert!(problems.iter().zip(starts).all(|(problem, start)| problem.starts_with(start)), "{problems:#?}");
}

#[test]
fn the_invented_mistakes_are_all_named() {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data/mistakes/everything.toml");
    let done = Folder::new().run(&["plan", file], "");
    assert_eq!(done.code, 2);
    let text = std::fs::read_to_string(file).unwrap_or_default();
    let entries = text.lines().enumerate().filter(|(_, line)| line.contains(" = ") && !line.starts_with("id"));
    for (index, _) in entries {
        assert!(done.err.contains(&format!("everything.toml:{}: ", index + 1)), "line {}: {}", index + 1, done.err);
    }
}

#[test]
fn a_file_that_is_not_there() {
    let done = Folder::new().run(&["plan", "absent.toml"], "");
    assert_eq!((done.code, done.out.as_str()), (2, ""));
    assert!(done.err.starts_with("absent.toml: cannot be read: "), "{}", done.err);
}

#[test]
fn one_wrong_byte_anywhere_is_reported_or_harmless() {
    let (mut told, mut harmless) = (0, 0);
    for at in 0..GOOD.len() {
        for byte in *b"\0\n\r\"'#,.=[]{-5a \xff" {
            let mut bytes = GOOD.as_bytes().to_vec();
            bytes[at] = byte;
            let lines = bytes.iter().filter(|byte| **byte == b'\n').count() + 1;
            match case_file::case("case.toml", &bytes, None) {
                Ok(_) => harmless += 1,
                Err(problems) => {
                    told += 1;
                    assert!(!problems.is_empty(), "{at} {byte}");
                    for problem in problems {
                        assert!(problem.line.is_none_or(|line| (1..=lines).contains(&line)), "{at} {byte}: {problem}");
                        assert!(!problem.wrong.is_empty() && !problem.accepted.is_empty(), "{at} {byte}: {problem}");
                    }
                }
            }
        }
    }
    assert!(told > 1000 && harmless > 100, "{told} {harmless}");
}

#[test]
fn what_is_not_a_case_at_all_is_not_reported_for_ever() {
    let problems = refused("x\n".repeat(5000));
    assert_eq!(problems.len(), 101);
    assert_eq!(problems[100], "case.toml: much is wrong; not all of it is listed here");
    let problems = refused("#".repeat(1 << 21));
    assert_eq!(
        problems,
        ["case.toml: too long for a case, a list of lenses, or a group of eyes\n    accepted: at most 1 MiB"]
    );
}
