//! The command line itself: help, exit codes, pipes, and what is asked at the terminal.

mod ocellus;
use ocellus::{Folder, GOOD};
use ocellus_card::id::EntryId;
use serde_json::Value;
use std::process::Stdio;

#[test]
fn help_is_enough_to_start() {
    let done = Folder::new().run(&["--help"], "");
    assert_eq!(done.code, 0);
    for part in [
        "Not a medical device; teaching and independent arithmetic check only;",
        "ocellus plan case.toml",
        "ocellus explain srkt case.toml",
        "ocellus batch eyes.csv",
        "Exit codes:",
        "  1  something was refused",
    ] {
        assert!(done.out.contains(part), "{part}\n{}", done.out);
    }
    assert_eq!(done.out.lines().find(|line| line.chars().count() > 80), None);
}

#[test]
fn the_case_in_the_help_is_a_case() {
    let help = Folder::new().run(&["--help"], "").out;
    let (start, end) = (help.find("  eye = ").unwrap(), help.find("Exit codes:").unwrap());
    let done = Folder::new().run(&["plan", "-"], &help[start..end]);
    assert_eq!((done.code, done.err.as_str()), (0, ""));
}

#[test]
fn wrong_usage_ends_with_2() {
    for arguments in
        [&[][..], &["plan"], &["plan", "a", "b"], &["paln", "case.toml"], &["plan", "c", "--jsn"], &["explain"]]
    {
        let done = Folder::new().run(arguments, "");
        assert_eq!((done.code, done.out.as_str()), (2, ""), "{arguments:?}");
        assert!(!done.err.is_empty());
    }
}

#[test]
fn standard_input_gives_the_same_card() {
    let from_file = Folder::new().with("case.toml", GOOD).run(&["plan", "case.toml"], "");
    let from_input = Folder::new().run(&["plan", "-"], GOOD);
    assert_eq!((from_file.code, from_input.code), (0, 0));
    assert_eq!(from_file.out, from_input.out);
    assert!(!from_file.out.contains('\u{1b}'), "no colour where no terminal is");
    let done = Folder::new().run(&["plan", "-"], "eye = \"right\"\n");
    assert!(done.code == 2 && done.err.starts_with("standard input: axial_length_mm: not given"), "{}", done.err);
}

/// Room to write, sources in full, and lines that end as a desk's do: what a device's card has not.
#[test]
fn the_card_has_what_a_desk_has_room_for() {
    let case = include_str!("../../demo-data/long-toric.toml");
    let done = Folder::new().with("case.toml", case).run(&["plan", "case.toml"], "");
    for said in [
        "patient ____",
        "  first person ____",
        "al., J Cataract Refract Surg 2011;37:2018-2027; memory)",
        "--identify asks for two",
        "plus twelve point five zero dioptres",
    ] {
        assert!(done.out.contains(said), "{said}\n{}", done.out);
    }
    assert!(!done.out.contains('\r') && done.out.lines().all(|line| line.chars().count() < 80), "{}", done.out);
}

/// What is needed at the table, with every caution and the same code.
#[test]
fn the_short_card_is_part_of_the_whole() {
    let folder = Folder::new().with("case.toml", include_str!("../../demo-data/long-toric.toml"));
    let (short, whole) = (folder.run(&["plan", "case.toml", "--short"], ""), folder.run(&["plan", "case.toml"], ""));
    assert_eq!((short.code, short.err.as_str()), (0, ""));
    assert!(short.out.lines().count() < whole.out.lines().count() / 2, "{}", short.out);
    let of = |page: &str, start: &str| page.lines().filter(|line| line.starts_with(start)).map(str::to_owned).collect();
    for start in ["  CAUTION", "  lens power chosen", "  agreed target"] {
        let (some, all): (Vec<String>, Vec<String>) = (of(&short.out, start), of(&whole.out, start));
        assert!(!some.is_empty() && some == all, "{start}\n{}", short.out);
    }
    let code = |page: &str| page.split("Read-back --").nth(1).and_then(|end| end.lines().nth(1)).map(str::to_owned);
    assert!(code(&short.out).is_some() && code(&short.out) == code(&whole.out));
    assert_eq!(folder.run(&["plan", "case.toml", "--short", "--json"], "").code, 2);
}

#[test]
fn a_reader_who_leaves_early_changes_nothing() {
    let laser = GOOD.replace("\"none\"", "\"graft\"");
    let folder = Folder::new().with("good.toml", GOOD).with("graft.toml", laser);
    for (arguments, code) in [
        (&["plan", "good.toml"][..], 0),
        (&["plan", "graft.toml", "--json"], 1),
        (&["explain", "srkt", "good.toml"], 0),
        (&["fields"], 0),
        (&["--help"], 0),
    ] {
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let done = folder.command(arguments).stdout(writer).stderr(Stdio::piped()).output().unwrap();
        assert_eq!(done.status.code(), Some(code), "{arguments:?}");
        assert_eq!(String::from_utf8(done.stderr).unwrap(), "", "{arguments:?}");
    }
}

#[test]
fn identifiers_are_covered_and_not_shown() {
    let plan = |input: &str| {
        let done = Folder::new().with("case.toml", GOOD).run(&["plan", "case.toml", "--json", "--identify"], input);
        assert_eq!(done.code, 0, "{}", done.err);
        assert!(!done.out.contains("4711") && !done.err.contains("4711"));
        assert!(!done.out.contains("1950-02-03") && !done.err.contains("1950-02-03"));
        let card: Value = serde_json::from_str(&done.out).unwrap();
        (card["readback"].as_str().unwrap().to_owned(), done.err)
    };
    let (code, asked) = plan("4711\n1950-02-03\n");
    assert!(asked.contains("Hospital number: ") && asked.contains("Date of birth, YYYY-MM-DD: "));
    assert_eq!(plan("4711\r\n1950-02-03").0, code);
    assert_ne!(plan("4712\n1950-02-03\n").0[..4], code[..4]);
    // a line that is not a name is asked for again
    let (again, asked) = plan("\n4711\n1950-02-03\n");
    assert_eq!(again, code);
    assert!(asked.contains("not a name of 1 to 24"), "{asked}");
}

#[test]
fn identifiers_that_do_not_come() {
    let done = Folder::new().with("case.toml", GOOD).run(&["plan", "case.toml", "--identify"], "4711\n");
    assert_eq!((done.code, done.out.as_str()), (2, ""));
    assert!(done.err.contains("--identify: the input ended before both identifiers"), "{}", done.err);
    let done = Folder::new().run(&["plan", "-", "--identify"], GOOD);
    assert_eq!((done.code, done.out.as_str()), (2, ""));
    assert!(done.err.contains("--identify: the case was read from standard input"), "{}", done.err);
}

#[test]
fn every_entry_is_listed() {
    let (page, markdown) = (Folder::new().run(&["fields"], ""), Folder::new().run(&["fields", "--markdown"], ""));
    assert_eq!((page.code, markdown.code), (0, 0));
    for entry in EntryId::all() {
        let start = format!("  {} ", entry.key());
        assert_eq!(page.out.lines().filter(|line| line.starts_with(&start)).count(), 1, "{start}");
        let row = format!("| `{}` | `{}` | {} | ", entry.key(), entry.word(), entry.what());
        assert!(markdown.out.contains(&row), "{row}");
    }
    assert!(markdown.out.lines().any(|line| line.starts_with("| `vertex_mm` | ") && line.ends_with("| 12.0 mm |")));
    assert_eq!(page.out.lines().find(|line| line.chars().count() > 80), None);
}
