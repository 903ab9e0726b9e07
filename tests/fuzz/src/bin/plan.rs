//! Entries of any kind, in and out of their ranges: whatever becomes a case gets a card and workings of finite numbers.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_core::case::Case;
use ocellus_core::caution::Caution;
use ocellus_core::explain::{Subject, explain};
use ocellus_core::item::Item;
use ocellus_core::plan::plan;
use ocellus_core::sink::Sink;
use ocellus_core::working::Step;

struct Finite;

impl Sink for Finite {
    fn item(&mut self, item: Item) {
        assert!(item.value.is_finite(), "{item:?}");
    }
    fn caution(&mut self, _caution: Caution) {}
    fn step(&mut self, step: Step) {
        assert!(step.value.is_finite(), "{step:?}");
    }
}

fuzz_target!(|entries: Vec<(u8, u16)>| {
    if let Ok(case) = Case::try_from(&ocellus_fuzz::draft(&entries)) {
        plan(&case, &mut Finite);
        for subject in Subject::all() {
            explain(subject, &case, &mut Finite);
        }
    }
});
