//! The files of a project, as they are kept or as they are meant to be.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::run;

/// Each file by its path from the top.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Tree(pub(crate) BTreeMap<PathBuf, Vec<u8>>);

impl Tree {
    /// The files that git keeps or would keep, as they stand: work that nobody has committed yet is among them.
    pub(crate) fn of_git(folder: &Path) -> Result<Self, String> {
        const LIST: [&str; 5] = ["ls-files", "-z", "--cached", "--others", "--exclude-standard"];
        let listed = run::ask(Command::new("git").arg("-C").arg(folder).args(LIST));
        let listed = listed.ok_or_else(|| format!("{}: git lists no files there", folder.display()))?;
        // one that was taken away is still listed
        let paths = listed.split('\0').map(PathBuf::from).filter(|path| folder.join(path).is_file());
        Self::read(folder, paths)
    }

    /// Every file of a folder.
    pub(crate) fn of_folder(folder: &Path) -> Result<Self, String> {
        let mut paths = Vec::new();
        below(folder, &mut paths)?;
        let paths = paths.iter().filter_map(|path| path.strip_prefix(folder).ok());
        Self::read(folder, paths.map(Path::to_owned))
    }

    /// These files of a folder.
    pub(crate) fn read(folder: &Path, paths: impl Iterator<Item = PathBuf>) -> Result<Self, String> {
        let read = |path: PathBuf| fs::read(folder.join(&path)).map(|bytes| (path.clone(), bytes)).map_err(why(&path));
        paths.map(read).collect::<Result<_, _>>().map(Self)
    }

    /// Makes a folder hold these files and no others. What is so already stays as it is, so that nothing is built anew without need.
    pub(crate) fn write(&self, folder: &Path) -> Result<(), String> {
        fs::create_dir_all(folder).map_err(why(folder))?;
        let there = Self::of_folder(folder)?;
        for path in there.0.keys().filter(|path| !self.0.contains_key(*path)) {
            fs::remove_file(folder.join(path)).map_err(why(path))?;
        }
        for path in self.differing(&there).into_iter().filter(|path| self.0.contains_key(*path)) {
            let file = folder.join(path);
            let parent = file.parent().unwrap_or(folder);
            fs::create_dir_all(parent).and_then(|()| fs::write(&file, &self.0[path])).map_err(why(path))?;
        }
        Ok(())
    }

    /// The files that the other has not, or has otherwise, or alone.
    pub(crate) fn differing<'a>(&'a self, other: &'a Self) -> BTreeSet<&'a Path> {
        let paths = self.0.keys().chain(other.0.keys()).map(PathBuf::as_path);
        paths.filter(|path| self.0.get(*path) != other.0.get(*path)).collect()
    }
}

fn why<E: std::fmt::Display>(path: &Path) -> impl Fn(E) -> String + use<'_, E> {
    move |error| format!("{}: {error}", path.display())
}

fn below(folder: &Path, paths: &mut Vec<PathBuf>) -> Result<(), String> {
    for entry in fs::read_dir(folder).map_err(why(folder))? {
        let path = entry.map_err(why(folder))?.path();
        if path.is_dir() { below(&path, paths)? } else { paths.push(path) }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tree(files: &[(&str, &str)]) -> Tree {
        Tree(files.iter().map(|(path, text)| (path.into(), text.as_bytes().to_vec())).collect())
    }

    fn folder(name: &str) -> PathBuf {
        run::target("tests-of-xtask").join(format!("{name}-{}", std::process::id()))
    }

    #[test]
    fn a_folder_becomes_what_is_written() {
        let folder = folder("written");
        let first = tree(&[("a", "1"), ("b/c", "2"), ("b/d", "3")]);
        let then = tree(&[("a", "1"), ("b/c", "4"), ("e/f/g", "5")]);
        first.write(&folder).unwrap();
        let kept = || fs::metadata(folder.join("a")).unwrap().modified().unwrap();
        let before = kept();
        then.write(&folder).unwrap();
        assert_eq!((Tree::of_folder(&folder).unwrap(), kept()), (then, before));
        fs::remove_dir_all(&folder).unwrap();
    }

    #[test]
    fn what_differs_is_what_is_new_gone_or_otherwise() {
        let before = tree(&[("a", "1"), ("b", "2"), ("c", "3")]);
        let after = tree(&[("a", "1"), ("b", "4"), ("d", "3")]);
        assert_eq!(after.differing(&before), ["b", "c", "d"].map(Path::new).into());
        assert!(after.differing(&after).is_empty());
    }

    #[test]
    fn git_lists_what_it_would_keep() {
        let folder = folder("git");
        tree(&[(".gitignore", "/built\n"), ("kept", "1"), ("built/a", "2")]).write(&folder).unwrap();
        run::run(Command::new("git").args(["init", "--quiet"]).arg(&folder)).unwrap();
        assert_eq!(Tree::of_git(&folder).unwrap(), tree(&[(".gitignore", "/built\n"), ("kept", "1")]));
        fs::remove_dir_all(&folder).unwrap();
        assert!(Tree::of_git(Path::new("/")).unwrap_err().contains("git lists no files"));
    }
}
