//! The card and its working for any case or set-up at all: finite numbers, no panic, the same bits again.

use ocellus_core::case::Case;
use ocellus_core::caution::Caution;
use ocellus_core::draft::Draft;
use ocellus_core::explain::Subject;
use ocellus_core::field::Field;
use ocellus_core::item::Item;
use ocellus_core::readback;
use ocellus_core::sheet::Sheet;
use ocellus_core::sink::Sink;
use ocellus_core::working::Step;
use ocellus_tests::random_case::seeds;
use proptest::prelude::*;

/// Everything that is streamed, numbers by their bits.
#[derive(Debug, Default, PartialEq)]
struct Stream {
    items: Vec<(Item, u64)>,
    steps: Vec<(Step, u64)>,
    cautions: Vec<Caution>,
}

impl Sink for Stream {
    fn item(&mut self, item: Item) {
        assert!(item.value.is_finite(), "{item:?}");
        self.items.push((item, item.value.to_bits()));
    }

    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }

    fn step(&mut self, step: Step) {
        assert!(step.value.is_finite(), "{step:?}");
        self.steps.push((step, step.value.to_bits()));
    }
}

fn streamed(sheet: &Sheet) -> Stream {
    let mut stream = Stream::default();
    sheet.plan(&mut stream);
    for subject in Subject::all() {
        sheet.explain(subject, &mut stream);
    }
    stream
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_case_has_a_card_of_finite_numbers(seed in seeds()) {
        let draft = seed.draft();
        let case = Case::try_from(&draft).unwrap();
        // drawn numbers have more decimals than can be read back: refused or given, never a panic
        let _ = readback::of(&case, None);
        let first = streamed(&Sheet::Eye(case));
        prop_assert!(!first.items.is_empty() && !first.cautions.is_empty());
        prop_assert_eq!(first, streamed(&Sheet::Eye(Case::try_from(&draft).unwrap())));
    }

    /// No range of any entry of a set-up, nor any pair of them, takes a number to where it is none.
    #[test]
    fn every_set_up_has_a_card_of_finite_numbers(seed in seeds()) {
        let draft = seed.set_up();
        let sheet = Sheet::check(&draft, &mut |_| {}).unwrap();
        prop_assert!(matches!(sheet, Sheet::Bench(_)));
        let _ = readback::of_sheet(&sheet, None);
        let first = streamed(&sheet);
        prop_assert!(!first.cautions.is_empty());
        prop_assert_eq!(first, streamed(&Sheet::check(&draft, &mut |_| {}).unwrap()));
    }

    /// The door holds against anything a draft can be made to hold.
    #[test]
    fn no_draft_breaks_the_door(
        entries in prop::collection::vec(prop::option::of(prop_oneof![
            4 => any::<f64>(), 4 => -100.0..200.0, 2 => prop::num::f64::ANY,
            1 => prop::sample::select([f64::NAN, f64::INFINITY, -f64::INFINITY, -0.0, f64::MAX, 5e-324].as_slice()),
        ]), Field::COUNT)
    ) {
        let mut draft = Draft::default();
        for (&field, value) in Field::ALL.iter().zip(&entries) {
            if let Some(value) = value {
                draft.set(field, *value);
            }
        }
        let mut wrong = 0;
        if let Some(case) = Case::check(&draft, &mut |_| wrong += 1) {
            streamed(&Sheet::Eye(case));
        } else {
            prop_assert!(wrong > 0);
        }
        let _ = readback::entries(&draft, None);
    }
}
