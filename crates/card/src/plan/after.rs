//! After the operation: how far the prediction was off, what the incisions did, what was wanted against what came.

use super::entries;
use super::turn::needed_now;
use crate::astigmatism::change::{Change, change};
use crate::astigmatism::plane::Cornea;
use crate::astigmatism::polar::Polar;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::{cornea, meridian, on_dial};
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::constant::eye::OFF_SQUARE;
use crate::constant::off_axis::SMALL_TARGET;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::answer::{NONE, answer_shown};
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::After);
    entries(
        case.draft(),
        sink,
        &[
            Field::AfterK1,
            Field::AfterK1Axis,
            Field::AfterK2,
            Field::AfterK2Axis,
            Field::AfterSphere,
            Field::AfterCylinder,
            Field::AfterAxis,
        ],
    );
    errors(case, sink);
    incision(case, sink);
    if let Some(change) = changed(case) {
        tell(&change, sink);
    }
}

/// How far the refraction found is from each method's prediction for the lens chosen.
#[inline(never)]
fn errors(case: &Case, sink: &mut dyn Sink) {
    let (Some(found), Some(label)) = (case.refraction_found(), case.lens_power()) else { return };
    let mean = PowerVector::of(found).m;
    let mut answers = NONE;
    answer_shown(case, &mut |_| {}, &mut answers);
    for answer in answers.iter().flatten() {
        if let Some(predicted) = super::lens::refraction(case, answer, label) {
            sink.item(Item::of(What::FoundError, answer.method, mean - predicted));
        }
    }
}

/// What the incisions made of the front: the cornea after less the cornea before; `None` where one of the two or an axis
/// was not measured.
///
/// ```
/// use ocellus_core::{case::Case, draft::Draft, field::Field, plan::incision_found};
/// let mut draft = Draft::default();
/// for (field, text) in [
///     (Field::Side, "right"), (Field::AxialLength, "23.50"), (Field::K1, "43.00"), (Field::K1Axis, "180"),
///     (Field::K2, "44.00"), (Field::K2Axis, "90"), (Field::KKind, "keratometric"), (Field::AlMethod, "optical"),
///     (Field::EyeState, "phakic"), (Field::PreviousSurgery, "none"), (Field::Target, "0.00"), (Field::AfterK1, "42.90"),
///     (Field::AfterK1Axis, "180"), (Field::AfterK2, "44.20"), (Field::AfterK2Axis, "90"),
/// ] {
///     draft.enter(field, text)?;
/// }
/// let made = incision_found(&Case::try_from(&draft)?).unwrap();
/// assert!((made.cylinder() - 0.3).abs() < 1e-9 && made.strongest().unwrap().deg() == 90.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn incision_found(case: &Case) -> Option<PowerVector<Cornea>> {
    Some(cornea::measured(&case.cornea_after()?)?.minus(cornea::measured(&case.cornea)?))
}

#[inline(never)]
fn incision(case: &Case, sink: &mut dyn Sink) {
    if case.cornea_after().and_then(|after| after.off_square()).is_some_and(|off| off > OFF_SQUARE.get()) {
        sink.caution(Caution::about(Code::AxesNotSquare, Field::AfterK1Axis));
    }
    let Some(made) = incision_found(case) else { return };
    sink.item(Item::one(What::IncisionFound, made.cylinder()));
    if let Some(axis) = made.strongest() {
        sink.item(Item::one(What::IncisionFoundAxis, on_dial(axis)));
    }
    // about the meridian that it was meant to steepen, which is across it
    let Some(across) = case.incision_site().and_then(|site| meridian(site.deg() + 90.0)) else { return };
    let polar = Polar::about(across, made);
    sink.item(Item::one(What::IncisionFlattened, polar.along));
    sink.item(Item::one(What::IncisionTorque, polar.oblique));
}

/// From the astigmatism of the cornea to none, and to what the refraction found still asks for.
pub(crate) fn changed(case: &Case) -> Option<Change> {
    let (before, needed) = (cornea::measured(&case.cornea)?, needed_now(case)?);
    let none = PowerVector::default();
    // the eye has what its correction takes away
    Some(change(before, PowerVector { m: 0.0, ..none.minus(needed) }, none))
}

#[inline(never)]
fn tell(change: &Change, sink: &mut dyn Sink) {
    for (vector, size, axis) in [
        (change.target, What::Target, What::TargetAxis),
        (change.surgical, What::Surgical, What::SurgicalAxis),
        (change.difference, What::Difference, What::DifferenceAxis),
    ] {
        sink.item(Item::one(size, vector.cylinder()));
        if let Some(meridian) = vector.strongest() {
            sink.item(Item::one(axis, on_dial(meridian)));
        }
    }
    let Some(indices) = change.indices() else { return };
    for (what, value) in [
        (What::MagnitudeError, indices.magnitude_error),
        (What::AngleError, indices.angle_error),
        (What::CorrectionIndex, indices.correction),
        (What::SuccessIndex, indices.success),
        (What::FlatteningEffect, indices.flattening),
        (What::Torque, indices.torque),
    ] {
        sink.item(Item::one(what, value));
    }
    if indices.target < SMALL_TARGET.get() {
        sink.caution(Caution::about(Code::SmallTarget, Field::AfterCylinder));
    }
}
