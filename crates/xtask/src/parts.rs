//! The card with each of its parts alone, without each, and without any: what no other build shows.

use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

use serde_json::Value;

use crate::run;

const PACKAGE: &str = "ocellus-card";

/// The features of a package, each with what it asks for.
type Features = BTreeMap<String, Vec<String>>;

/// Features that are built together.
type Set<'a> = BTreeSet<&'a str>;

/// Builds each set, and lets no warning pass.
pub(crate) fn all() -> Result<String, String> {
    let features = features()?;
    let sets = sets(&features);
    for (set, what) in &sets {
        println!("{PACKAGE}: {what}");
        let list = Vec::from_iter(set.iter().copied()).join(",");
        let arguments =
            ["clippy", "--quiet", "--package", PACKAGE, "--lib", "--no-default-features", "--features", &list];
        let mut cargo = run::cargo(&arguments);
        cargo.arg("--target-dir").arg(run::target("parts")).args(["--", "-D", "warnings"]);
        run::run(&mut cargo).map_err(|why| format!("{what}: {why}"))?;
    }
    Ok(format!("no warnings from {} sets of the card's {} parts", sets.len(), parts(&features).len()))
}

/// What the manifest says.
fn features() -> Result<Features, String> {
    let mut cargo: Command = run::cargo(&["metadata", "--no-deps", "--format-version", "1"]);
    let said = run::ask(&mut cargo).ok_or("`cargo metadata` does not answer")?;
    let mut said: Value = serde_json::from_str(&said).map_err(|error| format!("cargo metadata: {error}"))?;
    let mut packages = said["packages"].as_array_mut().into_iter().flatten();
    let package =
        packages.find(|package| package["name"] == PACKAGE).ok_or(format!("there is no package {PACKAGE}"))?;
    serde_json::from_value(package["features"].take()).map_err(|error| format!("features of {PACKAGE}: {error}"))
}

/// Those that are a part: all but the usual ones, and what is only a name for several.
fn parts(features: &Features) -> Set<'_> {
    let usual = features.get("default").into_iter().flatten();
    let several = usual.filter_map(|name| features.get(name));
    several.flatten().map(String::as_str).collect()
}

/// A feature, and all that it brings.
fn brought<'a>(features: &'a Features, by: &'a str) -> Set<'a> {
    let (mut brought, mut new) = (Set::new(), vec![by]);
    while let Some(feature) = new.pop() {
        if brought.insert(feature) {
            new.extend(features.get(feature).into_iter().flatten().map(String::as_str));
        }
    }
    brought
}

/// Every set once, and what it is: nothing, a part with what it needs, or all but a part and those that need it.
fn sets(features: &Features) -> BTreeMap<Set<'_>, String> {
    let parts = parts(features);
    let mut sets = BTreeMap::from([(Set::new(), "no part".to_owned())]);
    for part in &parts {
        let without = parts.iter().copied().filter(|other| !brought(features, other).contains(part)).collect();
        sets.entry(brought(features, part)).or_insert(format!("{part} alone"));
        sets.entry(without).or_insert(format!("all without {part}"));
    }
    sets
}

#[cfg(test)]
mod tests {
    use super::*;

    fn features_of(lines: &[(&str, &[&str])]) -> Features {
        lines.iter().map(|(name, list)| ((*name).into(), list.iter().map(|other| (*other).into()).collect())).collect()
    }

    #[test]
    fn a_part_comes_with_what_it_needs_and_goes_with_those_that_need_it() {
        let features = features_of(&[
            ("default", &["all"]),
            ("all", &["eye", "lens", "pressure", "turn"]),
            ("eye", &[]),
            ("lens", &["eye"]),
            ("pressure", &[]),
            ("turn", &["lens"]),
        ]);
        let expected: [(&[&str], &str); 7] = [
            (&[], "no part"),
            (&["eye"], "eye alone"),
            (&["eye", "lens"], "lens alone"),
            (&["eye", "lens", "pressure"], "all without turn"),
            (&["eye", "lens", "turn"], "all without pressure"),
            (&["eye", "pressure"], "all without lens"),
            (&["pressure"], "all without eye"),
        ];
        let expected = expected.map(|(set, what)| (set.iter().copied().collect(), what.to_owned()));
        assert_eq!(sets(&features), BTreeMap::from(expected));
    }

    #[test]
    fn the_card_has_parts() {
        let features = features().unwrap();
        assert!(parts(&features).contains("lens") && !parts(&features).contains("all"));
        assert!(brought(&features, "turn").contains("eye"));
    }
}
