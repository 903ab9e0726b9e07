//! A part of the card is one folder, one `mod` line, one line in `parts!`, and one feature; and what it has keeps its number.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]
#![cfg(feature = "all")]

use ocellus_card::Subject;
use ocellus_card::entry::Kind;
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
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

/// Every part by its number, what it has by its own, and the words of its entries by theirs: what goes on a line between two
/// machines and into a read-back.
fn ids() -> Vec<String> {
    let mut parts: Vec<PartId> = PartId::all().collect();
    parts.sort_unstable();
    let mut lines = Vec::new();
    for part in parts {
        let key = part.key();
        lines.push(format!("part {} {key}", part.0));
        let mut of = |kind: &str, number: u8, name: String| lines.push(format!("{key} {kind} {number} {name}"));
        EntryId::all().filter(|e| e.part() == part).for_each(|e| of("entry", e.number(), e.key().to_string()));
        ItemId::all().filter(|i| i.part() == part).for_each(|i| of("item", i.number(), i.key().to_string()));
        CautionId::all().filter(|c| c.part() == part).for_each(|c| of("caution", c.number(), c.word().to_string()));
        SignOffId::all().filter(|s| s.part() == part).for_each(|s| of("sign_off", s.number(), s.key().to_string()));
        for subject in Subject::all().filter(|subject| subject.numbers().0 == part.0) {
            of("subject", subject.numbers().1, subject.key().to_string());
        }
        for entry in EntryId::all().filter(|entry| entry.part() == part) {
            if let Kind::Choice(words) = entry.kind() {
                lines
                    .extend(words.iter().enumerate().map(|(code, word)| format!("{} word {code} {word}", entry.key())));
            }
        }
    }
    lines
}

/// No row moves and none goes: a new one stands at the end of its part, and is taken into the list by `BLESS=1`.
#[test]
fn no_row_changes_its_number() {
    let (now, kept) = (ids(), read("tests/ids.txt"));
    let kept: Vec<&str> = kept.lines().collect();
    let moved: Vec<&&str> = kept.iter().filter(|line| !now.iter().any(|now| now == **line)).collect();
    assert!(moved.is_empty(), "moved or gone: {moved:#?}");
    if std::env::var_os("BLESS").is_some() {
        fs::write(path("tests/ids.txt"), now.join("\n") + "\n").unwrap();
        return;
    }
    let new: Vec<&String> = now.iter().filter(|line| !kept.contains(&line.as_str())).collect();
    assert!(new.is_empty(), "new, to be kept by BLESS=1: {new:#?}");
    assert_eq!(now, kept);
}
