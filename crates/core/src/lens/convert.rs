//! One lens constant from another: second best to the lens's own, and always marked so.

use crate::constant::lens::*;
use crate::error::Error;
use crate::lens::eye::{Eye, Lack};
use crate::lens::srkt_optics::acd_const;
use crate::quantity::{AConstant, HaigisA0, HaigisSlope, Pacd, SurgeonFactor};

/// Chamber depth constant from an A-constant, mm.
///
/// ```text
/// ACDconst = 0.62467 A - 68.747
/// ```
///
/// ```
/// use ocellus_core::{lens::convert::acd_constant, quantity::AConstant};
/// assert!((acd_constant(AConstant::new(118.5)?) - 5.276).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn acd_constant(a: AConstant) -> f64 {
    acd_const(a.get())
}

/// Surgeon factor from an A-constant.
///
/// ```text
/// SF = 0.5663 A - 65.60
/// ```
///
/// # Errors
/// Outside [`crate::quantity::SurgeonFactor::BOUNDS`].
///
/// ```
/// use ocellus_core::{lens::convert::surgeon_factor, quantity::AConstant};
/// assert!((surgeon_factor(AConstant::new(118.5)?)?.mm() - 1.51).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn surgeon_factor(a: AConstant) -> Result<SurgeonFactor, Error> {
    SurgeonFactor::from_mm(SF_SLOPE.get() * a.get() + SF_0.get())
}

/// pACD from a surgeon factor.
///
/// ```text
/// pACD = (SF + 3.595)/0.9704
/// ```
///
/// # Errors
/// Outside [`crate::quantity::Pacd::BOUNDS`].
///
/// ```
/// use ocellus_core::{lens::convert::{pacd, surgeon_factor}, quantity::AConstant};
/// assert!((pacd(surgeon_factor(AConstant::new(118.5)?)?)?.mm() - 5.26).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn pacd(sf: SurgeonFactor) -> Result<Pacd, Error> {
    Pacd::from_mm((sf.mm() + PACD_ADD.get()) / PACD_DIV.get())
}

/// A-constant from a surgeon factor.
///
/// ```text
/// A = (SF + 65.60)/0.5663
/// ```
///
/// # Errors
/// Outside [`crate::quantity::AConstant::BOUNDS`].
///
/// ```
/// use ocellus_core::{lens::convert::a_from_surgeon_factor, quantity::SurgeonFactor};
/// assert!((a_from_surgeon_factor(SurgeonFactor::from_mm(1.51)?)?.get() - 118.5).abs() < 0.01);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn a_from_surgeon_factor(sf: SurgeonFactor) -> Result<AConstant, Error> {
    AConstant::new((sf.mm() - SF_0.get()) / SF_SLOPE.get())
}

/// Surgeon factor from a pACD.
///
/// ```text
/// SF = 0.9704 pACD - 3.595
/// ```
///
/// # Errors
/// Outside [`crate::quantity::SurgeonFactor::BOUNDS`].
///
/// ```
/// use ocellus_core::{lens::convert::surgeon_factor_from_pacd, quantity::Pacd};
/// assert!((surgeon_factor_from_pacd(Pacd::from_mm(5.26)?)?.mm() - 1.51).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn surgeon_factor_from_pacd(pacd: Pacd) -> Result<SurgeonFactor, Error> {
    SurgeonFactor::from_mm(PACD_DIV.get() * pacd.mm() - PACD_ADD.get())
}

/// A-constant from Haigis' a0, where a1 and a2 are the usual ones.
///
/// ```text
/// A = (a0 + 72.434)/0.62467
/// ```
///
/// # Errors
/// Outside [`crate::quantity::AConstant::BOUNDS`].
///
/// ```
/// use ocellus_core::{lens::convert::a_from_haigis, quantity::HaigisA0};
/// assert!((a_from_haigis(HaigisA0::from_mm(1.527)?)?.get() - 118.4).abs() < 0.001);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn a_from_haigis(a0: HaigisA0) -> Result<AConstant, Error> {
    AConstant::new((a0.mm() - HAIGIS_A0.get()) / ACD_CONST_SLOPE.get())
}

/// A-constant from a chamber depth constant.
///
/// ```text
/// A = (ACDconst + 68.747)/0.62467
/// ```
///
/// # Errors
/// Outside [`crate::quantity::AConstant::BOUNDS`].
///
/// ```
/// use ocellus_core::lens::convert::a_from_acd_constant;
/// assert!((a_from_acd_constant(5.276)?.get() - 118.5).abs() < 0.001);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn a_from_acd_constant(acd_constant: f64) -> Result<AConstant, Error> {
    AConstant::new((acd_constant - ACD_CONST_0.get()) / ACD_CONST_SLOPE.get())
}

/// Haigis' constants from an A-constant, unoptimised.
///
/// ```text
/// a0 = 0.62467 A - 72.434      a1 = 0.4      a2 = 0.1
/// ```
///
/// # Errors
/// Outside [`crate::quantity::HaigisA0::BOUNDS`].
///
/// ```
/// use ocellus_core::{lens::convert::haigis, quantity::AConstant};
/// let (a0, a1, a2) = haigis(AConstant::new(118.4)?)?;
/// assert!((a0.mm() - 1.527).abs() < 0.0005 && a1.get() == 0.4 && a2.get() == 0.1);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn haigis(a: AConstant) -> Result<(HaigisA0, HaigisSlope, HaigisSlope), Error> {
    let (a1, a2) = usual_slopes()?;
    Ok((HaigisA0::from_mm(ACD_CONST_SLOPE.get() * a.get() + HAIGIS_A0.get())?, a1, a2))
}

/// Haigis' a1 and a2 where a lens has none of its own.
fn usual_slopes() -> Result<(HaigisSlope, HaigisSlope), Error> {
    Ok((HaigisSlope::new(HAIGIS_A1.get())?, HaigisSlope::new(HAIGIS_A2.get())?))
}

/// The A-constant of an eye's lens.
pub(super) fn a_constant(eye: &dyn Eye) -> Result<AConstant, Lack> {
    eye.a_constant().ok_or(Lack::Constant)
}

/// The surgeon factor of an eye's lens: its own, or converted from its A-constant.
pub(super) fn surgeon_factor_of(eye: &dyn Eye) -> Result<SurgeonFactor, Lack> {
    match eye.surgeon_factor() {
        Some(own) => Ok(own),
        None => Ok(surgeon_factor(a_constant(eye)?)?),
    }
}

/// The pACD of an eye's lens: its own, or converted from its A-constant, or from its surgeon factor where it has none.
pub(super) fn pacd_of(eye: &dyn Eye) -> Result<Pacd, Lack> {
    if let Some(own) = eye.pacd() {
        return Ok(own);
    }
    let sf = match eye.a_constant() {
        Some(a) => surgeon_factor(a)?,
        None => eye.surgeon_factor().ok_or(Lack::Constant)?,
    };
    Ok(pacd(sf)?)
}

/// Haigis' constants of an eye's lens: its own; or a0 converted from its A-constant, the slopes the usual ones.
pub(super) fn haigis_of(eye: &dyn Eye) -> Result<(HaigisA0, HaigisSlope, HaigisSlope), Lack> {
    let a0 = match eye.haigis_a0() {
        Some(own) => own,
        None => haigis(a_constant(eye)?)?.0,
    };
    let (a1, a2) = match eye.haigis_slopes() {
        Some(own) => own,
        None => usual_slopes()?,
    };
    Ok((a0, a1, a2))
}
