//! A part of the card is one folder, one `mod` line, one line in `parts!`, and one feature.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]
#![cfg(feature = "all")]

use ocellus_card::id::PartId;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Parts that are always there: no feature of their own.
const ALWAYS: [&str; 6] = ["general", "identity", "set_up", "also_used", "unused", "sign_off"];

fn path(of: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(of)
}

fn read(of: &str) -> String {
    fs::read_to_string(path(of)).unwrap()
}

/// The folders of parts.
fn folders() -> BTreeSet<String> {
    let entries = fs::read_dir(path("src/parts")).unwrap().map(|entry| entry.unwrap().path());
    let folders = entries.filter(|path| path.is_dir());
    folders.map(|path| path.file_name().unwrap().to_string_lossy().into_owned()).collect()
}

/// The parts that lines name, each with the feature that it needs, if any; from the line, or from the one before it.
fn named(lines: &str, name: impl Fn(&str) -> Option<String>) -> BTreeMap<String, Option<String>> {
    let (mut parts, mut waiting) = (BTreeMap::new(), None);
    for line in lines.lines().map(str::trim) {
        let (cfg, rest) = match line.strip_prefix("#[cfg(feature = \"").and_then(|line| line.split_once("\")]")) {
            Some((feature, rest)) => (Some(feature.to_owned()), rest.trim()),
            None => (waiting.take(), line),
        };
        if rest.is_empty() {
            waiting = cfg;
        } else if let Some(part) = name(rest) {
            assert!(parts.insert(part.clone(), cfg).is_none(), "{part} stands twice");
        }
    }
    parts
}

/// Each folder, with its feature where it is not always there.
fn expected() -> BTreeMap<String, Option<String>> {
    let feature = |part: &String| (!ALWAYS.contains(&part.as_str())).then(|| part.clone());
    folders().into_iter().map(|part| (part.clone(), feature(&part))).collect()
}

#[test]
fn each_folder_has_its_mod_line() {
    let text = read("src/parts/mod.rs");
    let mods = named(&text, |line| Some(line.strip_prefix("pub mod ")?.strip_suffix(';')?.to_owned()));
    assert_eq!(mods, expected());
}

#[test]
fn each_folder_has_its_line_among_the_parts() {
    let text = read("src/parts/mod.rs");
    let lines = text.split_once("$then! {").unwrap().1.split_once("\n        }").unwrap().0;
    assert_eq!(named(lines, |line| Some(line.split_once(" of ")?.0.to_owned())), expected());
}

/// The features of the manifest, each with those that it asks for.
fn features() -> BTreeMap<String, Vec<String>> {
    let text = read("Cargo.toml");
    let section = text.split_once("\n[features]\n").unwrap().1.split("\n[").next().unwrap();
    let lines: String = section.lines().filter(|line| !line.starts_with('#')).collect();
    let quoted = |list: &str| list.split('"').skip(1).step_by(2).map(str::to_owned).collect();
    let each = lines.split(']').filter_map(|feature| feature.split_once('='));
    each.map(|(name, list)| (name.trim().to_owned(), quoted(list))).collect()
}

#[test]
fn each_folder_is_a_feature() {
    let parts: Vec<String> = expected().into_values().flatten().collect();
    let mut features = features();
    assert_eq!(features.remove("default"), Some(vec!["all".to_owned()]));
    assert_eq!(features.remove("all").as_ref(), Some(&parts));
    assert_eq!(features.keys().cloned().collect::<Vec<_>>(), parts);
}

#[test]
fn each_folder_has_its_name_as_key() {
    assert_eq!(PartId::all().map(|part| part.key().to_string()).collect::<BTreeSet<_>>(), folders());
}
