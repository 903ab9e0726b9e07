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

/// Entries that can stand nowhere on a card: a part asked for them, and showed neither them nor what followed; or, worse, a
/// number that followed. Each that is mended is taken off; nothing is added.
const SHOWN_NOWHERE: &[&str] = &[
    "aspiration_ml_min",
    "aspiration_resistance_mmhg_min_ml",
    "assumed_eye_level_cm",
    "bore_mm",
    "density_from",
    "density_kg_m3",
    "eye_compliance_ul_mmhg",
    "eye_level_cm",
    "fluid_temperature_c",
    "gas_pressure_mmhg",
    "haptic_axis_deg",
    "infusion_resistance_mmhg_min_ml",
    "leak_ml_min",
    "long_eye_adjustment",
    "opening_mm",
    "plunger_friction_n",
    "posterior_from",
    "posterior_r1_axis_deg",
    "posterior_r1_mm",
    "posterior_r2_axis_deg",
    "posterior_r2_mm",
    "pump_kind",
    "refraction_sd_d",
    "sulcus_shift_mm",
    "syringe_bore_mm",
    "tip_bore_mm",
    "tubing_compliance_ul_mmhg",
];

/// What two people compare must all stand on the card: every entry that was made, in a part or among the unused.
#[test]
fn every_entry_made_stands_on_the_card() {
    let (mut runner, mut nowhere) = (TestRunner::deterministic(), BTreeSet::new());
    for _ in 0..2000 {
        let draft = seeds().new_tree(&mut runner).unwrap().current().draft();
        let card = Stream::card(&draft);
        let on_card: BTreeSet<EntryId> = card.entries().collect();
        nowhere.extend(draft.made().filter(|entry| !on_card.contains(entry)).map(|entry| entry.key().to_string()));
    }
    assert_eq!(nowhere, SHOWN_NOWHERE.iter().map(|key| key.to_string()).collect());
}

/// A draft with another value of an entry, or without it.
fn changed(draft: &Draft, entry: EntryId, fraction: Option<f64>) -> Option<Draft> {
    let mut other = draft.clone();
    match fraction {
        Some(fraction) => enter(&mut other, entry, fraction, true),
        None => other.clear(entry),
    }
    // what is no case any more is none of this
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
    #[ignore = "lines to tick are asked for after it is settled what is unused: axis_marked decides on one of them"]
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
