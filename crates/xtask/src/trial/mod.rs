//! Whether it takes as little to add something as the page "How to add" says: a part of the card and a lens method are added to a copy
//! of the tree, built, asked, and counted by the files that they touch.

mod addition;
mod copy;
mod numbers;
mod tree;

use std::collections::BTreeSet;
use std::path::Path;

use addition::{Addition, inserted};
use copy::Trial;
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
    let (mut longer, mut files, mut said) = (case.clone(), tree, Vec::new());
    for (name, (addition, new)) in ADDED.iter().zip(&additions) {
        let before = files.clone();
        addition.add(new, &mut files)?;
        longer += &addition.entries;
        said.push(counted(name, addition.most, &files.differing(&before))?);
    }
    let additions = || additions.iter().map(|(addition, _)| addition);
    let copy = Trial::of(files)?;
    for ask in additions().flat_map(|addition| &addition.asks) {
        ask.of(copy.ocellus()?, &longer)?;
    }
    let before = numbers::of_methods(copy::ocellus(run::cargo(&[])), &case)?;
    numbers::as_before(&before, &numbers::of_methods(copy.ocellus()?, &longer)?)?;
    said.push(format!("{} numbers of other methods as before", before.len()));
    said.push(copy.lists_and_tests()?);
    said.push(copy.evidence(additions().flat_map(|addition| &addition.moves).map(String::as_str).collect())?);
    Ok(said.join("; "))
}

/// Shows the files, and whether they are few enough.
fn counted(name: &str, most: usize, touched: &BTreeSet<&Path>) -> Result<String, String> {
    let said = format!("a {name} touches {} of {most} files", touched.len());
    println!("{said}");
    touched.iter().for_each(|path| println!("    {}", path.display()));
    if touched.len() <= most { Ok(said) } else { Err(said) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_file_too_many_is_one_too_many() {
        let touched = ["a", "b"].map(Path::new).into();
        assert_eq!(counted("part", 2, &touched).unwrap(), "a part touches 2 of 2 files");
        assert!(counted("part", 1, &touched).is_err());
    }
}
