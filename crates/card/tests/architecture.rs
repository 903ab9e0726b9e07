//! Arrows between files run one way: down the rooms of the house, down the parts of the card, and in no circle.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

#[path = "../../core/tests/graph/mod.rs"]
mod graph;

use graph::Graph;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// The rooms, from the lowest: each stands on those before it. What is in none is put into one before it is built.
const ROOMS: &[&[&str]] = &[
    // what each kind of thing is
    &[
        "text/",
        "id.rs",
        "name.rs",
        "date.rs",
        "words.rs",
        "crc.rs",
        "error.rs",
        "entry.rs",
        "entry_set.rs",
        "item.rs",
        "caution.rs",
        "sign_off.rs",
        "layout.rs",
        "sink.rs",
        "part.rs",
    ],
    // which parts there are, and what each has
    &["parts/mod.rs", "*/choices.rs", "*/steps.rs", "*/table.rs"],
    &["catalogue/", "names.rs"],
    // what was entered, and what goes out
    &["check.rs", "draft.rs"],
    &["entered.rs", "rule.rs"],
    &["out.rs"],
    // what each part says
    &["parts/"],
    &["known.rs", "limits.rs"],
    &["case.rs"],
    &["plan.rs", "explain.rs", "readback.rs"],
    &["lib.rs"],
];

/// The parts of the card, from the lowest: each uses those of the lines before it alone.
const PARTS: &[&[&str]] = &[
    &["general/", "target/", "set_up/", "also_used/", "unused/", "sign_off/"],
    &["identity/", "pressure/"],
    &["eye/", "chamber/", "tube/"],
    &["laser/", "toric/", "cornea/", "rhexis/", "risks/", "surge/"],
    &["lens/", "wound/", "end_of_case/"],
    &["certainty/", "second_eye/", "second/", "thick/", "backup/", "axis/", "after/"],
    &["turn/"],
];

fn folder() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn source() -> Graph {
    Graph::read(&folder().join("src"))
}

#[test]
fn no_files_use_each_other_in_a_circle() {
    source().has_no_circle();
}

#[test]
fn no_room_uses_a_higher_one() {
    assert_eq!(source().upward(ROOMS), BTreeSet::new());
}

/// Of the files of two parts, from the one that uses to the one that is used.
fn between_parts() -> Vec<(String, String)> {
    let part = |file: &str| file.strip_prefix("parts/").filter(|file| file.contains('/')).map(str::to_owned);
    let folder = |file: &str| file.split('/').next().map(str::to_owned);
    let arrows: Vec<_> = source().arrows().filter_map(|(from, to)| Some((part(from)?, part(to)?))).collect();
    arrows.into_iter().filter(|(from, to)| folder(from) != folder(to)).collect()
}

#[test]
fn no_part_uses_a_higher_one_or_one_beside_it() {
    let line = |file: &str| PARTS.iter().position(|parts| parts.iter().any(|part| file.starts_with(part)));
    let wrong: Vec<_> =
        between_parts().into_iter().filter(|(from, to)| line(from).unwrap() <= line(to).unwrap()).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The parts that a part's feature brings, itself among them.
fn brought(part: &str, manifest: &str, brings: &mut BTreeSet<String>) {
    if brings.insert(part.to_owned())
        && let Some(list) = manifest.lines().find_map(|line| line.strip_prefix(part)?.strip_prefix(" = "))
    {
        list.split('"').skip(1).step_by(2).for_each(|other| brought(other, manifest, brings));
    }
}

/// A part that is built by itself has all that it uses.
#[test]
fn a_feature_brings_what_its_part_uses() {
    let manifest = fs::read_to_string(folder().join("Cargo.toml")).unwrap();
    let has_feature = |part: &str| manifest.lines().any(|line| line.starts_with(&format!("{part} = [")));
    for (from, to) in between_parts() {
        let [user, used] = [&from, &to].map(|file| file.split('/').next().unwrap());
        let mut brings = BTreeSet::new();
        brought(user, &manifest, &mut brings);
        assert!(!has_feature(used) || brings.contains(used), "{from} uses {to}, and its feature does not bring it");
    }
}
