//! The same bits as when they were kept: of every number of the demonstration cases and of ten thousand drafts.
//!
//! A number that is meant to change is written again by `BLESS=1 cargo test --release -p ocellus-tests --test bits`, and named
//! in the CHANGELOG. These numbers are what the program gave; that it was right, the evidence shows.

use ocellus_tests::bits;
use std::fs;
use std::path::PathBuf;

fn holds(name: &str, now: &str) {
    let path = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/bits")).join(name);
    if std::env::var_os("BLESS").is_some() {
        fs::write(&path, now).expect("a file of bits");
    }
    let kept = fs::read_to_string(&path).expect("a file of bits");
    let (mut case, mut wrong) = ("", Vec::new());
    for (kept, now) in kept.lines().zip(now.lines()) {
        case = if kept.starts_with("case ") { kept } else { case };
        if kept != now {
            wrong.push(format!("{case}\n  kept {kept}\n  now  {now}"));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} lines of {name} differ, first:\n{}",
        wrong.len(),
        wrong[..wrong.len().min(20)].join("\n")
    );
    assert_eq!(kept.lines().count(), now.lines().count(), "{name}");
}

#[test]
fn the_numbers_of_the_demonstration_cases_are_as_they_were() {
    holds("cases.txt", &bits::cases());
}

#[test]
fn the_numbers_of_ten_thousand_drafts_are_as_they_were() {
    holds("drafts.txt", &bits::drafts());
}
