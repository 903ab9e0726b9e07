//! Whether it takes as little to add something as the page "How to add" says: a part of the card and a lens method are added to a copy
//! of the tree, built, asked, and counted by the files that they touch.

mod addition;
mod tree;

use std::collections::BTreeMap;
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

/// Adds, builds, asks and counts.
pub(crate) fn all() -> Result<String, String> {
    let tree = Tree::of_git(run::root())?;
    let case = tree.0.get(Path::new(CASE)).ok_or_else(|| format!("{CASE}: there is no such file"))?;
    let case = inserted(&String::from_utf8_lossy(case), SHOWN[0], SHOWN[1]).map_err(|why| format!("{CASE}: {why}"))?;
    let (mut copy, mut asks, mut entries, mut said) = (tree.clone(), Vec::new(), String::new(), Vec::new());
    for name in ADDED {
        let before = copy.clone();
        let (addition, new) = Addition::read(name)?;
        addition.add(&new, &mut copy)?;
        let touched = copy.differing(&before);
        println!("a {name} touches {} files, of {} that it may:", touched.len(), addition.most);
        touched.iter().for_each(|path| println!("    {}", path.display()));
        if touched.len() > addition.most {
            return Err(format!("a {name} touches {} files, over its budget of {}", touched.len(), addition.most));
        }
        said.push(format!("{name} {} of {} files", touched.len(), addition.most));
        asks.extend(addition.asks);
        entries += &addition.entries;
    }
    let folder = run::target("trial").join("copy");
    copy.write(&folder)?;
    let longer = format!("{case}{entries}");
    for ask in &asks {
        let answer = run::answer(ocellus(in_copy(&folder)).args(&ask.arguments), longer.as_bytes())?;
        let asked = format!("ocellus {}", ask.arguments.join(" "));
        if !ask.is_in(&answer) {
            return Err(format!("{asked}: says not `{}`, but\n{answer}", ask.says));
        }
        println!("{asked}: {}", ask.says);
    }
    let before = powers(ocellus(run::cargo(&[])), &case)?;
    let after = powers(ocellus(in_copy(&folder)), &longer)?;
    untouched(&before, &after)?;
    println!("as before: {}", before.keys().cloned().collect::<Vec<_>>().join(", "));
    let evidence = run::run_and_keep(in_copy(&folder).args(EVIDENCE))?;
    let evidence = evidence.last().ok_or("evidence printed nothing")?;
    Ok(format!("{}; {} numbers of other methods as before; {evidence}", said.join(", "), before.len()))
}

const EVIDENCE: [&str; 6] = ["run", "--quiet", "--package", "ocellus-evidence", "--bin", "evidence"];

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

/// What every method says of a case, by name: its lens, where that stands, and what the lens chosen leaves.
fn powers(mut ocellus: Command, case: &str) -> Result<BTreeMap<String, Value>, String> {
    let card = run::answer(ocellus.args(["plan", "--json", "-"]), case.as_bytes())?;
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
