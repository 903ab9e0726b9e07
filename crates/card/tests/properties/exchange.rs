//! What is said in another order is the same case.

use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::id::EntryId;
use proptest::prelude::*;

use crate::drafts::{cases, seeds, shown};
use crate::stream::Stream;

/// Both meridians of a cornea, by power, radius and axis.
pub(crate) const MERIDIANS: &[(EntryId, EntryId)] = &[
    (entries::K1.id(), entries::K2.id()),
    (entries::R1.id(), entries::R2.id()),
    (entries::K1_AXIS.id(), entries::K2_AXIS.id()),
];

/// Those of the other eye, and those after the operation.
const OTHERS: &[(EntryId, EntryId)] = &[
    (entries::FELLOW_K1.id(), entries::FELLOW_K2.id()),
    (entries::AFTER_K1.id(), entries::AFTER_K2.id()),
    (entries::AFTER_K1_AXIS.id(), entries::AFTER_K2_AXIS.id()),
    (entries::BACK_R1.id(), entries::BACK_R2.id()),
    (entries::BACK_R1_AXIS.id(), entries::BACK_R2_AXIS.id()),
];

/// A draft with each two entries exchanged.
pub(crate) fn exchanged(draft: &Draft, pairs: &[(EntryId, EntryId)]) -> Draft {
    let mut other = draft.clone();
    for (first, second) in pairs.iter().flat_map(|(a, b)| [(*a, *b), (*b, *a)]) {
        match draft.number(second) {
            Some(number) => other.set(first, number),
            None => other.clear(first),
        }
    }
    other
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(300)))]

    /// Which meridian is called the first changes nothing on the card: no number, no caution, no line to tick.
    #[test]
    fn exchanged_meridians_are_the_same_cornea(seed in seeds()) {
        let draft = seed.eye();
        for pairs in [MERIDIANS, OTHERS] {
            let other = exchanged(&draft, pairs);
            // a draft that is right only because each power stands beside its own radius stays so
            prop_assert!(Case::try_from(&other).is_ok(), "{}", shown(&draft));
let (card, same) = (Stream::card(&draft).plain_zeros(), Stream::card(&other).plain_zeros());
            prop_assert!(card == same, "{:#?}\n{:#?}\n{}", card.but_not(&same), same.but_not(&card), shown(&draft));
        }
    }
}
