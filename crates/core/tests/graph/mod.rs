//! Which file of a crate uses which, read from its source: `use` lines, paths anywhere, and macros.
//!
//! A path is that of the file in which its longest known module lies: `crate::parts::eye::Eye` is in `parts/eye/mod.rs`. A
//! module that declares another with `mod` does not use it by that.

mod reader;
mod tokens;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// Which file uses which.
pub(crate) struct Graph(BTreeMap<String, BTreeSet<String>>);

impl Graph {
    /// Reads the source of a crate.
    pub(crate) fn read(source: &Path) -> Graph {
        Graph(reader::read(source))
    }

    /// Every arrow, from the file that uses to the one that is used.
    pub(crate) fn arrows(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().flat_map(|(from, to)| to.iter().map(move |to| (from.as_str(), to.as_str())))
    }

    /// Every file that can be reached from one: itself only by a circle.
    fn reached<'a>(&'a self, from: &'a str) -> BTreeSet<&'a str> {
        let (mut reached, mut waiting) = (BTreeSet::new(), vec![from]);
        while let Some(file) = waiting.pop() {
            waiting.extend(self.0[file].iter().map(String::as_str).filter(|to| reached.insert(*to)));
        }
        reached
    }

    /// The circles: files each of which can be reached from each other.
    pub(crate) fn circles(&self) -> BTreeSet<Vec<&str>> {
        let reached: BTreeMap<&str, _> = self.0.keys().map(|file| (file.as_str(), self.reached(file))).collect();
        let in_circle = reached.iter().filter(|(file, to)| to.contains(*file));
        in_circle.map(|(file, to)| to.iter().copied().filter(|to| reached[to].contains(file)).collect()).collect()
    }

    /// Fails on a circle.
    pub(crate) fn has_no_circle(&self) {
        let circles = self.circles();
        assert!(circles.is_empty(), "{circles:#?}");
    }

    /// The arrows that lead from a lower room to a higher one.
    pub(crate) fn upward(&self, rooms: &[&[&str]]) -> BTreeSet<(&str, &str)> {
        let room: BTreeMap<&str, usize> = self.0.keys().map(|file| (file.as_str(), room(rooms, file))).collect();
        self.arrows().filter(|(from, to)| room[from] < room[to]).collect()
    }
}

/// The room of a file, from the lowest: the one that names it, or its name in any folder (`*/name.rs`), or else the folder that
/// it is in.
fn room(rooms: &[&[&str]], file: &str) -> usize {
    let is = |name: &str| name == file || name.strip_prefix('*').is_some_and(|end| file.ends_with(end));
    let find = |is: &dyn Fn(&str) -> bool| rooms.iter().position(|names| names.iter().any(|name| is(name)));
    let is_in = |name: &str| name.ends_with('/') && file.starts_with(name);
    find(&is).or_else(|| find(&is_in)).unwrap_or_else(|| panic!("{file} is in no room"))
}
