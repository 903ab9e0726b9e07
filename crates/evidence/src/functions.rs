//! Every public function of the core, and which of them have evidence.
//!
//! The list is the compiler's (rustdoc's JSON), so a new function without a check is seen the day it is written.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use serde::Deserialize;
use serde_json::Value as Json;

const CRATE: &str = "ocellus_core";

/// The public functions and methods of the core, as `lens::srkt::working` or `quantity::Mm::new`.
///
/// # Errors
/// When the core cannot be documented or the list cannot be read.
pub fn of_core() -> Result<BTreeSet<String>, String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    // A folder of its own, so that the unstable flag does not make cargo rebuild what others share.
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), Into::into).join("functions");
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let done = Command::new(cargo)
        .current_dir(&root)
        .args(["rustdoc", "--quiet", "--package", "ocellus-core", "--lib", "--target-dir"])
        .arg(&target)
        .args(["--", "-Zunstable-options", "--output-format", "json"])
        // The stable compiler can write this; only its format is not promised. A change of it gives an empty list,
        // which is refused.
        .env("RUSTC_BOOTSTRAP", "1")
        .status()
        .map_err(|error| format!("cargo rustdoc: {error}"))?;
    if !done.success() {
        return Err(format!("cargo rustdoc: {done}"));
    }
    let path = target.join("doc").join(format!("{CRATE}.json"));
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    let json = serde_json::from_str(&text).map_err(|error| format!("{}: {error}", path.display()))?;
    let found = list(&json);
    if found.is_empty() { Err(format!("{}: no functions found", path.display())) } else { Ok(found) }
}

/// The functions in rustdoc's JSON. Free functions stand in `paths`; methods are under the `impl` of a type that does.
fn list(json: &Json) -> BTreeSet<String> {
    let index = &json["index"];
    let path = |id: &Json| {
        let names = json["paths"][id.to_string()]["path"].as_array()?;
        Some(names.iter().skip(1).filter_map(Json::as_str).collect::<Vec<_>>().join("::"))
    };
    let mut found = BTreeSet::new();
    for item in index.as_object().into_iter().flat_map(|index| index.values()) {
        let inner = &item["inner"];
        if inner["function"].is_object() && item["visibility"] == "public" {
            found.extend(path(&item["id"]));
        }
        let is_derived =
            item["attrs"].as_array().is_some_and(|attrs| attrs.iter().any(|a| a == "automatically_derived"));
        let block = &inner["impl"];
        let is_ours = block["is_synthetic"] == false && block["blanket_impl"].is_null() && !is_derived;
        if let (true, Some(owner)) = (is_ours, path(&block["for"]["resolved_path"]["id"])) {
            let methods = block["items"].as_array().into_iter().flatten().map(|id| &index[id.to_string()]);
            for method in methods.filter(|method| method["inner"]["function"].is_object()) {
                // A method of a trait is as public as the trait; one of the type itself says so.
                if block["trait"].is_object() || method["visibility"] == "public" {
                    found.extend(method["name"].as_str().map(|name| format!("{owner}::{name}")));
                }
            }
        }
    }
    found
}

/// A name without the types that its generic parts are made of; `<A as B>` at its head stays.
fn of_any_type(name: &str) -> String {
    let mut deep = 0;
    let mut plain = String::new();
    for (at, letter) in name.char_indices() {
        let opens = letter == '<' && at > 0 && deep == 0 || letter == '<' && deep > 0;
        deep += i32::from(opens);
        if deep == 0 {
            plain.push(letter);
        }
        deep -= i32::from(letter == '>' && deep > 0);
    }
    plain
}

/// The compiler's name of a function in the form of the list: `<ocellus_core::quantity::Mm as Add>::add` is
/// `quantity::Mm::add`, and `ocellus_core::Vector<ocellus_core::Plane>::plus` is `Vector::plus`.
pub(crate) fn short(name: &str) -> String {
    let name = &of_any_type(name);
    let plain = match name.strip_prefix('<').and_then(|rest| rest.split_once(" as ")) {
        Some((owner, rest)) => format!("{owner}{}", rest.rfind(">::").map_or("", |at| &rest[at + 1..])),
        None => name.to_owned(),
    };
    plain.strip_prefix(CRATE).and_then(|rest| rest.strip_prefix("::")).map_or(plain.clone(), str::to_owned)
}

/// A function, or all below a path with `::*`, that no outside number can speak for.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exception {
    path: String,
    reason: String,
}

impl Exception {
    fn matches(&self, function: &str) -> bool {
        match self.path.strip_suffix('*') {
            Some(prefix) => function.starts_with(prefix),
            None => function == self.path,
        }
    }
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
    /// Exceptions that except nothing, or nothing that needs it; evidence for what is not in the core.
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
        .map(|name| format!("{name}: checked, but not a public function of {CRATE}"))
        .collect();
    for exception in exceptions {
        if exception.reason.trim().is_empty() {
            faults.push(format!("excepted.toml: {}: no reason", exception.path));
        }
        let mut matched = functions.iter().filter(|function| exception.matches(function)).peekable();
        if matched.peek().is_none() {
            faults.push(format!("excepted.toml: {}: there is no such function", exception.path));
        } else if matched.all(|function| covered.contains(function)) {
            faults.push(format!("excepted.toml: {}: has evidence, so needs no exception", exception.path));
        }
    }
    let (with, rest): (Vec<_>, Vec<_>) = functions.iter().partition(|function| covered.contains(*function));
    let (excepted, without): (Vec<_>, Vec<_>) =
        rest.into_iter().partition(|function| exceptions.iter().any(|exception| exception.matches(function)));
    Coverage { without: without.into_iter().cloned().collect(), with: with.len(), excepted: excepted.len(), faults }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn functions_and_methods_are_listed_and_what_is_derived_is_not() {
        let function = |id, name, visibility| json!({"id": id, "name": name, "visibility": visibility, "attrs": [], "inner": {"function": {}}});
        let block = |id, of_trait: Json, attrs: Json, items: Json| {
            json!({"id": id, "name": null, "visibility": "default", "attrs": attrs, "inner": {"impl": {
                "trait": of_trait, "for": {"resolved_path": {"id": 9}}, "items": items,
                "is_synthetic": false, "blanket_impl": null}}})
        };
        let json = json!({
            "index": {
                "1": function(1, "power", "public"),
                "2": function(2, "new", "public"),
                "3": function(3, "helper", "default"),
                "4": function(4, "add", "default"),
                "5": function(5, "clone", "default"),
                "6": block(6, Json::Null, json!([]), json!([2, 3])),
                "7": block(7, json!({"path": "Add"}), json!([]), json!([4])),
                "8": block(8, json!({"path": "Clone"}), json!(["automatically_derived"]), json!([5])),
            },
            "paths": {
                "1": {"path": ["ocellus_core", "lens", "power"]},
                "9": {"path": ["ocellus_core", "quantity", "Mm"]},
            },
        });
        let found: Vec<_> = list(&json).into_iter().collect();
        assert_eq!(found, ["lens::power", "quantity::Mm::add", "quantity::Mm::new"]);
    }

    #[test]
    fn the_compilers_names_become_those_of_the_list() {
        assert_eq!(short("ocellus_core::lens::power"), "lens::power");
        assert_eq!(short("<ocellus_core::quantity::Mm as core::ops::arith::Add>::add"), "quantity::Mm::add");
        assert_eq!(short("<ocellus_core::A as core::convert::TryFrom<&ocellus_core::B>>::try_from"), "A::try_from");
    }

    fn judge(evidence: &[(&'static str, usize)], exceptions: &[(&str, &str)]) -> Coverage {
        let functions = ["lens::power", "quantity::Mm::get", "quantity::Mm::new"].map(String::from).into();
        let exceptions: Vec<_> = exceptions
            .iter()
            .map(|(path, reason)| Exception { path: (*path).into(), reason: (*reason).into() })
            .collect();
        coverage(&functions, &evidence.iter().copied().collect(), &exceptions)
    }

    #[test]
    fn a_function_without_evidence_is_named_and_an_exception_excuses_it() {
        assert_eq!(judge(&[], &[]).without.len(), 3);
        let judged = judge(&[("ocellus_core::lens::power", 1)], &[("quantity::Mm::*", "holds a number")]);
        assert!(judged.without.is_empty() && judged.faults.is_empty(), "{:?}", judged.faults);
        assert_eq!((judged.with, judged.excepted), (1, 2));
    }

    #[test]
    fn no_comparison_is_no_evidence() {
        assert_eq!(judge(&[("ocellus_core::lens::power", 0)], &[]).without.len(), 3);
    }

    #[test]
    fn an_exception_for_nothing_or_for_what_has_evidence_is_a_fault() {
        let power = ("ocellus_core::lens::power", 1);
        assert_eq!(judge(&[power], &[("lens::none", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("lens::power", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("lens::*", "r")]).faults.len(), 1);
        assert_eq!(judge(&[power], &[("quantity::Mm::new", " ")]).faults.len(), 1);
        assert_eq!(judge(&[("elsewhere::power", 1)], &[]).faults.len(), 1);
    }
}
