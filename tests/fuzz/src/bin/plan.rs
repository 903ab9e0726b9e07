//! Entries of any kind, in and out of their ranges: whatever becomes a case gets a card and workings of finite numbers.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::working::{Step, Steps};

struct Finite;

impl Steps for Finite {
    fn step(&mut self, step: Step) {
        assert!(step.value.is_finite(), "{step:?}");
    }
}

impl Sink for Finite {
    fn item(&mut self, item: Item) {
        assert!(item.value.is_finite(), "{item:?}");
    }
    fn caution(&mut self, _caution: Caution) {}
}

fuzz_target!(|entries: Vec<(u8, u16)>| {
    if let Some(case) = Case::check(&ocellus_fuzz::draft(&entries), &mut |_| {}) {
        case.plan(&mut Finite);
        for subject in Subject::all() {
            case.explain(subject, &mut Finite);
        }
    }
});
