//! How a case answers what a method asks.

use super::table::entries::*;
use crate::parts::eye::Eye;
use crate::parts::eye::choices::{AcdFrom, EyeState};
use crate::parts::eye::table::entries::{ACD, ACD_FROM, CORNEAL_THICKNESS};
use crate::parts::laser::table::entries::K_BEFORE;
use crate::parts::laser::{after_laser, k_after};
use ocellus_core::lens::eye::{self, Lack, Laser};
use ocellus_core::lens::long_eye::{self, LongEye};
use ocellus_core::lens::method::Method;
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::*;

/// The constants by which the methods are asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Constants {
    /// Those of the lens of the case.
    OfLens,
    /// One A-constant, from which the others are converted.
    One(AConstant),
}

/// An eye as one method is asked about it.
pub(crate) struct Asked<'a> {
    pub(crate) eye: &'a Eye<'a>,
    pub(crate) method: Method,
    pub(crate) constants: Constants,
    /// Another length than its own.
    pub(crate) length: Option<AxialLength>,
}

impl<'a> Asked<'a> {
    /// With the length that the case gives it.
    pub(crate) fn of(eye: &'a Eye<'a>, method: Method, constants: Constants) -> Asked<'a> {
        Asked { eye, method, constants, length: None }
    }

    fn own<T>(&self, constant: impl FnOnce() -> Option<T>) -> Option<T> {
        if self.constants == Constants::OfLens { constant() } else { None }
    }
}

/// How the case's set adjusts the length for a method, where it does.
pub(crate) fn adjusted(method: Method, eye: &Eye) -> Option<long_eye::Working> {
    long_eye::working(eye.get(LONG_EYE).unwrap_or(LongEye::Off), method, eye.axial_length()?)
}

impl eye::Eye for Asked<'_> {
    fn axial_length(&self) -> Result<AxialLength, Lack> {
        if let Some(length) = self.length {
            return Ok(length);
        }
        let measured = self.eye.axial_length().ok_or(Lack::Length)?;
        match adjusted(self.method, self.eye) {
            Some(w) => Ok(AxialLength::from_mm(w.adjusted)?),
            None => Ok(measured),
        }
    }

    fn cornea(&self) -> Result<&Cornea, Lack> {
        Ok(self.eye.mean_cornea())
    }

    fn chamber_depth(&self) -> Result<ChamberDepth, Lack> {
        let (acd, from) = self.eye.get(ACD).zip(self.eye.get(ACD_FROM)).ok_or(Lack::Depth)?;
        if self.eye.state() != EyeState::Phakic {
            return Err(Lack::NaturalLens);
        }
        match from {
            AcdFrom::Epithelium => Ok(acd),
            AcdFrom::Endothelium => {
                let cct = self.eye.get(CORNEAL_THICKNESS).ok_or(Lack::Thickness)?;
                Ok(ChamberDepth::from_mm(acd.mm() + cct.um() / 1000.0)?)
            }
        }
    }

    fn a_constant(&self) -> Option<AConstant> {
        match self.constants {
            Constants::OfLens => self.eye.get(A_CONSTANT),
            Constants::One(a) => Some(a),
        }
    }

    fn surgeon_factor(&self) -> Option<SurgeonFactor> {
        self.own(|| self.eye.get(SURGEON_FACTOR))
    }

    fn pacd(&self) -> Option<Pacd> {
        self.own(|| self.eye.get(PACD))
    }

    fn haigis_a0(&self) -> Option<HaigisA0> {
        self.own(|| self.eye.get(HAIGIS_A0))
    }

    fn haigis_slopes(&self) -> Option<(HaigisSlope, HaigisSlope)> {
        self.own(|| self.eye.get(HAIGIS_A1).zip(self.eye.get(HAIGIS_A2)))
    }

    fn laser(&self) -> Option<Laser> {
        after_laser(self.eye)
    }

    fn k_before(&self) -> Result<CornealPower, Lack> {
        self.eye.get(K_BEFORE).ok_or(Lack::KBefore)
    }

    fn k_after(&self) -> Result<(CornealPower, bool), Lack> {
        k_after(self.eye)
    }
}
