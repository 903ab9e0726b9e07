//! From a case to a method's view of its eye: what each method takes, and what it lacks.

use crate::case::{Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{AcdFrom, EyeState, KAfterFrom, KKind, LongEye, PreviousSurgery};
use crate::constant::optics::INDEX_1_3375;
use crate::error::Error;
use crate::eye::cornea::Cornea;
use crate::field::Field;
use crate::lens::prediction::{Corneas, Prediction};
use crate::lens::shammas::{self, Laser};
use crate::lens::{Method, convert, double_k, haigis, haigis_l, hofferq, holladay1, long_eye, srk2, srkt, t2};
use crate::quantity::{AConstant, AxialLength, ChamberDepth, CornealPower, KeratometricIndex, Pacd, SurgeonFactor};

/// What a laser changed on this cornea, where one did.
pub(crate) fn after_laser(case: &Case) -> Option<Laser> {
    match case.previous_surgery {
        PreviousSurgery::MyopicLaser => Some(Laser::Myopic),
        PreviousSurgery::HyperopicLaser => Some(Laser::Hyperopic),
        _ => None,
    }
}

/// The methods that may be asked about this eye.
pub(crate) fn methods(case: &Case) -> &'static [Method] {
    if after_laser(case).is_some() { Method::AFTER_LASER } else { Method::ORDINARY }
}

/// Why no method must be used on this eye at all.
pub(crate) fn refusals(case: &Case) -> impl Iterator<Item = Caution> {
    let surgery = match case.previous_surgery {
        PreviousSurgery::None | PreviousSurgery::MyopicLaser | PreviousSurgery::HyperopicLaser => None,
        PreviousSurgery::RadialCuts
        | PreviousSurgery::Graft
        | PreviousSurgery::Keratoconus
        | PreviousSurgery::Unknown => Some(Code::CorneaUnfit),
    };
    let total = (case.k_kind == KKind::Total).then_some(Code::TotalK);
    let oil = (case.eye_state == EyeState::SiliconeOil).then_some(Code::SiliconeOil);
    [(surgery, Field::PreviousSurgery), (total, Field::KKind), (oil, Field::EyeState)]
        .into_iter()
        .filter_map(|(code, field)| Some(Caution::about(code?, field)))
}

/// One method for the lens of a case.
///
/// # Errors
/// The caution that says what the method lacks. Refusals of all methods are not asked here: see [`crate::lens::answer::answers`].
pub fn predict(method: Method, case: &Case) -> Result<Prediction, Caution> {
    predict_with(method, case, &case.constants())
}

/// One method for another lens in the same eye.
pub(crate) fn predict_with(method: Method, case: &Case, constants: &Constants) -> Result<Prediction, Caution> {
    predict_at(length(method, case)?, method, case, constants)
}

/// One method for another length of the same eye.
pub(crate) fn predict_at(
    al: AxialLength,
    method: Method,
    case: &Case,
    constants: &Constants,
) -> Result<Prediction, Caution> {
    Ok(match method {
        Method::Srk2 => Prediction::Srk2(srk2::working(al, &case.cornea, constants.a(method)?)),
        Method::Srkt => Prediction::Srkt(srkt::working(al, &case.cornea, constants.a(method)?)),
        Method::T2 => Prediction::T2(t2::working(al, &case.cornea, constants.a(method)?)),
        Method::Holladay1 => {
            Prediction::Holladay1(holladay1::working(al, &case.cornea, constants.surgeon_factor(method)?))
        }
        Method::HofferQ => Prediction::HofferQ(hofferq::working(al, &case.cornea, constants.pacd(method)?)),
        Method::Haigis => {
            let own = constants.haigis(method)?;
            Prediction::Haigis(haigis::working(al, &case.cornea, chamber_depth(method, case)?, own))
        }
        Method::ShammasPl => {
            let laser = after_laser(case).ok_or(Caution::of(Code::NotThisEye, method))?;
            Prediction::ShammasPl(shammas::working(al, &case.cornea, constants.a(method)?, laser), laser)
        }
        Method::HaigisL => {
            if after_laser(case) != Some(Laser::Myopic) {
                return Err(Caution::of(Code::NotThisEye, method));
            }
            let own = constants.haigis(method)?;
            let working = haigis_l::working(al, &case.cornea, chamber_depth(method, case)?, own);
            Prediction::HaigisL(working.map_err(|_| Caution::of(Code::NoSolution, method))?)
        }
        Method::DoubleSrkt => {
            let (cornea, corneas) = two_corneas(method, case)?;
            Prediction::DoubleSrkt(srkt::working(al, &cornea, constants.a(method)?), corneas)
        }
        Method::DoubleHolladay1 => {
            let (cornea, corneas) = two_corneas(method, case)?;
            Prediction::DoubleHolladay1(holladay1::working(al, &cornea, constants.surgeon_factor(method)?), corneas)
        }
        Method::DoubleHofferQ => {
            let (cornea, corneas) = two_corneas(method, case)?;
            Prediction::DoubleHofferQ(hofferq::working(al, &cornea, constants.pacd(method)?), corneas)
        }
    })
}

/// The length that a method takes for that of the eye: the measured one, or adjusted as the case asks.
pub(crate) fn length(method: Method, case: &Case) -> Result<AxialLength, Caution> {
    let measured = case.axial_length.ok_or(Caution::of(Code::NeedsLength, method))?;
    match adjusted(method, case) {
        Some(w) => AxialLength::from_mm(w.adjusted).map_err(|_| Caution::of(Code::NoSolution, method)),
        None => Ok(measured),
    }
}

/// How the case's set adjusts the length for a method, where it does.
pub(crate) fn adjusted(method: Method, case: &Case) -> Option<long_eye::Working> {
    long_eye::working(case.long_eye().unwrap_or(LongEye::Off), method, case.axial_length?)
}

/// The cornea before a laser, and its power then and after.
pub(crate) fn two_corneas(method: Method, case: &Case) -> Result<(Cornea, Corneas), Caution> {
    let lacks = |code| Caution::of(code, method);
    let before = case.k_before().ok_or(lacks(Code::NeedsKBefore))?;
    let after = k_after(case).map_err(lacks)?;
    let fails = |_: Error| lacks(Code::NoSolution);
    let index = KeratometricIndex::new(INDEX_1_3375.get()).map_err(fails)?;
    Ok((Cornea::from_powers(before, before, index, None).map_err(fails)?, (before, after)))
}

/// The corneal power after a laser: as estimated, or as its history says; a keratometer's is refused.
pub(crate) fn k_after(case: &Case) -> Result<CornealPower, Code> {
    match (case.k_after_from().ok_or(Code::NeedsKAfter)?, case.k_after()) {
        (KAfterFrom::Keratometer, _) => Err(Code::RawKAfter),
        (_, Some(estimate)) => Ok(estimate),
        (KAfterFrom::History, None) => k_from_history(case).ok_or(Code::NeedsKAfter),
        (_, None) => Err(Code::NeedsKAfter),
    }
}

/// The corneal power after a laser that the power before and the refractions say.
pub(crate) fn k_from_history(case: &Case) -> Option<CornealPower> {
    let (before, after) = (case.refraction_before()?, case.refraction_after()?);
    double_k::from_history(case.k_before()?, before, after, case.vertex).ok()
}

/// A lens's constants as a method takes them: its own, or converted from another.
impl Constants {
    fn a(&self, method: Method) -> Result<AConstant, Caution> {
        self.a.ok_or(Caution::of(Code::NeedsConstant, method))
    }

    fn surgeon_factor(&self, method: Method) -> Result<SurgeonFactor, Caution> {
        match self.surgeon_factor {
            Some(own) => Ok(own),
            None => convert::surgeon_factor(self.a(method)?).map_err(|_| Caution::of(Code::NoSolution, method)),
        }
    }

    fn pacd(&self, method: Method) -> Result<Pacd, Caution> {
        let converted = match (self.pacd, self.a, self.surgeon_factor) {
            (Some(own), ..) => Ok(own),
            (None, Some(a), _) => convert::surgeon_factor(a).and_then(convert::pacd),
            (None, None, Some(sf)) => convert::pacd(sf),
            (None, None, None) => return Err(Caution::of(Code::NeedsConstant, method)),
        };
        converted.map_err(|_| Caution::of(Code::NoSolution, method))
    }

    fn haigis(&self, method: Method) -> Result<haigis::Constants, Caution> {
        let fails = |_: Error| Caution::of(Code::NoSolution, method);
        let a0 = match self.haigis_a0 {
            Some(own) => own,
            None => convert::haigis(self.a(method)?).map_err(fails)?.0,
        };
        let (a1, a2) = match self.haigis_slopes {
            Some(own) => own,
            None => convert::usual_slopes().map_err(fails)?,
        };
        Ok((a0, a1, a2))
    }
}

/// The chamber depth Haigis means: from the front of the cornea to a natural lens.
fn chamber_depth(method: Method, case: &Case) -> Result<ChamberDepth, Caution> {
    let lacks = |code| Caution::of(code, method);
    let (acd, from) = case.acd().ok_or(lacks(Code::NeedsAcd))?;
    if case.eye_state != EyeState::Phakic {
        return Err(lacks(Code::NotMeasuredPhakic));
    }
    match from {
        AcdFrom::Epithelium => Ok(acd),
        AcdFrom::Endothelium => {
            let cct = case.corneal_thickness().ok_or(lacks(Code::NeedsCct))?;
            ChamberDepth::from_mm(acd.mm() + cct.um() / 1000.0).map_err(|_| lacks(Code::NoSolution))
        }
    }
}
