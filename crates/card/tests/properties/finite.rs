//! The card and its working for any case or set-up at all: finite numbers, no panic, the same bits again.

use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::readback;
use proptest::prelude::*;

use crate::drafts::{cases, seeds};
use crate::stream::Stream;

/// The card, and every working; [`Stream`] takes no number that is not finite.
fn everything(draft: &Draft) -> Vec<Stream> {
    let workings = Subject::all().map(|subject| Stream::working(draft, subject));
    std::iter::once(Stream::card(draft)).chain(workings).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(400)))]

    #[test]
    fn every_case_has_a_card_of_finite_numbers(seed in seeds()) {
        let draft = seed.eye();
        // drawn numbers can have more decimals than can be read back: refused or given, never a panic
        let _ = readback::of(&Case::try_from(&draft).unwrap(), None);
        let first = everything(&draft);
        prop_assert!(!first[0].items.is_empty() && !first[0].cautions.is_empty());
        prop_assert_eq!(first, everything(&draft));
    }

    /// No range of any entry of a set-up, nor any pair of them, makes a number that is not finite.
    #[test]
    fn every_set_up_has_a_card_of_finite_numbers(seed in seeds()) {
        let draft = seed.set_up();
        let _ = readback::of(&Case::try_from(&draft).unwrap(), None);
        let first = everything(&draft);
        prop_assert!(!first[0].cautions.is_empty());
        prop_assert_eq!(first, everything(&draft));
    }

    /// The door holds against anything a draft can be made to hold.
    #[test]
    fn no_draft_breaks_the_door(
        values in prop::collection::vec(prop::option::of(prop_oneof![
            4 => any::<f64>(), 4 => -100.0..200.0, 2 => prop::num::f64::ANY,
            1 => prop::sample::select([f64::NAN, f64::INFINITY, -f64::INFINITY, -0.0, f64::MAX, 5e-324].as_slice()),
        ]), EntryId::all().count())
    ) {
        let mut draft = Draft::default();
        for (entry, value) in EntryId::all().zip(&values) {
            if let Some(value) = value {
                draft.set(entry, *value);
            }
        }
        let mut wrong = 0;
        if Case::check(&draft, &mut |_| wrong += 1).is_some() {
            everything(&draft);
        } else {
            prop_assert!(wrong > 0);
        }
        let _ = readback::entries(&draft, None);
    }
}
