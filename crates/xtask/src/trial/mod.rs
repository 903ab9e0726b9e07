//! Whether it takes as little to add something as the page "How to add" says: a part of the card and a lens method are added to a copy
//! of the tree, built, asked, and counted by the files that they touch.

mod addition;
mod tree;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use serde_json::Value;

use addition::{Addition, inserted};
use tree::Tree;

use crate::run;

/// What is added, one after the other.
const ADDED: [&str; 2] = ["part", "method"];

/// The case that is asked about, with the method that is usually hidden.
const CASE: &str = "demo-data/average.toml";
const SHOWN: [&str; 2] = ["\n[lens]\n", "show_srk2 = \"yes\"\n"];

/// Adds, counts, builds and asks.
pub(crate) fn all() -> Result<String, String> {
    let tree = Tree::of_git(run::root())?;
    let case = tree.0.get(Path::new(CASE)).ok_or_else(|| format!("{CASE}: there is no such file"))?;
    let case = inserted(&String::from_utf8_lossy(case), SHOWN[0], SHOWN[1]).map_err(|why| format!("{CASE}: {why}"))?;
    let additions = ADDED.map(Addition::read).into_iter().collect::<Result<Vec<_>, _>>()?;
    let (mut copy, mut said) = (tree, Vec::new());
    for (name, (addition, new)) in ADDED.iter().zip(&additions) {
        let before = copy.clone();
        addition.add(new, &mut copy)?;
        said.push(counted(name, addition.most, &copy.differing(&before))?);
    }
    let folder = run::target("trial").join("copy");
    copy.write(&folder)?;
    let more: String = additions.iter().map(|(addition, _)| addition.entries.as_str()).collect();
    let longer = format!("{case}{more}");
    for ask in additions.iter().flat_map(|(addition, _)| &addition.asks) {
        println!("{}: {}", ask.arguments.join(" "), ask.says);
        let (_, answer) = run::answer(ocellus(in_copy(&folder)).args(&ask.arguments), longer.as_bytes())?;
        if !ask.is_in(&answer) {
            return Err(format!("ocellus {}: does not say `{}`, but\n{answer}", ask.arguments.join(" "), ask.says));
        }
    }
    let before = powers(ocellus(run::cargo(&[])), &case)?;
    untouched(&before, &powers(ocellus(in_copy(&folder)), &longer)?)?;
    said.push(format!("{} numbers of other methods as before", before.len()));
    said.push(tests(&folder, &copy)?);
    said.push(evidence(
        &folder,
        additions.iter().flat_map(|(addition, _)| &addition.moves).map(String::as_str).collect(),
    )?);
    Ok(said.join("; "))
}

/// Shows the files, and whether they are few enough.
fn counted(name: &str, most: usize, touched: &BTreeSet<&Path>) -> Result<String, String> {
    let said = format!("a {name} touches {} of {most} files", touched.len());
    println!("{said}");
    touched.iter().for_each(|path| println!("    {}", path.display()));
    if touched.len() <= most { Ok(said) } else { Err(said) }
}

/// Cargo in the copy, where a warning is an error; what it builds stays for the next time.
fn in_copy(folder: &Path) -> Command {
    let mut cargo = run::cargo(&[]);
    cargo.current_dir(folder).env("CARGO_TARGET_DIR", run::target("trial").join("built"));
    cargo.env("RUSTFLAGS", run::flags(&["-Dwarnings"]));
    cargo
}

/// The desk's program.
fn ocellus(mut cargo: Command) -> Command {
    cargo.args(["run", "--quiet", "--package", "ocellus-cli", "--"]);
    cargo
}

/// Runs the tests of what must hold of every part, caution and number of a method, once the lists that they keep are made anew.
fn tests(folder: &Path, copy: &Tree) -> Result<String, String> {
    const LISTS: [&str; 7] =
        ["test", "--quiet", "--package", "ocellus-link", "--test", "link", "the_list_is_the_tables"];
    const TESTS: [(&str, &[&str]); 3] = [
        ("ocellus-card", &["architecture", "parts", "tables", "texts"]),
        ("ocellus-link", &["link"]),
        ("ocellus-tests", &["cautions"]),
    ];
    run::run(in_copy(folder).args(LISTS).env("BLESS", "1"))?;
    let mut cargo = in_copy(folder);
    cargo.args(["test", "--quiet"]);
    for (package, tests) in TESTS {
        cargo.args(["--package", package]).args(tests.iter().flat_map(|test| ["--test", test]));
    }
    run::run(&mut cargo)?;
    let now = Tree::of_folder(folder)?;
    let kept: Vec<_> = now.differing(copy).iter().map(|path| path.display().to_string()).collect();
    Ok(format!("BLESS=1 makes {} anew", kept.join(", ")))
}

/// Runs every check of the copy: all must hold but what is known to move, and every function have its evidence.
fn evidence(folder: &Path, moves: BTreeSet<&str>) -> Result<String, String> {
    const REPORT: [&str; 6] = ["run", "--quiet", "--package", "ocellus-evidence", "--bin", "evidence"];
    let (_, report) = run::answer(in_copy(folder).args(REPORT), &[])?;
    let last = report.lines().last().ok_or("evidence printed nothing")?;
    let fault =
        |line: &'_ str| line.strip_prefix("FAILS ").or(line.strip_prefix("WITHOUT EVIDENCE ")).map(str::to_owned);
    let faults: Vec<String> = report.lines().filter_map(fault).collect();
    let failing: BTreeSet<&str> = faults.iter().filter_map(|fault| fault.split([':', ' ']).next()).collect();
    if failing != moves {
        return Err(format!("evidence: {moves:?} alone may fail, but {last}\n{}", faults.join("\n")));
    }
    println!("evidence: {last}");
    Ok(format!("its evidence holds, and moves {} values that rest on all methods", moves.len()))
}

/// What every method says of a case, by name: its lens, where that stands, and what the lens chosen leaves.
fn powers(mut ocellus: Command, case: &str) -> Result<BTreeMap<String, Value>, String> {
    let (_, card) = run::answer(ocellus.args(["plan", "--json", "-"]), case.as_bytes())?;
    let card: Value = serde_json::from_str(&card).map_err(|error| format!("ocellus plan --json: {error}"))?;
    let items = || card["items"].as_array().into_iter().flatten();
    let named = |item: &Value| Some((item["id"].as_str()?.to_owned(), item["value"].clone()));
    let all: BTreeMap<_, _> = items().filter_map(named).collect();
    let methods = items().filter(|item| item["name"] == POWER_FOR_TARGET);
    let keys = methods.filter_map(|item| item["id"].as_str()?.strip_suffix("_power_d"));
    let ids = keys.flat_map(|key| ["power_d", "lens_position_mm", "refraction_d"].map(|of| format!("{key}_{of}")));
    Ok(ids.filter_map(|id| all.get(&id).map(|value| (id.clone(), value.clone()))).collect())
}

/// How a card names a method's lens.
const POWER_FOR_TARGET: &str = "exact power for target";

/// Whether all that was said before is said after, and more.
fn untouched(before: &BTreeMap<String, Value>, after: &BTreeMap<String, Value>) -> Result<(), String> {
    if before.is_empty() || after.len() <= before.len() {
        return Err(format!("{} numbers of methods before and {} after", before.len(), after.len()));
    }
    match before.iter().find(|(id, value)| after.get(*id) != Some(*value)) {
        Some((id, value)) => Err(format!("{id} was {value} before, and is {:?} after", after.get(id))),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn numbers(all: &[(&str, f64)]) -> BTreeMap<String, Value> {
        all.iter().map(|(id, value)| ((*id).into(), (*value).into())).collect()
    }

    #[test]
    fn numbers_that_move_or_go_are_seen_and_so_is_nothing_new() {
        let before = numbers(&[("a_power_d", 21.5), ("b_power_d", 21.0)]);
        let after = |a, more: &[(&str, f64)]| untouched(&before, &numbers(&[&[("a_power_d", a)], more].concat()));
        assert_eq!(after(21.5, &[("b_power_d", 21.0), ("c_power_d", 20.0)]), Ok(()));
        assert!(
            after(21.6, &[("b_power_d", 21.0), ("c_power_d", 20.0)]).unwrap_err().starts_with("a_power_d was 21.5")
        );
        assert!(
            after(21.5, &[("c_power_d", 20.0), ("d_power_d", 20.0)]).unwrap_err().starts_with("b_power_d was 21.0")
        );
        assert!(after(21.5, &[("b_power_d", 21.0)]).is_err());
    }
}
