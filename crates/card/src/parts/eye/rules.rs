//! What must hold between the entries of a measured eye.

use super::table::entries::*;
use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;
use crate::parts::identity::table::entries::{SIDE, SURGERY_DATE};
use crate::parts::target::table::entries::SECOND_FOR;
use crate::rule::Rule;
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{Axis, CornealPower, CornealRadius, KeratometricIndex};
use ocellus_text::text;

pub(crate) const RULES: &[Rule] = &[
    Rule::Needed(SIDE.id()),
    Rule::Check(|entered, refuse| of_length(AXIAL_LENGTH.id(), entered, refuse)),
    Rule::Needed(K_KIND.id()),
    Rule::Check(|entered, refuse| of_length(AL_METHOD.id(), entered, refuse)),
    Rule::Needed(EYE_STATE.id()),
    Rule::Needed(PREVIOUS_SURGERY.id()),
    Rule::Check(powers),
    Rule::Together(&[K1.id()], &[K2.id()]),
    Rule::Together(&[K2.id()], &[K1.id()]),
    Rule::Together(&[R1.id()], &[R2.id()]),
    Rule::Together(&[R2.id()], &[R1.id()]),
    Rule::Together(&[K1_AXIS.id()], &[K2_AXIS.id()]),
    Rule::Together(&[K2_AXIS.id()], &[K1_AXIS.id()]),
    Rule::Together(&[ACD.id()], &[ACD_FROM.id()]),
    Rule::Together(&[ACD_FROM.id()], &[ACD.id()]),
    Rule::Together(&[OLD_CYLINDER.id()], &[OLD_AXIS.id()]),
    Rule::Together(&[OLD_AXIS.id()], &[OLD_CYLINDER.id()]),
    Rule::Together(&[OLD_CYLINDER.id(), OLD_AXIS.id()], &[OLD_SPHERE.id()]),
    Rule::Together(&[FELLOW_K1.id()], &[FELLOW_K2.id()]),
    Rule::Together(&[FELLOW_K2.id()], &[FELLOW_K1.id()]),
    Rule::Ordered(BIOMETRY_DATE.id(), SURGERY_DATE.id(), BIOMETRY_DATE.id()),
    Rule::Check(one_cornea),
    Rule::Accepts(Wrong::Missing, K1.id(), text!("or {} and {}"), &[R1.id(), R2.id()]),
    Rule::Accepts(Wrong::Missing, K2.id(), text!("or {} and {}"), &[R1.id(), R2.id()]),
    Rule::Accepts(
        Wrong::Disagree,
        R1.id(),
        text!("the radius of {} at the {}, or one of the two alone"),
        &[K1.id(), INDEX.id()],
    ),
    Rule::Accepts(
        Wrong::Disagree,
        R2.id(),
        text!("the radius of {} at the {}, or one of the two alone"),
        &[K2.id(), INDEX.id()],
    ),
    Rule::Accepts(Wrong::Disagree, BIOMETRY_DATE.id(), text!("not later than {}"), &[SURGERY_DATE.id()]),
];

/// A lens by refraction needs no length.
fn of_length(entry: EntryId, entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    let needless = entered.is_made(SECOND_FOR) && !entered.is_made(AXIAL_LENGTH);
    if !needless && !entered.is_made(entry) {
        refuse(Wrong::Missing, entry);
    }
}

/// Powers or radii there must be.
fn powers(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    if ![K1.id(), K2.id(), R1.id(), R2.id()].iter().any(|entry| entered.is_made(*entry)) {
        refuse(Wrong::Missing, K1.id());
        refuse(Wrong::Missing, K2.id());
    }
}

/// Both when they agree at the index: a cheap proof that the index is the printout's.
fn one_cornea(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    let (Some(index), Some(cornea)) = (read(entered).index, cornea(entered)) else { return };
    let Read { powers, radii, .. } = read(entered);
    if let (Some((k1, k2)), Some((r1, r2))) = (powers, radii) {
        for (k, r, entry) in [(k1, r1, R1.id()), (k2, r2, R2.id())] {
            if !Cornea::same(k, r, index) {
                refuse(Wrong::Disagree, entry);
            }
        }
    }
    // powers that are accepted can still make no cornea at an unusual index
    if cornea.is_none() {
        refuse(Wrong::NoCornea, INDEX.id());
    }
}

/// What was entered of the cornea, each where it is in its range.
struct Read {
    powers: Option<(CornealPower, CornealPower)>,
    radii: Option<(CornealRadius, CornealRadius)>,
    axes: Option<(Axis, Axis)>,
    index: Option<KeratometricIndex>,
}

fn read(entered: &Entered) -> Read {
    let number = |entry: EntryId| entered.peek(entry);
    let power = |entry| CornealPower::from_d(number(entry)?).ok();
    let radius = |entry| CornealRadius::from_mm(number(entry)?).ok();
    let axis = |entry| Axis::from_deg(number(entry)?).ok();
    Read {
        powers: power(K1.id()).zip(power(K2.id())),
        radii: radius(R1.id()).zip(radius(R2.id())),
        axes: axis(K1_AXIS.id()).zip(axis(K2_AXIS.id())),
        index: entered.peek(INDEX.id()).and_then(|index| KeratometricIndex::new(index).ok()),
    }
}

/// The cornea of powers, or of radii, which go before; nothing where neither is there, and none where they make none.
pub(super) fn cornea(entered: &Entered) -> Option<Option<Cornea>> {
    let Read { powers, radii, axes, index } = read(entered);
    let cornea = match (powers, radii) {
        (_, Some((r1, r2))) => Cornea::from_radii(r1, r2, axes),
        (Some((k1, k2)), None) => Cornea::from_powers(k1, k2, index?, axes),
        (None, None) => return None,
    };
    Some(cornea.ok())
}
