//! Whether what the device program takes is what was agreed.

use std::collections::{BTreeMap, BTreeSet};

/// What is agreed, by board and figure.
pub(crate) type Agreed = BTreeMap<String, BTreeMap<String, u64>>;

/// A figure of a board: how it is called, and what no board may exceed.
pub(crate) struct Figure {
    pub(crate) name: &'static str,
    pub(crate) unit: &'static str,
    pub(crate) budget: u64,
    /// Two figures are the same within this many hundredths.
    slack: u64,
}

const KIB: u64 = 1024;

// the smallest chip, the nRF51822, has 256 KiB: 48 of them stay for what comes next
pub(crate) const FLASH: Figure = Figure { name: "flash", unit: "bytes", budget: 208 * KIB, slack: 2 };
// a larger chip has more to set up
pub(crate) const FLASH_OF_LARGER: Figure = Figure { budget: 212 * KIB, ..FLASH };
// half of that chip
pub(crate) const FLASH_OF_LEAST: Figure = Figure { budget: 128 * KIB, ..FLASH };
pub(crate) const RAM: Figure = Figure { name: "ram", unit: "bytes", budget: 4 * KIB, slack: 2 };
// whether an interrupt, of about a hundred bytes, falls into the deepest call is chance
pub(crate) const STACK: Figure = Figure { name: "stack", unit: "bytes", budget: 7 * KIB / 2, slack: 4 };
pub(crate) const PLAN: Figure = Figure { name: "plan", unit: "instructions", budget: 3_000_000, slack: 2 };

/// What is wrong with a figure, if anything is.
pub(crate) fn figure(figure: &Figure, value: u64, agreed: Option<u64>) -> Option<String> {
    let Figure { name, unit, budget, slack } = figure;
    if value > *budget {
        return Some(format!("{name} is {value} {unit}, over its budget of {budget}"));
    }
    let Some(agreed) = agreed else {
        return Some(format!("{name} is {value} {unit}, and none is agreed"));
    };
    let (least, most) = (agreed - agreed * slack / 100, agreed + agreed * slack / 100);
    let verb = match value {
        _ if value > most => "grew",
        _ if value < least => "shrank",
        _ => return None,
    };
    Some(format!("{name} {verb} from {agreed} to {value} {unit}"))
}

/// What is wrong with the panics: those that no library brings along.
pub(crate) fn panics(found: &BTreeSet<String>, of_others: &[&str]) -> Option<String> {
    let ours: Vec<_> = found.iter().filter(|name| !of_others.contains(&name.as_str())).map(String::as_str).collect();
    if ours.is_empty() { None } else { Some(format!("it can panic: {}", ours.join(", "))) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_agreed_passes_and_so_does_what_is_near() {
        for value in [49_000, 50_000, 51_000] {
            assert_eq!(figure(&FLASH, value, Some(50_000)), None);
        }
    }

    #[test]
    fn growth_fails() {
        assert_eq!(figure(&FLASH, 51_001, Some(50_000)).unwrap(), "flash grew from 50000 to 51001 bytes");
    }

    #[test]
    fn less_fails_too_so_that_it_is_agreed() {
        assert_eq!(figure(&STACK, 2879, Some(3000)).unwrap(), "stack shrank from 3000 to 2879 bytes");
    }

    #[test]
    fn a_budget_holds_whatever_is_agreed() {
        for over in [&FLASH, &FLASH_OF_LARGER, &FLASH_OF_LEAST, &RAM, &STACK, &PLAN] {
            assert_eq!(figure(over, over.budget, Some(over.budget)), None);
            let why = figure(over, over.budget + 1, Some(over.budget + 1)).unwrap();
            assert!(why.contains("over its budget"), "{why}");
        }
    }

    #[test]
    fn a_figure_that_nobody_agreed_to_fails() {
        assert_eq!(figure(&PLAN, 7, None).unwrap(), "plan is 7 instructions, and none is agreed");
    }

    #[test]
    fn one_panic_fails_unless_it_is_a_library_s() {
        let found = BTreeSet::from(["core::panicking::panic".to_owned(), "core::panicking::panic_fmt".to_owned()]);
        assert_eq!(panics(&found, &["core::panicking::panic_fmt"]).unwrap(), "it can panic: core::panicking::panic");
        assert_eq!(panics(&found, &["core::panicking::panic_fmt", "core::panicking::panic"]), None);
        assert_eq!(panics(&BTreeSet::new(), &[]), None);
    }
}
