//! What an explanation says that its steps rest on.

use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use proptest::prelude::*;

use crate::drafts::{cases, enter, seeds, shown};
use crate::stream::Stream;

fn has_value(draft: &Draft, entry: EntryId) -> bool {
    draft.has(entry) || entry.default().is_some()
}

/// Whether two workings are the same, in steps and numbers.
fn same(one: &Stream, other: &Stream) -> bool {
    one.steps == other.steps && one.items == other.items
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(150)))]

    /// Where another value of an entry, or none, changes a step, the explanation names that entry.
    #[test]
    fn every_entry_that_a_step_rests_on_is_named(
        seed in seeds(), changes in prop::collection::vec((any::<prop::sample::Index>(), 0.0..=1.0, 0..4), 12),
    ) {
        let draft = seed.draft();
        let workings: Vec<_> = Subject::all().map(|subject| (subject, Stream::working(&draft, subject))).collect();
        let made: Vec<EntryId> = EntryId::all().filter(|entry| has_value(&draft, *entry)).collect();
        let any: Vec<EntryId> = EntryId::all().collect();
        for (which, fraction, kind) in &changes {
            let entry = *which.get(if *kind == 3 { &any } else { &made });
            let mut other = draft.clone();
            if *kind == 0 { other.clear(entry) } else { enter(&mut other, entry, *fraction, true) }
            if Case::try_from(&other).is_err() {
                continue;
            }
            for (subject, before) in &workings {
                let after = Stream::working(&other, *subject);
                if !same(before, &after) {
                    for (draft, working) in [(&draft, before), (&other, &after)] {
                        prop_assert!(
                            !has_value(draft, entry) || working.entries().any(|named| named == entry),
                            "{} of {}\n{}", entry.key(), subject.key(), shown(draft)
                        );
                    }
                }
            }
        }
    }

    /// It names each entry once, and only those that have a value; what it lacks has none.
    #[test]
    fn entries_named_have_a_value(seed in seeds()) {
        let draft = seed.draft();
        for subject in Subject::all() {
            let working = Stream::working(&draft, subject);
            let mut named: Vec<_> = working.entries().collect();
            prop_assert!(named.iter().all(|entry| has_value(&draft, *entry)));
            prop_assert!(working.lacks.iter().all(|entry| !has_value(&draft, *entry)));
            let count = named.len();
            named.dedup();
            prop_assert_eq!(count, named.len());
        }
    }

    /// Where it says that steps go to the end, there are some.
    #[test]
    fn an_explanation_that_says_so_has_steps(seed in seeds()) {
        let draft = seed.draft();
        for subject in Subject::all() {
            let working = Stream::working(&draft, subject);
            prop_assert!(!working.explained || !working.steps.is_empty(), "{}\n{}", subject.key(), shown(&draft));
        }
    }
}
