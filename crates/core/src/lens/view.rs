//! What a method is, and what it makes of an eye.

use crate::error::Error;
use crate::lens::eye::{Eye, Lack};
use crate::lens::slopes::Chain;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{LensPower, Refraction, Vertex};
use crate::source::Source;
use crate::working::Steps;

/// What is done with a view of an eye.
pub type Then<'a> = &'a mut dyn FnMut(&dyn View);

/// A published method, as one value.
#[derive(Debug)]
pub struct Spec {
    /// Its name in columns and commands.
    pub key: &'static str,
    /// Its published name.
    pub name: &'static str,
    /// Where it was published.
    pub source: Source,
    /// The eyes it was made for.
    pub of: Eyes,
    /// Hands out what it makes of an eye.
    pub view: fn(&dyn Eye, Then) -> Result<(), Lack>,
}

/// The eyes that a method was made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Eyes {
    /// Whose cornea was never operated on.
    Ordinary,
    /// After corneal laser.
    AfterLaser,
}

/// What a method makes of one eye.
pub trait View {
    /// From a lens to a refraction and back.
    fn optics(&self) -> Optics;

    /// How its numbers move with what was measured; a regression without optics has none.
    fn chain(&self) -> Option<Chain> {
        None
    }

    /// What is against its answer.
    fn doubts(&self, _eye: &dyn Eye) -> Doubts {
        NO_DOUBTS
    }

    /// The eye as a neighbour sees it, from which this method must not depart.
    fn beside(&self) -> Option<ThinEye> {
        None
    }

    /// Streams its intermediate values.
    fn show(&self, steps: &mut dyn Steps);
}

/// What is against an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// The corneal height has no real value.
    Radicand,
    /// The lens constant was converted from another.
    Converted,
    /// The lens constants are not optimised.
    Unoptimised,
    /// A regression without optics, superseded.
    Superseded,
    /// The usual slopes go with an own a0.
    UsualSlopes,
    /// The corneal power after a laser is known by its history alone.
    KFromHistory,
    /// The length is held at the end of its range.
    Clamped,
    /// The retinal thickness is negative.
    RetinaTurned,
    /// The corrected length falls as the eye gets longer.
    LcorTurned,
}

/// Every doubt about one answer, in the order in which they are reported.
pub type Doubts = [Option<Doubt>; 4];

/// Nothing is against it.
pub const NO_DOUBTS: Doubts = [None; 4];

/// From a lens to a refraction and back, by one method's view of one eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Optics {
    /// By vergence through a thin eye.
    Thin(ThinEye),
    /// Along a straight line, which knows no lens position.
    Line(Line),
}

/// The straight line between lens and refraction, all that SRK II has of optics.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Lens for no refraction, P0, D.
    pub p0: f64,
    /// Lens dioptres per dioptre of refraction, CR.
    pub cr: f64,
}

impl Line {
    /// The lens that leaves a refraction, D: `P = P0 - CR Rx`.
    ///
    /// ```
    /// use ocellus_core::{lens::view::Line, quantity::Refraction};
    /// let line = Line { p0: 20.0, cr: 1.25 };
    /// assert_eq!(line.power(Refraction::from_d(-1.0)?), 21.25);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn power(&self, target: Refraction) -> f64 {
        self.p0 - self.cr * target.d()
    }

    /// The refraction that a lens leaves, D: `Rx = (P0 - P) / CR`.
    ///
    /// ```
    /// use ocellus_core::{lens::view::Line, quantity::LensPower};
    /// let line = Line { p0: 20.0, cr: 1.25 };
    /// assert_eq!(line.refraction(LensPower::from_d(21.25)?), -1.0);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn refraction(&self, power: LensPower) -> f64 {
        (self.p0 - power.d()) / self.cr
    }
}

impl Optics {
    /// The eye as the method's optics see it; a straight line has none.
    pub fn thin_eye(&self) -> Option<ThinEye> {
        match self {
            Optics::Thin(eye) => Some(*eye),
            Optics::Line(_) => None,
        }
    }

    /// The exact lens power for a refraction, D.
    ///
    /// # Errors
    /// As [`ThinEye::power`].
    pub fn power(&self, target: Refraction, vertex: Vertex) -> Result<f64, Error> {
        match self {
            Optics::Thin(eye) => eye.power(target, vertex).map(|w| w.power),
            Optics::Line(line) => Ok(line.power(target)),
        }
    }

    /// The refraction that a lens leaves, D.
    ///
    /// # Errors
    /// As [`ThinEye::refraction`].
    pub fn refraction(&self, power: LensPower, vertex: Vertex) -> Result<f64, Error> {
        match self {
            Optics::Thin(eye) => eye.refraction(power, vertex).map(|w| w.rx),
            Optics::Line(line) => Ok(line.refraction(power)),
        }
    }
}
