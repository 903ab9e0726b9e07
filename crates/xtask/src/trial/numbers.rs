//! The numbers of the methods on a card.

use std::collections::BTreeMap;
use std::process::Command;

use serde_json::Value;

use crate::run;

/// Each by its name.
pub(crate) type Numbers = BTreeMap<String, Value>;

/// How a card names a method's lens.
const POWER_FOR_TARGET: &str = "exact power for target";

/// What every method says of a case, by name: its lens, where that stands, and what the lens chosen leaves.
pub(crate) fn of_methods(mut ocellus: Command, case: &str) -> Result<Numbers, String> {
    let (_, card) = run::answer(ocellus.args(["plan", "--json", "-"]), case.as_bytes())?;
    let card: Value = serde_json::from_str(&card).map_err(|error| format!("ocellus plan --json: {error}"))?;
    let items = || card["items"].as_array().into_iter().flatten();
    let named = |item: &Value| Some((item["id"].as_str()?.to_owned(), item["value"].clone()));
    let all: BTreeMap<_, _> = items().filter_map(named).collect();
    let methods = items().filter(|item| item["name"] == POWER_FOR_TARGET);
    let keys = methods.filter_map(|item| item["id"].as_str()?.strip_suffix("_power_d"));
    let ids = keys.flat_map(|key| ["power_d", "lens_position_mm", "refraction_d"].map(|of| format!("{key}_{of}")));
    Ok(ids.filter_map(|id| all.get(&id).map(|value| (id.clone(), value.clone()))).collect())
}

/// Whether all that was said before is said after, and more.
pub(crate) fn as_before(before: &Numbers, after: &Numbers) -> Result<(), String> {
    if before.is_empty() || after.len() <= before.len() {
        return Err(format!("{} numbers of methods before and {} after", before.len(), after.len()));
    }
    match before.iter().find(|(id, value)| after.get(*id) != Some(*value)) {
        Some((id, value)) => Err(format!("{id} was {value} before, and is {:?} after", after.get(id))),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn numbers(all: &[(&str, f64)]) -> Numbers {
        all.iter().map(|(id, value)| ((*id).into(), (*value).into())).collect()
    }

    #[test]
    fn numbers_that_move_or_go_are_seen_and_so_is_nothing_new() {
        let before = numbers(&[("a_power_d", 21.5), ("b_power_d", 21.0)]);
        let after = |a, more: &[(&str, f64)]| as_before(&before, &numbers(&[&[("a_power_d", a)], more].concat()));
        assert_eq!(after(21.5, &[("b_power_d", 21.0), ("c_power_d", 20.0)]), Ok(()));
        assert!(
            after(21.6, &[("b_power_d", 21.0), ("c_power_d", 20.0)]).unwrap_err().starts_with("a_power_d was 21.5")
        );
        assert!(
            after(21.5, &[("c_power_d", 20.0), ("d_power_d", 20.0)]).unwrap_err().starts_with("b_power_d was 21.0")
        );
        assert!(after(21.5, &[("b_power_d", 21.0)]).is_err());
    }
}
