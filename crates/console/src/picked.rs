//! Some numbers of a card: the first of each.

use ocellus_card::caution::Caution;
use ocellus_card::id::ItemId;
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::lens::method::Method;
use ocellus_core::working::Steps;

/// The first number of each kind that is wanted, and of which method.
pub(crate) struct Picked<'a> {
    wanted: &'a [ItemId],
    found: &'a mut [Option<(f64, Option<Method>)>],
}

impl<'a> Picked<'a> {
    /// These, each with a place where it is kept.
    pub(crate) fn of(wanted: &'a [ItemId], found: &'a mut [Option<(f64, Option<Method>)>]) -> Picked<'a> {
        Picked { wanted, found }
    }

    fn first(&self, wanted: ItemId) -> Option<(f64, Option<Method>)> {
        self.wanted.iter().zip(&*self.found).find(|(what, _)| **what == wanted).and_then(|(_, found)| *found)
    }

    pub(crate) fn get(&self, wanted: ItemId) -> Option<f64> {
        self.first(wanted).map(|(value, _)| value)
    }

    pub(crate) fn method(&self, wanted: ItemId) -> Option<Method> {
        self.first(wanted).and_then(|(_, method)| method)
    }
}

impl Steps for Picked<'_> {}

impl Sink for Picked<'_> {
    fn item(&mut self, item: Item) {
        if let Some((_, slot)) = self.wanted.iter().zip(&mut *self.found).find(|(what, _)| **what == item.what) {
            slot.get_or_insert((item.value, item.method));
        }
    }

    fn caution(&mut self, _caution: Caution) {}
}
