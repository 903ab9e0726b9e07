//! Which public functions have evidence, which need none, and which lack it.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;

use crate::check::fits;
use crate::functions::{CRATES, short};

/// Functions that no outside number can speak for, by their paths, in which `*` stands for anything.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exception {
    paths: Vec<String>,
    reason: String,
}

/// The exceptions this crate makes, from `excepted.toml`.
///
/// # Errors
/// When the file cannot be used.
pub fn exceptions() -> Result<Vec<Exception>, String> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct File {
        #[serde(default, rename = "except")]
        exceptions: Vec<Exception>,
    }
    let file: File =
        toml::from_str(include_str!("../excepted.toml")).map_err(|error| format!("excepted.toml: {error}"))?;
    Ok(file.exceptions)
}

/// Which functions lack evidence, and what is wrong with the exceptions.
pub struct Coverage {
    /// Functions with neither evidence nor an exception.
    pub without: Vec<String>,
    /// How many functions have evidence.
    pub with: usize,
    /// How many are excepted.
    pub excepted: usize,
    /// Exceptions that except nothing, or nothing that needs it; evidence for what is no such function.
    pub faults: Vec<String>,
}

/// Holds the evidence (comparisons by compiler's name) against the list.
#[must_use]
pub fn coverage(
    functions: &BTreeSet<String>,
    evidence: &BTreeMap<&'static str, usize>,
    exceptions: &[Exception],
) -> Coverage {
    let covered: BTreeSet<String> =
        evidence.iter().filter(|(_, comparisons)| **comparisons > 0).map(|(name, _)| short(name)).collect();
    let mut faults: Vec<String> = covered
        .difference(functions)
        .map(|name| format!("{name}: checked, but not a public function of {}", CRATES.join(", ")))
        .collect();
    for Exception { paths, reason } in exceptions {
        for path in paths {
            let mut matched = functions.iter().filter(|function| fits(path, function)).peekable();
            let fault = if reason.trim().is_empty() {
                "no reason"
            } else if matched.peek().is_none() {
                "there is no such function"
            } else if matched.all(|function| covered.contains(function)) {
                "has evidence, so needs no exception"
            } else {
                continue;
            };
            faults.push(format!("excepted.toml: {path}: {fault}"));
        }
    }
    let is_excepted =
        |function: &&String| exceptions.iter().flat_map(|exception| &exception.paths).any(|path| fits(path, function));
    let (with, rest): (Vec<_>, Vec<_>) = functions.iter().partition(|function| covered.contains(*function));
    let (excepted, without): (Vec<_>, Vec<_>) = rest.into_iter().partition(is_excepted);
    Coverage { without: without.into_iter().cloned().collect(), with: with.len(), excepted: excepted.len(), faults }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn judge(evidence: &[(&'static str, usize)], exceptions: &[(&str, &str)]) -> Coverage {
        let functions = ["core::lens::power", "core::quantity::Mm::get", "core::quantity::Mm::new"].map(String::from);
        let exceptions: Vec<_> = exceptions
            .iter()
            .map(|(path, reason)| Exception { paths: vec![(*path).into()], reason: (*reason).into() })
            .collect();
        coverage(&functions.into(), &evidence.iter().copied().collect(), &exceptions)
    }

    #[test]
    fn a_function_without_evidence_is_named_and_an_exception_excuses_it() {
        assert_eq!(judge(&[], &[]).without.len(), 3);
        let judged = judge(&[("ocellus_core::lens::power", 1)], &[("core::quantity::Mm::*", "holds a number")]);
        assert!(judged.without.is_empty() && judged.faults.is_empty(), "{:?}", judged.faults);
        assert_eq!((judged.with, judged.excepted), (1, 2));
        assert_eq!(
            judge(&[], &[("*::get", "holds a number")]).without,
            ["core::lens::power", "core::quantity::Mm::new"]
        );
    }

    #[test]
    fn no_comparison_is_no_evidence() {
        assert_eq!(judge(&[("ocellus_core::lens::power", 0)], &[]).without.len(), 3);
    }

    #[test]
    fn an_exception_for_nothing_or_for_what_has_evidence_is_a_fault() {
        let power = ("ocellus_core::lens::power", 1);
        assert_eq!(judge(&[power], &[("core::lens::none", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("core::lens::power", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("core::lens::*", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("*::power", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("core::quantity::Mm::new", " ")]).faults.len(), 1);
        assert_eq!(judge(&[("elsewhere::power", 1)], &[]).faults.len(), 1);
    }
}
