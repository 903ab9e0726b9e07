//! What must hold between the entries of a tube and its fluid.

use super::choices::ViscosityFrom;
use super::table::entries::*;
use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;
use crate::rule::Rule;
use ocellus_text::text;

pub(crate) const RULES: &[Rule] = &[
    Rule::Together(&[BORE_2.id()], &[TUBE_LENGTH_2.id(), TUBE_LENGTH.id()]),
    Rule::Together(&[TUBE_LENGTH_2.id()], &[BORE_2.id()]),
    Rule::OneOf(TUBE_FLOW.id(), DRIVE.id()),
    Rule::Check(viscosity),
    Rule::Because(Wrong::Incomplete, VISCOSITY.id(), VISCOSITY_FROM.id()),
    Rule::Because(Wrong::Twice, VISCOSITY.id(), VISCOSITY_FROM.id()),
    Rule::Accepts(Wrong::Twice, VISCOSITY.id(), text!("{} = \"at_shear\" with it, or none"), &[VISCOSITY_FROM.id()]),
];

/// Water has a viscosity of its own; no other fluid has.
fn viscosity(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    match (entered.get(VISCOSITY_FROM) == Some(ViscosityFrom::Water), entered.is_made(VISCOSITY)) {
        (true, true) => refuse(Wrong::Twice, VISCOSITY.id()),
        (false, false) => refuse(Wrong::Incomplete, VISCOSITY.id()),
        _ => {}
    }
}
