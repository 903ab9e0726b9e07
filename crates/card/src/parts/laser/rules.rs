//! What must hold between the entries about a laser.

use super::table::entries::*;
use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;
use crate::parts::eye::choices::PreviousSurgery;
use crate::parts::eye::table::entries::PREVIOUS_SURGERY;
use crate::rule::Rule;

pub(crate) const RULES: &[Rule] = &[
    // a power after laser means nothing without its origin
    Rule::Together(&[K_AFTER.id()], &[K_AFTER_FROM.id()]),
    Rule::Together(&[REFRACTION_BEFORE.id(), REFRACTION_AFTER.id()], &[REFRACTION_BEFORE.id(), REFRACTION_AFTER.id()]),
    Rule::Check(only_after_laser),
];

fn only_after_laser(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    let surgery = entered.get(PREVIOUS_SURGERY);
    let laser = matches!(surgery, None | Some(PreviousSurgery::MyopicLaser | PreviousSurgery::HyperopicLaser));
    for entry in [K_BEFORE.id(), REFRACTION_BEFORE.id(), REFRACTION_AFTER.id(), K_AFTER.id(), K_AFTER_FROM.id()] {
        if !laser && entered.is_made(entry) {
            refuse(Wrong::NoLaser, entry);
        }
    }
}
