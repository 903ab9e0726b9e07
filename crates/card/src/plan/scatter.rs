//! How far cornea, incisions and a toric lens scatter about what is planned.

use super::{choice_entries, entries};
use crate::astigmatism::expected::Scatter;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::Marked;
use crate::constant::off_axis::{LYING_MEAN, LYING_SD, MARKING_MEAN, MARKING_SD};
use crate::field::Field;
use crate::item::{Item, What};
use crate::math::{sqrt, square};
use crate::sink::Sink;

/// The scatter that a case says, or the usual one.
pub(crate) fn known(case: &Case) -> Option<Scatter> {
    let cornea = square(case.astigmatism_sd()?.d()) + square(case.incision_sd()?.d());
    Some(Scatter::new(sqrt(cornea), alignment_sd(case)))
}

/// SD of the lens's angle: as entered, or of published lenses marked and placed; and of eyes that turn lying down.
///
/// ```text
/// SD^2 = mean^2 + SD^2 of a published error, whose sense is not known
/// ```
fn alignment_sd(case: &Case) -> f64 {
    let placed =
        case.alignment_sd().map_or(square(MARKING_MEAN.get()) + square(MARKING_SD.get()), |sd| square(sd.deg()));
    let lying = match case.marked() {
        Some(Marked::Lying) => square(LYING_MEAN.get()) + square(LYING_SD.get()),
        _ => 0.0,
    };
    sqrt(placed + lying)
}

/// What the expected residual rests on.
#[inline(never)]
pub(super) fn tell(case: &Case, sink: &mut dyn Sink) {
    sink.caution(Caution::general(Code::ResidualNominal));
    choice_entries(case, sink, Field::Marked);
    match case.marked() {
        None => sink.caution(Caution::about(Code::MarkedUnknown, Field::Marked)),
        Some(Marked::Lying) => sink.caution(Caution::about(Code::MarkedLying, Field::Marked)),
        Some(Marked::Upright) => {}
    }
    entries(case.draft(), sink, &[Field::AstigmatismSd, Field::IncisionSd, Field::AlignmentSd]);
    sink.item(Item::one(What::AlignmentSd, alignment_sd(case)));
}
