//! What must hold between the entries of a lens.

use super::table::entries::*;
use crate::error::Wrong;
use crate::rule::Rule;
use ocellus_text::text;

pub(crate) const RULES: &[Rule] = &[
    // a0 with both slopes of its own, or a0 alone
    Rule::Together(&[HAIGIS_A1.id()], &[HAIGIS_A2.id(), HAIGIS_A0.id()]),
    Rule::Together(&[HAIGIS_A2.id()], &[HAIGIS_A1.id()]),
    Rule::Ordered(LENS_LEAST.id(), LENS_MOST.id(), LENS_MOST.id()),
    Rule::Accepts(Wrong::Disagree, LENS_MOST.id(), text!("not below {}"), &[LENS_LEAST.id()]),
];
