//! What must hold between the entries of a column, a fluid and a pump.

use super::choices::FluidFrom;
use super::table::entries::*;
use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;
use crate::rule::Rule;
use ocellus_text::text;

pub(crate) const RULES: &[Rule] = &[
    Rule::Together(&[OPEN_LEVEL.id()], &[EYE_LEVEL.id()]),
    Rule::Together(&[SET_PRESSURE.id()], &[ASSUMED_LEVEL.id(), EYE_LEVEL.id()]),
    Rule::Together(&[WANTED_PRESSURE.id(), PUMP_LEVEL.id()], &[EYE_LEVEL.id()]),
    Rule::OneOf(OPEN_LEVEL.id(), SET_PRESSURE.id()),
    Rule::OneOf(SET_PRESSURE.id(), GAS_PRESSURE.id()),
    Rule::Check(level),
    Rule::Check(density),
    Rule::Because(Wrong::Incomplete, OPEN_LEVEL.id(), EYE_LEVEL.id()),
    Rule::Because(Wrong::Twice, DENSITY.id(), DENSITY_FROM.id()),
    Rule::Accepts(Wrong::Twice, DENSITY.id(), text!("{} = \"entered\" with it, or none"), &[DENSITY_FROM.id()]),
];

/// A level of the eye by itself stands for nothing.
fn level(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    let to = [OPEN_LEVEL.id(), SET_PRESSURE.id(), WANTED_PRESSURE.id(), PUMP_LEVEL.id()];
    if entered.is_made(EYE_LEVEL) && !to.iter().any(|entry| entered.is_made(*entry)) {
        refuse(Wrong::Incomplete, OPEN_LEVEL.id());
    }
}

/// Water has a density of its own.
fn density(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    if entered.get(DENSITY_FROM) == Some(FluidFrom::Water) && entered.is_made(DENSITY) {
        refuse(Wrong::Twice, DENSITY.id());
    }
}
