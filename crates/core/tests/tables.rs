//! What must hold of the tables that name everything.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

use ocellus_core::constant;
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::BOUNDS;
use ocellus_core::source::Source;
use std::collections::BTreeSet;

fn all_different<T: Ord + std::fmt::Debug + Clone>(names: impl Iterator<Item = T>) {
    let mut seen = BTreeSet::new();
    for name in names {
        assert!(seen.insert(name.clone()), "{name:?} stands twice");
    }
}

#[test]
fn no_name_stands_twice() {
    all_different(constant::all().map(|c| c.name));
    all_different(Source::ALL.iter().map(|s| s.text()));
    all_different(Method::ALL.iter().map(|m| m.key()));
    all_different(Method::ALL.iter().map(|m| m.name()));
    all_different(BOUNDS.iter().map(|b| b.name));
}

/// A range has two ends, a unit, and a reason for where it ends.
#[test]
fn bounds_are_ranges() {
    for bounds in BOUNDS {
        assert!(bounds.min < bounds.max && bounds.min.is_finite() && bounds.max.is_finite(), "{}", bounds.name);
        assert!(!bounds.name.is_empty() && !bounds.unit.is_empty() && !bounds.why.is_empty(), "{}", bounds.name);
    }
}

/// What is printed of a constant is the number that is used.
#[test]
fn digits_are_the_value() {
    for constant in constant::all() {
        assert_eq!(constant.digits.parse(), Ok(constant.get()), "{}", constant.name);
    }
}

/// A device has no other characters.
#[test]
fn texts_are_plain_ascii() {
    let texts = Source::ALL.iter().map(|s| s.text());
    let texts = texts.chain(constant::all().flat_map(|c| [c.name, c.unit, c.digits]));
    let texts = texts.chain(BOUNDS.iter().flat_map(|b| [b.name, b.unit]));
    let texts = texts.chain(Method::ALL.iter().flat_map(|m| [m.key(), m.name()]));
    for text in texts {
        assert!(!text.is_empty() && text.bytes().all(|byte| (b' '..=b'~').contains(&byte)), "{text:?}");
    }
}
