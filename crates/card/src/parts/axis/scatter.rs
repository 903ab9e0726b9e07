//! How far cornea, incisions and a toric lens scatter about what is planned.

use super::choices::Marked;
use super::table::entries::*;
use super::table::{cautions, items};
use crate::parts::eye::Eye;

use crate::out::Out;
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
pub(super) fn tell(eye: &Eye, out: &mut Out) {
    out.caution(cautions::RESIDUAL_NOMINAL);
    out.show_word(MARKED.id());
    match eye.get(MARKED) {
        None => out.about(cautions::MARKED_UNKNOWN, MARKED),
        Some(Marked::Lying) => out.about(cautions::MARKED_LYING, MARKED),
        Some(Marked::Upright) => {}
    }
    out.show(const { &[ASTIGMATISM_SD.id(), INCISION_SD.id(), ALIGNMENT_SD.id()] });
    out.item(items::ALIGNMENT_SD, alignment_sd(eye));
}
