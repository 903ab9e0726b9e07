//! The copy that everything is added to: built, tested and asked where it lies.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::process::Command;

use super::tree::Tree;
use crate::run;

/// A copy of the tree with what was added.
pub(crate) struct Trial {
    folder: PathBuf,
    files: Tree,
}

impl Trial {
    /// Lays it where it lay the last time.
    pub(crate) fn of(files: Tree) -> Result<Self, String> {
        let folder = folder("copy")?;
        files.write(&folder)?;
        Ok(Self { folder, files })
    }

    /// Cargo in it, where a warning is an error; what it builds stays for the next time.
    fn cargo(&self, arguments: &[&str]) -> Result<Command, String> {
        let mut cargo = run::cargo(arguments);
        cargo.current_dir(&self.folder).env("CARGO_TARGET_DIR", folder("built")?);
        cargo.env("RUSTFLAGS", run::flags(&["-Dwarnings"]));
        Ok(cargo)
    }

    /// The desk's program of it.
    pub(crate) fn ocellus(&self) -> Result<Command, String> {
        self.cargo(&[]).map(ocellus)
    }

    /// Has the lists that tests keep made anew, then runs the tests of what must hold of every part, caution and number.
    pub(crate) fn lists_and_tests(&self) -> Result<String, String> {
        const LISTS: [&str; 7] =
            ["test", "--quiet", "--package", "ocellus-link", "--test", "link", "the_list_is_the_tables"];
        const TESTS: [(&str, &[&str]); 3] = [
            ("ocellus-card", &["architecture", "parts", "tables", "texts"]),
            ("ocellus-link", &["link"]),
            ("ocellus-tests", &["cautions"]),
        ];
        run::run(self.cargo(&LISTS)?.env("BLESS", "1"))?;
        let mut cargo = self.cargo(&["test", "--quiet"])?;
        for (package, tests) in TESTS {
            cargo.args(["--package", package]).args(tests.iter().flat_map(|test| ["--test", test]));
        }
        run::run(&mut cargo)?;
        let now = Tree::of_folder(&self.folder)?;
        let lists: Vec<_> = now.differing(&self.files).iter().map(|path| path.display().to_string()).collect();
        Ok(format!("BLESS=1 makes {} anew", lists.join(", ")))
    }

    /// Runs every check: all must hold but those that are known to move, and every function have its evidence.
    pub(crate) fn evidence(&self, moves: BTreeSet<&str>) -> Result<String, String> {
        let mut cargo = self.cargo(&["run", "--quiet", "--package", "ocellus-evidence", "--bin", "evidence"])?;
        let (_, report) = run::answer(&mut cargo, &[])?;
        let last = report.lines().last().ok_or("evidence printed nothing")?;
        if failing(&report) != moves {
            return Err(format!("evidence: {moves:?} alone may fail, but {:?} do: {last}", failing(&report)));
        }
        println!("evidence: {last}");
        Ok(format!("its evidence holds, and moves {} values that rest on all methods", moves.len()))
    }
}

/// Which checks a report says to fail, and which functions to have none.
fn failing(report: &str) -> BTreeSet<&str> {
    let fault = |line: &'_ str| line.starts_with("FAILS ") || line.starts_with("WITHOUT EVIDENCE ");
    report
        .lines()
        .filter(|line| fault(line))
        .filter_map(|line| line.split(": ").next()?.split(' ').next_back())
        .collect()
}

/// A folder of this chore, the same from wherever cargo works.
fn folder(name: &str) -> Result<PathBuf, String> {
    std::path::absolute(run::target("trial").join(name)).map_err(|error| error.to_string())
}

/// The desk's program, by a cargo somewhere.
pub(crate) fn ocellus(mut cargo: Command) -> Command {
    cargo.args(["run", "--quiet", "--package", "ocellus-cli", "--"]);
    cargo
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_fails_and_what_lacks_evidence_is_seen() {
        let report = "FAILS rhexis-1: core::rhexis::working: gave 2 where 1 mm is printed\nWITHOUT EVIDENCE core::lens::power\n\
                      FAILS excepted.toml: core::lens::none: there is no such function\n140 published\n";
        assert_eq!(failing(report), ["core::lens::power", "excepted.toml", "rhexis-1"].into());
        assert!(failing("published 140, functions without evidence 0\n").is_empty());
    }
}
