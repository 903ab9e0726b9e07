//! What must hold between the entries about incisions and the back of the cornea.

use super::table::entries::*;
use crate::entered::Entered;
use crate::error::Wrong;
use crate::id::EntryId;
use crate::parts::eye::choices::KKind;
use crate::parts::eye::table::entries::{CORNEAL_THICKNESS, K_KIND, K1_AXIS};
use crate::rule::Rule;
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_text::text;

/// The back of the cornea.
const BACK: [EntryId; 4] = [BACK_R1.id(), BACK_R1_AXIS.id(), BACK_R2.id(), BACK_R2_AXIS.id()];

/// The ways to say where the incision is.
const SITES: [EntryId; 4] = [INCISION_SITE.id(), SITE_WORD.id(), CLOCK_HOUR.id(), CLOCK_SEEN.id()];

/// What is needed beside it.
const BESIDE: [EntryId; 2] = [CORNEAL_THICKNESS.id(), K1_AXIS.id()];

pub(crate) const RULES: &[Rule] = &[
    Rule::Together(&[CLOCK_HOUR.id()], &[CLOCK_SEEN.id()]),
    Rule::Together(&[CLOCK_SEEN.id()], &[CLOCK_HOUR.id()]),
    Rule::Together(&[CENTROID.id()], &[CENTROID_AXIS.id()]),
    Rule::Together(&[CENTROID_AXIS.id()], &[CENTROID.id()]),
    Rule::Together(&[OTHER_SITE.id()], &[OTHER_FLATTENING.id()]),
    Rule::Together(&[OTHER_FLATTENING.id()], &[OTHER_SITE.id()]),
    Rule::Together(&BACK, &BACK),
    Rule::Together(&BACK, &BESIDE),
    Rule::Check(incisions),
    Rule::Check(back),
    Rule::Accepts(Wrong::Twice, SITE_WORD.id(), text!("one of {}, {}, and {} with {}"), &SITES),
    Rule::Accepts(Wrong::Twice, CLOCK_HOUR.id(), text!("one of {}, {}, and {} with {}"), &SITES),
    Rule::Accepts(
        Wrong::Twice,
        CENTROID.id(),
        text!("flattening by each cut, or the centroid of all that you do"),
        &[],
    ),
    Rule::Accepts(Wrong::Twice, BACK_FROM.id(), text!("\"none\": a total power has the back of the cornea in it"), &[]),
];

/// One site, said once; and one way to say what the surgeon's incisions do.
fn incisions(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    let sites =
        || [INCISION_SITE.id(), SITE_WORD.id(), CLOCK_HOUR.id()].into_iter().filter(|entry| entered.is_made(*entry));
    let flattened = entered.is_made(FLATTENING) || entered.is_made(PAIRED_FLATTENING);
    if flattened && sites().next().is_none() {
        refuse(Wrong::Incomplete, INCISION_SITE.id());
    }
    sites().skip(1).for_each(|entry| refuse(Wrong::Twice, entry));
    if flattened && entered.is_made(CENTROID) {
        refuse(Wrong::Twice, CENTROID.id());
    }
}

/// One source for the back of the cornea: a total power has it already.
fn back(entered: &Entered, refuse: &mut dyn FnMut(Wrong, EntryId)) {
    let from = entered.get(BACK_FROM);
    // where some of them were entered, the others are asked for already
    if from == Some(BackFrom::Measured) && !BACK.iter().any(|entry| entered.is_made(*entry)) {
        for entry in BACK.into_iter().chain(BESIDE).filter(|entry| !entered.is_made(*entry)) {
            refuse(Wrong::Incomplete, entry);
        }
    }
    if from != Some(BackFrom::None) && entered.get(K_KIND) == Some(KKind::Total) {
        refuse(Wrong::Twice, BACK_FROM.id());
    }
}
