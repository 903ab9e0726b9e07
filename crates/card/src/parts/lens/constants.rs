//! The constants of the lens: what each means in the terms of another, and whether all can be those of one lens.

use super::limits::CONSTANTS_APART;
use super::table::entries::*;
use super::table::{cautions, items};
use crate::id::{EntryId, ItemId};
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::general::range;
use ocellus_core::lens::convert::{a_from_haigis, a_from_surgeon_factor, surgeon_factor_from_pacd};
use ocellus_core::quantity::AConstant;

/// What each constant entered means as an A-constant, and the number that says so, where the published conversions give one: a0
/// with slopes of its own means none.
pub(super) fn as_a(eye: &Eye) -> [(EntryId, Option<ItemId>, Option<AConstant>); 4] {
    let of_pacd = |pacd| surgeon_factor_from_pacd(pacd).and_then(a_from_surgeon_factor).ok();
    let own_slopes = eye.get(HAIGIS_A1).zip(eye.get(HAIGIS_A2)).is_some();
    let by_factor = eye.get(SURGEON_FACTOR).and_then(|sf| a_from_surgeon_factor(sf).ok());
    let by_a0 = eye.get(HAIGIS_A0).filter(|_| !own_slopes).and_then(|a0| a_from_haigis(a0).ok());
    [
        (A_CONSTANT.id(), None, eye.get(A_CONSTANT)),
        (SURGEON_FACTOR.id(), Some(items::A_OF_FACTOR), by_factor),
        (PACD.id(), Some(items::A_OF_PACD), eye.get(PACD).and_then(of_pacd)),
        (HAIGIS_A0.id(), Some(items::A_OF_A0), by_a0),
    ]
}

/// The constants entered, each with the A-constant that it means.
#[inline(never)]
pub(super) fn plan(eye: &Eye, out: &mut Out) {
    for (entry, what, a) in as_a(eye) {
        out.show(&[entry]);
        if let Some((what, a)) = what.zip(a) {
            out.item(what, a.get());
        }
    }
}

/// Whether the constants entered could be those of one lens.
#[inline(never)]
pub(super) fn apart(eye: &Eye, out: &mut Out) {
    let constants = as_a(eye);
    let known = || constants.iter().filter_map(|(entry, _, a)| Some((*entry, (*a)?.get())));
    let Some((least, most)) = range(known().map(|(_, a)| a)) else { return };
    // said of the one that lies furthest from the first
    let first = known().next().map_or(0.0, |(_, a)| a);
    let furthest =
        known().reduce(|far, other| if (other.1 - first).abs() > (far.1 - first).abs() { other } else { far });
    if let Some((entry, _)) = furthest.filter(|_| most - least > CONSTANTS_APART.get()) {
        out.about(cautions::CONSTANTS_APART, entry);
    }
}
