//! Entries that a card used for nothing, and those that it used.

use ocellus_card::case::Case;
use ocellus_card::cautions::UNUSED;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use std::collections::BTreeSet;

use crate::drafts::{cases, enter, seeds, shown};
use crate::stream::Stream;

/// What two people compare must all stand on the card: every entry that was made, in a part or among the unused.
#[test]
fn every_entry_made_stands_on_the_card() {
    let mut runner = TestRunner::deterministic();
    for _ in 0..2000 {
        let draft = seeds().new_tree(&mut runner).unwrap().current().draft();
        let on_card: BTreeSet<EntryId> = Stream::card(&draft).entries().collect();
        let nowhere: Vec<EntryId> = draft.made().filter(|entry| !on_card.contains(entry)).collect();
        assert!(nowhere.is_empty(), "{nowhere:?}\n{}", shown(&draft));
    }
}

/// A draft with another value of an entry, or without it.
fn changed(draft: &Draft, entry: EntryId, fraction: Option<f64>) -> Option<Draft> {
    let mut other = draft.clone();
    match fraction {
        Some(fraction) => enter(&mut other, entry, fraction, true),
        None => other.clear(entry),
    }
    // what is not a case any more is left out
    Case::try_from(&other).is_ok().then_some(other)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(100)))]

    /// What is shown as unused was made, and the caution says so of it and of nothing else.
    #[test]
    fn what_is_unused_was_made(seed in seeds()) {
        let draft = seed.draft();
        let card = Stream::card(&draft);
        let unused = card.unused();
        prop_assert!(unused.iter().all(|entry| draft.has(*entry)), "{unused:?}");
        prop_assert_eq!(!unused.is_empty(), card.cautions.iter().any(|caution| caution.code == UNUSED));
    }

    /// An entry that is used for nothing can have any value: no number and no caution follows from it.
    #[test]
    fn an_unused_entry_changes_nothing(seed in seeds(), fractions in prop::collection::vec(0.0..=1.0, 2)) {
        let draft = seed.draft();
        let card = Stream::card(&draft);
        for entry in card.unused() {
            for other in fractions.iter().filter_map(|fraction| changed(&draft, entry, Some(*fraction))) {
                let after = Stream::card(&other);
                let same = card.items == after.items && card.cautions == after.cautions && card.parts == after.parts;
                prop_assert!(same, "{}: {:#?}\n{}", entry.key(), card.but_not(&after), shown(&draft));
            }
        }
    }

    /// Nor from its being there, but that it is unused, or else left to its usual value.
    #[test]
    fn an_unused_entry_can_be_left_out(seed in seeds()) {
        let draft = seed.draft();
        let card = Stream::card(&draft);
        for entry in card.unused() {
            let Some(other) = changed(&draft, entry, None) else { continue };
            let after = Stream::card(&other);
            let others = |card: &Stream| {
                let mut cautions = card.cautions.clone();
                cautions.retain(|caution| caution.entry != Some(entry) && caution.code != UNUSED);
                cautions
            };
            let same = card.items == after.items && others(&card) == others(&after);
            prop_assert!(same, "{}: {:#?}\n{}", entry.key(), card.but_not(&after), shown(&draft));
        }
    }

    #[test]
    fn an_unused_entry_changes_no_line_to_tick(seed in seeds(), fraction in 0.0..=1.0) {
        let draft = seed.draft();
        let card = Stream::card(&draft);
        for entry in card.unused() {
            for other in [Some(fraction), None].into_iter().filter_map(|fraction| changed(&draft, entry, fraction)) {
                let after = Stream::card(&other);
                prop_assert_eq!(&card.sign_offs, &after.sign_offs, "{}\n{}", entry.key(), shown(&draft));
            }
        }
    }
}
