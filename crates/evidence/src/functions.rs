//! Every public function of the core and the card.
//!
//! The list is the compiler's (rustdoc's JSON), so a new function without a check is seen the day it is written. A name
//! begins with its crate: `core::lens::srkt::working`, `card::case::Case::plan`.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use serde_json::Value as Json;

/// The crates whose functions need evidence.
pub(crate) const CRATES: [&str; 2] = ["ocellus_core", "ocellus_card"];

/// What the name of each begins with, and is left out here.
const PROJECT: &str = "ocellus_";

/// The public functions and methods of these crates.
///
/// # Errors
/// When a crate cannot be documented or a list cannot be read.
pub fn public() -> Result<BTreeSet<String>, String> {
    CRATES.iter().try_fold(BTreeSet::new(), |mut all, name| {
        all.append(&mut of(name)?);
        Ok(all)
    })
}

fn of(name: &str) -> Result<BTreeSet<String>, String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    // A folder of its own, so that the unstable flag does not make cargo rebuild what others share.
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), Into::into).join("functions");
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let done = Command::new(cargo)
        .current_dir(&root)
        .args(["rustdoc", "--quiet", "--package", &name.replace('_', "-"), "--lib", "--target-dir"])
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
    let path = target.join("doc").join(format!("{name}.json"));
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    let json = serde_json::from_str(&text).map_err(|error| format!("{}: {error}", path.display()))?;
    let found = list(&json);
    if found.is_empty() { Err(format!("{}: no functions found", path.display())) } else { Ok(found) }
}

/// The functions in rustdoc's JSON. Free functions stand in `paths`; methods are under the `impl` of a type that does.
fn list(json: &Json) -> BTreeSet<String> {
    let index = &json["index"];
    let mut found = BTreeSet::new();
    for item in index.as_object().into_iter().flat_map(|index| index.values()) {
        let inner = &item["inner"];
        if inner["function"].is_object() && item["visibility"] == "public" {
            found.extend(path(json, &item["id"]));
        }
        let is_derived =
            item["attrs"].as_array().is_some_and(|attrs| attrs.iter().any(|a| a == "automatically_derived"));
        let block = &inner["impl"];
        let is_ours = block["is_synthetic"] == false && block["blanket_impl"].is_null() && !is_derived;
        if let (true, Some(owner)) = (is_ours, owner(json, &block["for"])) {
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

fn path(json: &Json, id: &Json) -> Option<String> {
    let names = json["paths"][id.to_string()]["path"].as_array()?;
    Some(plain(&names.iter().filter_map(Json::as_str).collect::<Vec<_>>().join("::")))
}

/// The type that methods are of: one with a path, or a pair of such.
fn owner(json: &Json, of: &Json) -> Option<String> {
    match of["tuple"].as_array() {
        Some(parts) => {
            let parts: Option<Vec<_>> = parts.iter().map(|part| owner(json, part)).collect();
            Some(format!("({})", parts?.join(", ")))
        }
        None => path(json, &of["resolved_path"]["id"]),
    }
}

/// A name without what all names of the project begin with.
fn plain(name: &str) -> String {
    name.replace(PROJECT, "")
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
/// `core::quantity::Mm::add`, `ocellus_core::Vector<ocellus_core::Plane>::plus` is `core::Vector::plus`, and where a block stands
/// in another module than its type, `ocellus_card::plan::<impl ocellus_card::case::Case>::plan` is `card::case::Case::plan`.
pub(crate) fn short(name: &str) -> String {
    let elsewhere = name.split_once("::<impl ").and_then(|(_, rest)| rest.rsplit_once(">::"));
    let in_place =
        elsewhere.map(|(owner, method)| format!("{}::{method}", owner.rsplit(" for ").next().unwrap_or(owner)));
    let name = &of_any_type(&in_place.unwrap_or_else(|| name.to_owned()));
    plain(&match name.strip_prefix('<').and_then(|rest| rest.split_once(" as ")) {
        Some((owner, rest)) => format!("{owner}{}", rest.rfind(">::").map_or("", |at| &rest[at + 1..])),
        None => name.to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn functions_and_methods_are_listed_and_what_is_derived_is_not() {
        let function = |id, name, visibility| json!({"id": id, "name": name, "visibility": visibility, "attrs": [], "inner": {"function": {}}});
        let millimetres = json!({"resolved_path": {"id": 9}});
        let block = |id, of_trait: Json, of: Json, attrs: Json, items: Json| {
            json!({"id": id, "name": null, "visibility": "default", "attrs": attrs, "inner": {"impl": {
                "trait": of_trait, "for": of, "items": items,
                "is_synthetic": false, "blanket_impl": null}}})
        };
        let json = json!({
            "index": {
                "1": function(1, "power", "public"),
                "2": function(2, "new", "public"),
                "3": function(3, "helper", "default"),
                "4": function(4, "add", "default"),
                "5": function(5, "clone", "default"),
                "6": block(6, Json::Null, millimetres.clone(), json!([]), json!([2, 3])),
                "7": block(7, json!({"path": "Add"}), millimetres.clone(), json!([]), json!([4])),
                "8": block(8, json!({"path": "Clone"}), millimetres.clone(), json!(["automatically_derived"]), json!([5])),
                "10": block(10, json!({"path": "Add"}), json!({"tuple": [millimetres, millimetres]}), json!([]), json!([4])),
            },
            "paths": {
                "1": {"path": ["ocellus_core", "lens", "power"]},
                "9": {"path": ["ocellus_core", "quantity", "Mm"]},
            },
        });
        let found: Vec<_> = list(&json).into_iter().collect();
        let pair = "(core::quantity::Mm, core::quantity::Mm)::add";
        assert_eq!(found, [pair, "core::lens::power", "core::quantity::Mm::add", "core::quantity::Mm::new"]);
    }

    #[test]
    fn the_compilers_names_become_those_of_the_list() {
        assert_eq!(short("ocellus_core::lens::power"), "core::lens::power");
        assert_eq!(short("ocellus_card::case::Case<'_>::plan"), "card::case::Case::plan");
        assert_eq!(short("ocellus_card::plan::<impl ocellus_card::case::Case<'_>>::plan"), "card::case::Case::plan");
        assert_eq!(short("ocellus_card::id::<impl core::fmt::Debug for ocellus_card::Id<u8>>::fmt"), "card::Id::fmt");
        assert_eq!(short("<ocellus_core::quantity::Mm as core::ops::arith::Add>::add"), "core::quantity::Mm::add");
        assert_eq!(
            short("<ocellus_core::A as core::convert::TryFrom<&ocellus_core::B>>::try_from"),
            "core::A::try_from"
        );
        assert_eq!(
            short("<(ocellus_core::A, ocellus_core::B) as ocellus_core::View>::chain"),
            "(core::A, core::B)::chain"
        );
    }
}
