//! A drug as it comes in its bottle, made weaker.

mod steps;
pub mod table;

use crate::entered::Entered;
use crate::out::Out;
use crate::rule::Rule;
use steps::{Working, working};
use table::entries::*;
use table::{cautions, items};

pub(crate) const RULES: &[Rule] = &[Rule::Together(&[DRUG.id()], &[DISSOLVED.id(), DILUTED_TO.id(), MIXTURE.id()])];

#[inline(never)]
pub(crate) fn plan(entered: &Entered, out: &mut Out) {
    out.show(const { &[DRUG.id(), DISSOLVED.id(), DILUTED_TO.id(), MIXTURE.id()] });
    let Some(w) = known(entered) else { return };
    out.item(items::IN_BOTTLE, w.bottle);
    if w.drawn > w.mixture {
        return out.about(cautions::BOTTLE_WEAK, DILUTED_TO);
    }
    out.item(items::DRAWN, w.drawn);
    out.item(items::ADDED, w.added);
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, entered: &Entered, out: &mut Out) -> bool {
    known(entered).inspect(|w| w.show(out)).is_some()
}

fn known(entered: &Entered) -> Option<Working> {
    Some(working(entered.get(DRUG)?, entered.get(DISSOLVED)?, entered.get(DILUTED_TO)?, entered.get(MIXTURE)?))
}
