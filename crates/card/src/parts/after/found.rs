//! What was found after the operation.

use super::table::entries::*;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::INDEX;
use ocellus_core::astigmatism::change::{Change, change};
use ocellus_core::astigmatism::cornea;
use ocellus_core::astigmatism::plane::{self, Spectacles};
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::optics::cornea::Cornea;

/// The cornea after the operation, measured with the same instrument.
pub(super) fn cornea_after(eye: &Eye) -> Option<Cornea> {
    let axes = eye.get(AFTER_K1_AXIS).zip(eye.get(AFTER_K2_AXIS));
    Cornea::from_powers(eye.get(AFTER_K1)?, eye.get(AFTER_K2)?, eye.get(INDEX)?, axes).ok()
}

/// The refraction after the operation.
pub(super) fn refraction_found(eye: &Eye) -> Option<SpheroCylinder<Spectacles>> {
    let (sphere, cylinder) = (eye.get(AFTER_SPHERE)?, eye.get(AFTER_CYLINDER)?);
    Some(SpheroCylinder::at(Spectacles, sphere.d(), cylinder.d(), eye.get(AFTER_AXIS)))
}

/// The correction still needed at the cornea, by the refraction found.
pub(crate) fn needed_now(eye: &Eye) -> Option<PowerVector<plane::Cornea>> {
    Some(PowerVector::of(refraction_found(eye)?.to_cornea(eye.vertex()).ok()?))
}

/// What the incisions made of the front: the cornea after less the cornea before; `None` where one of the two or an axis
/// was not measured.
///
/// ```
/// use ocellus_card::{case::Case, draft::Draft, entries, parts::after::incision_found};
/// let mut draft = Draft::default();
/// for (entry, text) in [
///     (entries::SIDE.id(), "right"), (entries::AXIAL_LENGTH.id(), "23.50"), (entries::K1.id(), "43.00"),
///     (entries::K1_AXIS.id(), "180"), (entries::K2.id(), "44.00"), (entries::K2_AXIS.id(), "90"),
///     (entries::K_KIND.id(), "keratometric"), (entries::AL_METHOD.id(), "optical"), (entries::EYE_STATE.id(), "phakic"),
///     (entries::PREVIOUS_SURGERY.id(), "none"), (entries::TARGET.id(), "0.00"), (entries::AFTER_K1.id(), "42.90"),
///     (entries::AFTER_K1_AXIS.id(), "180"), (entries::AFTER_K2.id(), "44.20"), (entries::AFTER_K2_AXIS.id(), "90"),
/// ] {
///     draft.enter(entry, text)?;
/// }
/// let made = Case::try_from(&draft)?.known(|known| incision_found(known.eye?)).unwrap();
/// assert!((made.cylinder() - 0.3).abs() < 1e-9 && made.strongest().unwrap().deg() == 90.0);
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn incision_found(eye: &Eye) -> Option<PowerVector<plane::Cornea>> {
    Some(cornea::measured(&cornea_after(eye)?)?.minus(cornea::measured(eye.cornea())?))
}

/// From the astigmatism of the cornea to none, and to what the refraction found still asks for.
pub(super) fn changed(eye: &Eye) -> Option<Change> {
    let (needed, before) = (needed_now(eye)?, cornea::measured(eye.cornea())?);
    let none = PowerVector::default();
    // the eye has what its correction takes away
    Some(change(before, PowerVector { m: 0.0, ..none.minus(needed) }, none))
}
