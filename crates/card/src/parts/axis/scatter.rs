//! How far cornea, incisions and a toric lens scatter about what is planned.

use super::choices::Marked;
use super::table::entries::*;
use super::table::{cautions, items};
use crate::caution::Caution;
use crate::item::Item;
use crate::parts::eye::Eye;
use crate::parts::general::{show, show_word};
use crate::sink::Sink;
use ocellus_core::astigmatism::expected::{self, Scatter, cornea_sd};

/// The scatter that a case says, or the usual one.
pub(super) fn known(eye: &Eye) -> Option<Scatter> {
    let cornea = cornea_sd(eye.get(ASTIGMATISM_SD)?, eye.get(INCISION_SD)?);
    Some(Scatter::new(cornea, alignment_sd(eye)))
}

fn alignment_sd(eye: &Eye) -> f64 {
    expected::alignment_sd(eye.get(ALIGNMENT_SD), eye.get(MARKED) == Some(Marked::Lying))
}

/// What the expected residual rests on.
#[inline(never)]
pub(super) fn tell(eye: &Eye, sink: &mut dyn Sink) {
    sink.caution(Caution::general(cautions::RESIDUAL_NOMINAL));
    show_word(eye.entered(), sink, MARKED.id());
    match eye.get(MARKED) {
        None => sink.caution(Caution::about(cautions::MARKED_UNKNOWN, MARKED)),
        Some(Marked::Lying) => sink.caution(Caution::about(cautions::MARKED_LYING, MARKED)),
        Some(Marked::Upright) => {}
    }
    show(eye.entered(), sink, &[ASTIGMATISM_SD.id(), INCISION_SD.id(), ALIGNMENT_SD.id()]);
    sink.item(Item::one(items::ALIGNMENT_SD, alignment_sd(eye)));
}
