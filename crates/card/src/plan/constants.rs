//! The constants of the lens: what each means in the terms of another, and whether all can be those of one lens.

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::constant::eye::CONSTANTS_APART;
use crate::item::Item;
use crate::lens::ladder::range;
use crate::sink::Sink;

/// The constants entered, each with the A-constant that it means.
#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    for (field, what, a) in case.constants().as_a() {
        entries(case.draft(), sink, &[field]);
        if let Some((what, a)) = what.zip(a) {
            sink.item(Item::one(what, a.get()));
        }
    }
}

/// Whether the constants entered could be those of one lens.
#[inline(never)]
pub(super) fn apart(case: &Case, sink: &mut dyn Sink) {
    let constants = case.constants().as_a();
    let known = || constants.iter().filter_map(|(field, _, a)| Some((*field, (*a)?.get())));
    let Some((least, most)) = range(known().map(|(_, a)| a)) else { return };
    // said of the one that lies furthest from the first
    let first = known().next().map_or(0.0, |(_, a)| a);
    let furthest =
        known().reduce(|far, other| if (other.1 - first).abs() > (far.1 - first).abs() { other } else { far });
    if let Some((field, _)) = furthest.filter(|_| most - least > CONSTANTS_APART.get()) {
        sink.caution(Caution::about(Code::ConstantsApart, field));
    }
}
