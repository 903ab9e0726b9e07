//! One method's view of one eye: its intermediate values, and the optics that follow from them.

use crate::constant::optics::{INDEX_1_3375, INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER, INDEX_SRKT};
use crate::error::Error;
use crate::lens::shammas::{self, Laser};
use crate::lens::slope::Chain;
use crate::lens::vergence::ThinEye;
use crate::lens::{double_k, haigis, haigis_l, hofferq, holladay1, srk2, srkt, t2};
use crate::quantity::{CornealPower, LensPower, Refraction, Vertex};
use crate::sink::Sink;

/// One method's view of one eye: all its intermediate values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Prediction {
    /// By SRK II.
    Srk2(srk2::Working),
    /// By SRK/T.
    Srkt(srkt::Working),
    /// By T2.
    T2(t2::Working),
    /// By Holladay 1.
    Holladay1(holladay1::Working),
    /// By Hoffer Q.
    HofferQ(hofferq::Working),
    /// By Haigis.
    Haigis(haigis::Working),
    /// By Shammas-PL.
    ShammasPl(shammas::Working, Laser),
    /// By Haigis-L.
    HaigisL(haigis_l::Working),
    /// By SRK/T for the cornea before, with that after in its optics.
    DoubleSrkt(srkt::Working, Corneas),
    /// By Holladay 1 likewise.
    DoubleHolladay1(holladay1::Working, Corneas),
    /// By Hoffer Q likewise.
    DoubleHofferQ(hofferq::Working, Corneas),
}

/// The mean corneal powers before a laser and after it.
pub type Corneas = (CornealPower, CornealPower);

impl Prediction {
    /// What the method's optics make of the eye.
    pub fn optics(&self) -> Optics {
        if let Some(w) = self.two_corneas() {
            return Optics::Thin(w.thin_eye());
        }
        Optics::Thin(match self {
            Prediction::Srk2(w) => return Optics::Line(w.line()),
            Prediction::Srkt(w) | Prediction::DoubleSrkt(w, _) => w.thin_eye(),
            Prediction::T2(w) => w.thin_eye(),
            Prediction::Holladay1(w) | Prediction::DoubleHolladay1(w, _) => w.thin_eye(),
            Prediction::HofferQ(w) | Prediction::DoubleHofferQ(w, _) => w.thin_eye(),
            Prediction::Haigis(w) => w.thin_eye(),
            Prediction::ShammasPl(w, _) => w.thin_eye(),
            Prediction::HaigisL(w) => w.thin_eye(),
        })
    }

    /// What double-K makes of an ordinary method's eye; `None` for the others.
    fn two_corneas(&self) -> Option<double_k::Working> {
        let (own, (before, after), index) = match self {
            Prediction::DoubleSrkt(w, corneas) => (w.thin_eye(), corneas, INDEX_SRKT.get()),
            Prediction::DoubleHolladay1(w, corneas) => {
                (w.thin_eye(), corneas, INDEX_HOLLADAY_OVER.get() / INDEX_HOLLADAY_UNDER.get())
            }
            Prediction::DoubleHofferQ(w, corneas) => (w.thin_eye(), corneas, INDEX_1_3375.get()),
            _ => return None,
        };
        Some(double_k::working(*before, *after, index, own))
    }

    /// How the method's numbers move with what was measured; SRK II has none.
    pub fn chain(&self) -> Option<Chain> {
        let own = match self {
            Prediction::Srk2(_) => return None,
            Prediction::Srkt(w) | Prediction::DoubleSrkt(w, _) => w.chain(),
            Prediction::T2(w) => w.chain(),
            Prediction::Holladay1(w) | Prediction::DoubleHolladay1(w, _) => w.chain(),
            Prediction::HofferQ(w) | Prediction::DoubleHofferQ(w, _) => w.chain(),
            Prediction::Haigis(w) => w.chain(),
            Prediction::ShammasPl(w, laser) => w.chain(*laser),
            Prediction::HaigisL(w) => w.chain(),
        };
        // the optics follow the cornea after the laser, the position that before it
        Some(match self.two_corneas() {
            Some(w) => Chain { kc: w.kc / w.k_after, elp_k: 0.0, elp_k_before: own.elp_k, ..own },
            None => own,
        })
    }

    /// Streams the intermediate values.
    pub fn show(&self, sink: &mut dyn Sink) {
        match self {
            Prediction::Srk2(w) => w.show(sink),
            Prediction::Srkt(w) | Prediction::DoubleSrkt(w, _) => w.show(sink),
            Prediction::T2(w) => w.show(sink),
            Prediction::Holladay1(w) | Prediction::DoubleHolladay1(w, _) => w.show(sink),
            Prediction::HofferQ(w) | Prediction::DoubleHofferQ(w, _) => w.show(sink),
            Prediction::Haigis(w) => w.show(sink),
            Prediction::ShammasPl(w, _) => w.show(sink),
            Prediction::HaigisL(w) => w.show(sink),
        }
        if let Some(w) = self.two_corneas() {
            w.show(sink);
        }
    }
}

/// From a lens to a refraction and back, for one method's view of one eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Optics {
    /// By vergence through a thin eye.
    Thin(ThinEye),
    /// Along SRK II's straight line, which knows no lens position.
    Line(srk2::Line),
}

impl Optics {
    /// The eye as the method's optics see it; SRK II has none.
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
            Optics::Line(w) => Ok(w.power(target)),
        }
    }

    /// The refraction that a lens leaves, D.
    ///
    /// # Errors
    /// As [`ThinEye::refraction`].
    pub fn refraction(&self, power: LensPower, vertex: Vertex) -> Result<f64, Error> {
        match self {
            Optics::Thin(eye) => eye.refraction(power, vertex).map(|w| w.rx),
            Optics::Line(w) => Ok(w.refraction(power)),
        }
    }
}
