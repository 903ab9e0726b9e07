//! Every public function of text, core, card and console.
//!
//! The list is the compiler's (rustdoc's JSON), so a new function without a check is seen the day it is written, in
//! whichever file. A name begins with its crate: `core::lens::srkt::working`, `card::case::Case::plan`.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use serde_json::Value as Json;

/// The crates whose functions need evidence.
pub(crate) const CRATES: [&str; 4] = ["ocellus_text", "ocellus_core", "ocellus_card", "ocellus_console"];

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
        .args(["--", "-Zunstable-options", "--output-format", "json", "--document-hidden-items"])
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

/// The functions in rustdoc's JSON: free ones, methods of types, and what a trait does where nobody says otherwise.
fn list(json: &Json) -> BTreeSet<String> {
    let index = &json["index"];
    let items = || index.as_object().into_iter().flat_map(|index| index.values());
    let functions_of = |block: &Json| -> Vec<&Json> {
        let ids = block["items"].as_array().into_iter().flatten();
        ids.map(|id| &index[id.to_string()]).filter(|item| item["inner"]["function"].is_object()).collect()
    };
    let mut found = BTreeSet::new();
    for item in items() {
        let (inner, is_public) = (&item["inner"], item["visibility"] == "public");
        if inner["function"].is_object() && is_public {
            found.extend(path(json, &item["id"]));
        }
        if let (true, Some(owner)) = (inner["trait"].is_object() && is_public, path(json, &item["id"])) {
            let with_body = functions_of(&inner["trait"]).into_iter().filter(|method| has_body(method));
            found.extend(with_body.filter_map(|method| named(&owner, method)));
        }
        if is_written(item) {
            let block = &inner["impl"];
            let owner = owner(json, &block["for"]);
            // A method of a trait is as public as the trait; one of the type itself says so.
            let is_seen = |method: &&Json| block["trait"].is_object() || method["visibility"] == "public";
            found.extend(functions_of(block).into_iter().filter(is_seen).filter_map(|method| named(&owner, method)));
        }
    }
    found
}

fn has_body(method: &Json) -> bool {
    method["inner"]["function"]["has_body"] == true
}

/// Whether a block of methods is written in the source: neither derived nor the compiler's own.
fn is_written(item: &Json) -> bool {
    let is_derived = |attrs: &Vec<Json>| attrs.iter().any(|attribute| attribute == "automatically_derived");
    let block = &item["inner"]["impl"];
    block["is_synthetic"] == false
        && block["blanket_impl"].is_null()
        && !item["attrs"].as_array().is_some_and(is_derived)
}

fn named(owner: &str, method: &Json) -> Option<String> {
    Some(format!("{owner}::{}", method["name"].as_str()?))
}

fn path(json: &Json, id: &Json) -> Option<String> {
    let names = json["paths"][id.to_string()]["path"].as_array()?;
    Some(plain(&names.iter().filter_map(Json::as_str).collect::<Vec<_>>().join("::")))
}

/// The type that methods are of: one with a path, or several of such; any other as rustdoc has it, so that it is seen.
fn owner(json: &Json, of: &Json) -> String {
    match of["tuple"].as_array() {
        Some(parts) => {
            let parts: Vec<_> = parts.iter().map(|part| owner(json, part)).collect();
            format!("({})", parts.join(", "))
        }
        None => path(json, &of["resolved_path"]["id"]).unwrap_or_else(|| of.to_string()),
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
    fn what_has_a_body_is_listed_and_what_is_derived_is_not() {
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
                "11": {"id": 11, "name": "Steps", "visibility": "public", "inner": {"trait": {"items": [12, 13]}}},
                "12": {"id": 12, "name": "step", "visibility": "default", "inner": {"function": {"has_body": true}}},
                "13": {"id": 13, "name": "other", "visibility": "default", "inner": {"function": {"has_body": false}}},
                "10": block(10, json!({"path": "Add"}), json!({"tuple": [millimetres, millimetres]}), json!([]), json!([4])),
            },
            "paths": {
                "1": {"path": ["ocellus_core", "lens", "power"]},
                "9": {"path": ["ocellus_core", "quantity", "Mm"]},
                "11": {"path": ["ocellus_core", "working", "Steps"]},
            },
        });
        let found: Vec<_> = list(&json).into_iter().collect();
        let pair = "(core::quantity::Mm, core::quantity::Mm)::add";
        let methods = ["core::quantity::Mm::add", "core::quantity::Mm::new", "core::working::Steps::step"];
        assert_eq!(found, [&[pair, "core::lens::power"], &methods[..]].concat());
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
