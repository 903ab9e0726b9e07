//! The optics under every method: a thin cornea, a thin lens, a retina.
//!
//! Each method brings its own three numbers for one eye: the axial length of its optics, its corneal power and its lens
//! position. What follows from them is the same for all.

use core::hint::black_box;

use crate::constant::optics::N;
use crate::error::Error;
use crate::optics::vergence::{at_cornea, at_lens};
use crate::optics::vertex::{to_cornea, to_spectacles};
use crate::quantity::{LensPower, Refraction, Vertex};

/// One eye as one method's optics see it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThinEye {
    /// Axial length of the optics, AL, mm.
    pub al: f64,
    /// Corneal power of the optics, Kc, D.
    pub kc: f64,
    /// Effective lens position d, mm behind the cornea.
    pub elp: f64,
    /// What the power of cornea and refraction together is divided by, c: 1 but for Shammas-PL.
    pub divisor: f64,
}

working! {
    /// The lens for a refraction, step by step.
    PowerWorking "The lens for the refraction wanted";
    al "AL" "mm" = "AL of the method's optics" [], "axial length in the optics", Identity Memory;
    kc "Kc" "D" = "Kc of the method's optics" [], "corneal power in the optics", Identity Memory;
    elp "d" "mm" = "ELP of the method; elsewhere than in the bag, less the shift" [], "lens position", Identity Memory;
    divisor "c" "1" = "1; Shammas-PL 1.0125" [], "what Kc + Rc is divided by", Identity Memory;
    rx "Rx" "D" = "entered" [], "refraction wanted, at the spectacles", Entered Entered;
    rc "Rc" "D" = "Rc = Rx / (1 - V Rx/1000)" [], "the same at the cornea, V the vertex distance", Identity Two;
    after "X2" "D" = "X2 = 1000*1.336 / (AL - d)" [N], "vergence needed behind the lens", Identity Two;
    before "X1" "D" = "X1 = 1000*1.336 / (1000*1.336 c/(Kc + Rc) - d)" [N], "vergence that arrives at the lens", Identity Two;
    power "P" "D" = "P = X2 - X1" [], "power of the lens", Identity Two;
}

working! {
    /// The refraction for a lens, step by step.
    RefractionWorking "The refraction with the lens chosen";
    power "P" "D" = "entered; a toric label that states its weak meridian, plus half the cylinder" [], "mean power of the lens", Entered Entered;
    x "X" "D" = "X = 1000*1.336/(AL - d) - P" [N], "vergence that must arrive at the lens", Identity Two;
    rc "Rc" "D" = "Rc = 1000*1.336 c X/(d X + 1000*1.336) - Kc, c as above" [N], "refraction left, at the cornea", Identity Two;
    rx "Rx" "D" = "Rx = Rc / (1 + V Rc/1000)" [], "refraction left, at the spectacles, V the vertex distance", Identity Two;
}

impl ThinEye {
    /// An eye whose corneal power needs no divisor: every method's but Shammas-PL's.
    ///
    /// ```
    /// assert_eq!(ocellus_core::optics::thin_eye::ThinEye::new(23.5, 43.5, 5.0).divisor, 1.0);
    /// ```
    pub const fn new(al: f64, kc: f64, elp: f64) -> ThinEye {
        ThinEye { al, kc, elp, divisor: 1.0 }
    }

    /// The same eye with its lens moved forwards, mm.
    ///
    /// ```
    /// use ocellus_core::optics::thin_eye::ThinEye;
    /// assert_eq!(ThinEye::new(23.5, 43.5, 5.0).forward(0.75).elp, 4.25);
    /// ```
    pub fn forward(self, mm: f64) -> ThinEye {
        ThinEye { elp: self.elp - mm, ..self }
    }

    /// What c makes of a value, which is nothing where it is 1: there a small processor is spared a division or a product. (What
    /// the compiler cannot see through, it does not compute beforehand.)
    fn unless_one(&self, value: f64, change: impl FnOnce(f64, f64) -> f64) -> f64 {
        if self.divisor.to_bits() == 1f64.to_bits() { value } else { change(black_box(value), self.divisor) }
    }

    /// Light of the power of cornea and refraction together, k, as it arrives at the lens, D.
    ///
    /// # Errors
    /// As [`at_lens`].
    pub fn arriving(&self, k: f64) -> Result<f64, Error> {
        at_lens(self.unless_one(k, |k, c| k / c), self.elp)
    }

    /// Light that must arrive at the lens, as the power of cornea and refraction together, D.
    ///
    /// # Errors
    /// As [`at_cornea`].
    pub fn leaving(&self, v: f64) -> Result<f64, Error> {
        Ok(self.unless_one(at_cornea(v, self.elp)?, |v, c| v * c))
    }

    /// Vergence needed behind the lens to focus on the retina, D.
    ///
    /// ```text
    /// X2 = 1000 n / (AL - d)
    /// ```
    ///
    /// # Errors
    /// [`crate::error::Error::NoSolution`] when the lens would lie on or behind the retina.
    ///
    /// ```
    /// use ocellus_core::optics::thin_eye::ThinEye;
    /// let eye = ThinEye::new(23.5, 43.5, 5.0);
    /// assert!((eye.behind_lens()? - 72.216).abs() < 0.0005);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn behind_lens(&self) -> Result<f64, Error> {
        let room = self.al - self.elp;
        if room > 0.0 { Ok(1000.0 * N.get() / room) } else { Err(Error::NoSolution) }
    }

    /// The lens that leaves a refraction.
    ///
    /// ```text
    /// Rc = Rx / (1 - V Rx/1000)
    /// P  = 1000 n/(AL - d)  -  1000 n/( 1000 n c/(Kc + Rc) - d )
    /// ```
    ///
    /// # Errors
    /// [`crate::error::Error::NoSolution`] when the lens would lie behind the retina or the light cross before it.
    ///
    /// ```
    /// use ocellus_core::{optics::thin_eye::ThinEye, quantity::*};
    /// let eye = ThinEye::new(23.5, 43.5, 5.0);
    /// let lens = eye.power(Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?.power;
    /// let left = eye.refraction(LensPower::from_d(lens)?, Vertex::from_mm(12.0)?)?.rx;
    /// assert!(left.abs() < 1e-9);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn power(&self, target: Refraction, vertex: Vertex) -> Result<PowerWorking, Error> {
        let rc = to_cornea(target.d(), vertex)?;
        let after = self.behind_lens()?;
        let before = self.arriving(self.kc + rc)?;
        let ThinEye { al, kc, elp, divisor } = *self;
        Ok(PowerWorking { al, kc, elp, divisor, rx: target.d(), rc, after, before, power: after - before })
    }

    /// The refraction that a lens leaves.
    ///
    /// ```text
    /// X  = 1000 n/(AL - d) - P
    /// Rc = 1000 n c X/(d X + 1000 n) - Kc
    /// Rx = Rc / (1 + V Rc/1000)
    /// ```
    ///
    /// # Errors
    /// As [`ThinEye::power`].
    ///
    /// ```
    /// use ocellus_core::{optics::thin_eye::ThinEye, quantity::*};
    /// let eye = ThinEye::new(23.5, 43.5, 5.0);
    /// let stronger = eye.refraction(LensPower::from_d(22.0)?, Vertex::from_mm(12.0)?)?.rx;
    /// let weaker = eye.refraction(LensPower::from_d(21.0)?, Vertex::from_mm(12.0)?)?.rx;
    /// assert!(stronger < weaker);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn refraction(&self, power: LensPower, vertex: Vertex) -> Result<RefractionWorking, Error> {
        let x = self.behind_lens()? - power.d();
        let rc = self.leaving(x)? - self.kc;
        Ok(RefractionWorking { power: power.d(), x, rc, rx: to_spectacles(rc, vertex)? })
    }
}
