//! Entries of any kind, in and out of their ranges: whatever becomes a case gets a card and workings of finite numbers.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_core::caution::Caution;
use ocellus_core::explain::Subject;
use ocellus_core::item::Item;
use ocellus_core::sheet::Sheet;
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
    if let Some(sheet) = Sheet::check(&ocellus_fuzz::draft(&entries), &mut |_| {}) {
        sheet.plan(&mut Finite);
        for subject in Subject::all() {
            sheet.explain(subject, &mut Finite);
        }
    }
});
