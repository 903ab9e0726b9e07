//! What a method may ask of an eye and its lens.

use crate::error::Error;
use crate::optics::cornea::Cornea;
use crate::quantity::*;

/// An eye and its lens as a method asks for them: each thing only where the method needs it, so that whoever answers can note
/// what a number rests on.
pub trait Eye {
    /// Axial length.
    ///
    /// # Errors
    /// [`Lack::Length`] where there is none.
    fn axial_length(&self) -> Result<AxialLength, Lack>;

    /// The cornea as measured today.
    ///
    /// # Errors
    /// What is missing of it.
    fn cornea(&self) -> Result<&Cornea, Lack>;

    /// Depth of the chamber, from the front of the cornea to the natural lens.
    ///
    /// # Errors
    /// [`Lack::Depth`], [`Lack::Thickness`] or [`Lack::NaturalLens`].
    fn chamber_depth(&self) -> Result<ChamberDepth, Lack> {
        Err(Lack::Depth)
    }

    /// The lens's own A-constant.
    fn a_constant(&self) -> Option<AConstant> {
        None
    }

    /// The lens's own surgeon factor.
    fn surgeon_factor(&self) -> Option<SurgeonFactor> {
        None
    }

    /// The lens's own pACD.
    fn pacd(&self) -> Option<Pacd> {
        None
    }

    /// The lens's own a0.
    fn haigis_a0(&self) -> Option<HaigisA0> {
        None
    }

    /// The lens's own a1 and a2.
    fn haigis_slopes(&self) -> Option<(HaigisSlope, HaigisSlope)> {
        None
    }

    /// What a laser changed on this cornea, where one did.
    fn laser(&self) -> Option<Laser> {
        None
    }

    /// Mean corneal power before a laser, at 1.3375.
    ///
    /// # Errors
    /// [`Lack::KBefore`] where it is not known.
    fn k_before(&self) -> Result<CornealPower, Lack> {
        Err(Lack::KBefore)
    }

    /// Mean corneal power after a laser, at 1.3375, as estimated; and whether by its history alone.
    ///
    /// # Errors
    /// [`Lack::KAfter`], or [`Lack::RawKAfter`] for what a keratometer reads.
    fn k_after(&self) -> Result<(CornealPower, bool), Lack> {
        Err(Lack::KAfter)
    }
}

/// What a laser was for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Laser {
    /// Short sight: the cornea was flattened.
    Myopic,
    /// Long sight: the cornea was steepened.
    Hyperopic,
}

/// What a method lacks, so that it has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lack {
    /// An axial length.
    Length,
    /// A cornea.
    Cornea,
    /// A constant of the lens.
    Constant,
    /// A chamber depth.
    Depth,
    /// The corneal thickness, where the chamber depth begins behind it.
    Thickness,
    /// A natural lens, to which the chamber depth was measured.
    NaturalLens,
    /// The corneal power before a laser.
    KBefore,
    /// An estimate of the corneal power after a laser.
    KAfter,
    /// Such an estimate: a keratometer's reading is none.
    RawKAfter,
    /// An eye of the kind that it was made for.
    ThisEye,
    /// An answer of its equations.
    Solution,
}

impl From<Error> for Lack {
    fn from(_: Error) -> Lack {
        Lack::Solution
    }
}

/// An eye whose numbers stand in one place.
///
/// ```
/// use ocellus_core::{lens::{eye::Measured, method::Method}, optics::cornea::Cornea, quantity::*};
/// let k = CornealPower::from_d(43.8)?;
/// let eye = Measured {
///     axial_length: Some(AxialLength::from_mm(23.5)?),
///     cornea: Some(Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?),
///     a_constant: Some(AConstant::new(118.4)?),
///     ..Measured::NOTHING
/// };
/// let (target, vertex) = (Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?);
/// let mut power = 0.0;
/// Method::Srkt.view(&eye, &mut |view| power = view.optics().power(target, vertex).unwrap()).unwrap();
/// assert!((power - 20.250).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Axial length.
    pub axial_length: Option<AxialLength>,
    /// The cornea as measured today.
    pub cornea: Option<Cornea>,
    /// Depth of the chamber, from the front of the cornea to the natural lens.
    pub chamber_depth: Option<ChamberDepth>,
    /// A-constant.
    pub a_constant: Option<AConstant>,
    /// Surgeon factor.
    pub surgeon_factor: Option<SurgeonFactor>,
    /// pACD.
    pub pacd: Option<Pacd>,
    /// Haigis' a0.
    pub haigis_a0: Option<HaigisA0>,
    /// Haigis' a1 and a2.
    pub haigis_slopes: Option<(HaigisSlope, HaigisSlope)>,
    /// What a laser changed.
    pub laser: Option<Laser>,
    /// Mean corneal power before it.
    pub k_before: Option<CornealPower>,
    /// Mean corneal power after it, estimated.
    pub k_after: Option<CornealPower>,
}

impl Measured {
    /// Nothing is known.
    pub const NOTHING: Measured = Measured {
        axial_length: None,
        cornea: None,
        chamber_depth: None,
        a_constant: None,
        surgeon_factor: None,
        pacd: None,
        haigis_a0: None,
        haigis_slopes: None,
        laser: None,
        k_before: None,
        k_after: None,
    };
}

impl Eye for Measured {
    fn axial_length(&self) -> Result<AxialLength, Lack> {
        self.axial_length.ok_or(Lack::Length)
    }

    fn cornea(&self) -> Result<&Cornea, Lack> {
        self.cornea.as_ref().ok_or(Lack::Cornea)
    }

    fn chamber_depth(&self) -> Result<ChamberDepth, Lack> {
        self.chamber_depth.ok_or(Lack::Depth)
    }

    fn a_constant(&self) -> Option<AConstant> {
        self.a_constant
    }

    fn surgeon_factor(&self) -> Option<SurgeonFactor> {
        self.surgeon_factor
    }

    fn pacd(&self) -> Option<Pacd> {
        self.pacd
    }

    fn haigis_a0(&self) -> Option<HaigisA0> {
        self.haigis_a0
    }

    fn haigis_slopes(&self) -> Option<(HaigisSlope, HaigisSlope)> {
        self.haigis_slopes
    }

    fn laser(&self) -> Option<Laser> {
        self.laser
    }

    fn k_before(&self) -> Result<CornealPower, Lack> {
        self.k_before.ok_or(Lack::KBefore)
    }

    fn k_after(&self) -> Result<(CornealPower, bool), Lack> {
        self.k_after.map(|k| (k, false)).ok_or(Lack::KAfter)
    }
}
