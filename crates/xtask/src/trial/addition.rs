//! What is added for a trial: new files, lines in others, and what a program then answers.

use std::path::PathBuf;
use std::process::Command;

use serde::Deserialize;

use super::tree::Tree;
use crate::run;

/// Where they stand: `NAME.toml`, and the new files in the folder of that name.
const FOLDER: &str = "crates/xtask/trial";

/// What is added.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Addition {
    /// How many files it may touch.
    pub(crate) most: usize,
    /// What is added to a case.
    #[serde(default)]
    pub(crate) entries: String,
    /// Which values of the evidence do not hold any more, since they rest on everything of its kind together.
    #[serde(default)]
    pub(crate) moves: Vec<String>,
    inserts: Vec<Insert>,
    pub(crate) asks: Vec<Ask>,
}

/// A text that goes into a file, behind another that stands in it once.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Insert {
    file: PathBuf,
    after: String,
    new: String,
}

/// What the program is asked about the case, and what it must say; how many blanks stand between two words is all the same.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ask {
    arguments: Vec<String>,
    says: String,
}

impl Addition {
    /// The one of that name, and its new files.
    pub(crate) fn read(name: &str) -> Result<(Self, Tree), String> {
        let file = run::root().join(FOLDER).join(name).with_extension("toml");
        let why = |error: &dyn std::fmt::Display| format!("{}: {error}", file.display());
        let text = std::fs::read_to_string(&file).map_err(|error| why(&error))?;
        let addition = toml::from_str(&text).map_err(|error| why(&error))?;
        Ok((addition, Tree::of_folder(&file.with_extension(""))?))
    }

    /// Adds it to a tree.
    pub(crate) fn add(&self, new: &Tree, tree: &mut Tree) -> Result<(), String> {
        for (path, bytes) in &new.0 {
            if tree.0.insert(path.clone(), bytes.clone()).is_some() {
                return Err(format!("{}: there is such a file already", path.display()));
            }
        }
        for insert in &self.inserts {
            let why = |error: &dyn std::fmt::Display| format!("{}: {error}", insert.file.display());
            let bytes = tree.0.get_mut(&insert.file).ok_or_else(|| why(&"there is no such file"))?;
            let text = std::str::from_utf8(bytes).map_err(|error| why(&error))?;
            *bytes = inserted(text, &insert.after, &insert.new).map_err(|error| why(&error))?.into();
        }
        Ok(())
    }
}

impl Ask {
    /// Asks a program about a case.
    pub(crate) fn of(&self, mut ocellus: Command, case: &str) -> Result<(), String> {
        let asked = self.arguments.join(" ");
        println!("ocellus {asked}: {}", self.says);
        let (succeeds, answer) = run::answer(ocellus.args(&self.arguments), case.as_bytes())?;
        if succeeds && self.is_in(&answer) {
            return Ok(());
        }
        Err(format!("ocellus {asked}: does not say `{}`, but\n{answer}", self.says))
    }

    /// Whether it is said.
    fn is_in(&self, answer: &str) -> bool {
        words(answer).contains(&words(&self.says))
    }
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The text with another behind one that stands in it once.
pub(crate) fn inserted(text: &str, after: &str, new: &str) -> Result<String, String> {
    match text.matches(after).count() {
        1 => Ok(text.replacen(after, &format!("{after}{new}"), 1)),
        count => Err(format!("to be inserted behind one `{}`, and there are {count}", after.trim())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn addition(after: &str) -> Addition {
        let inserts = vec![Insert { file: "list".into(), after: after.into(), new: "two\n".into() }];
        Addition { most: 2, entries: String::new(), moves: Vec::new(), inserts, asks: Vec::new() }
    }

    fn tree(files: &[(&str, &str)]) -> Tree {
        Tree(files.iter().map(|(path, text)| (path.into(), text.as_bytes().to_vec())).collect())
    }

    #[test]
    fn files_and_lines_are_added() {
        let (mut after, new) = (tree(&[("list", "one\nthree\n")]), tree(&[("folder/two", "2")]));
        addition("one\n").add(&new, &mut after).unwrap();
        assert_eq!(after, tree(&[("list", "one\ntwo\nthree\n"), ("folder/two", "2")]));
    }

    #[test]
    fn what_is_not_there_once_is_said() {
        let (list, nothing) = (tree(&[("list", "one\none\n")]), Tree::default());
        let why = |after: &str, new: &Tree, tree: &Tree| addition(after).add(new, &mut tree.clone()).unwrap_err();
        assert_eq!(why("four\n", &nothing, &list), "list: to be inserted behind one `four`, and there are 0");
        assert_eq!(why("one\n", &nothing, &list), "list: to be inserted behind one `one`, and there are 2");
        assert_eq!(why("one\n", &nothing, &nothing), "list: there is no such file");
        assert_eq!(why("one\n", &list, &list), "list: there is such a file already");
    }

    #[test]
    fn blanks_do_not_count_in_an_answer() {
        let ask = Ask { arguments: Vec::new(), says: "drawn 0.400 mL".into() };
        assert!(ask.is_in("  it is drawn        0.400 mL\n") && !ask.is_in("drawn 0.40 mL"));
    }

    /// In this very tree, by the files that it goes into.
    #[test]
    fn what_is_kept_can_be_added() {
        for name in super::super::ADDED {
            let (addition, new) = Addition::read(name).unwrap();
            let mut tree = Tree::read(run::root(), addition.inserts.iter().map(|insert| insert.file.clone())).unwrap();
            addition.add(&new, &mut tree).unwrap();
            assert!(!new.0.is_empty() && !addition.asks.is_empty());
        }
    }
}
