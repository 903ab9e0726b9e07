//! Every constant: those of the core, and the limits that each part of the card has of its own.

use ocellus_core::constant::{self, Constant};

/// Every constant that a check must notice.
pub fn all() -> impl Iterator<Item = &'static Constant> {
    constant::all().chain(ocellus_card::limits())
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    /// The names in the tables of a source file: `HALF "half" "1" = 0.5, Here Chosen;`.
    fn named(path: &Path) -> Vec<String> {
        let text = std::fs::read_to_string(path).unwrap();
        let name = |line: &str| {
            let (head, _) = line.trim().split_once("\" = ")?;
            let (_, head) = head.split_once(" \"")?;
            Some(head.split_once("\" \"")?.0.to_owned())
        };
        text.lines().filter(|line| !line.trim_start().starts_with("//")).filter_map(name).collect()
    }

    fn sources(folder: &Path) -> Vec<std::path::PathBuf> {
        let inside = folder.read_dir().unwrap().map(|entry| entry.unwrap().path());
        inside.flat_map(|path| if path.is_dir() { sources(&path) } else { vec![path] }).collect()
    }

    #[test]
    fn every_table_of_constants_is_among_them() {
        let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
        let mut written: Vec<_> = [crates.join("core/src"), crates.join("card/src")]
            .iter()
            .flat_map(|folder| sources(folder))
            .filter(|path| std::fs::read_to_string(path).unwrap().contains("constants! {"))
            .flat_map(|path| named(&path))
            .collect();
        let mut known: Vec<_> = super::all().map(|constant| constant.name.to_owned()).collect();
        written.sort();
        known.sort();
        assert_eq!(known, written);
    }
}
