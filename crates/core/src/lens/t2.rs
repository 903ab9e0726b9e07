//! T2: SRK/T with the corneal height replaced by a regression.

use crate::constant::lens::*;
use crate::constant::optics::{INDEX_1_3375, INDEX_SRKT};
use crate::lens::convert::a_constant;
use crate::lens::eye::Eye;
use crate::lens::slopes::Chain;
use crate::lens::srkt_optics::{acd_const, chain, optics};
use crate::lens::view::{Doubt, Doubts, Eyes, Optics, Spec, View};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AConstant, AxialLength};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// T2's intermediate values.
    Working "The eye as this method sees it";
    measured_al "AL" "mm" = "entered" [], "axial length", Entered Entered;
    r "r" "mm" = "r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [], "radius of the mean corneal power", Identity Two;
    k "K" "D" = "K = 1000 (1.3375 - 1)/r" [INDEX_1_3375], "mean corneal power", Identity Two;
    a "A" "1" = "entered" [], "A-constant", Entered Entered;
    h2 "H2" "mm" = "H2 = -10.326 + 0.32630 AL + 0.13533 K" [T2_H_0, T2_H_AL, T2_H_K], "corneal height", T22010 Memory;
    acd_const "ACDconst" "mm" = "ACDconst = 0.62467 A - 68.747" [ACD_CONST_SLOPE, ACD_CONST_0],
        "chamber depth constant of the lens", SrkT1990 Two;
    offset "offset" "mm" = "offset = ACDconst - 3.336" [SRKT_OFFSET], "from corneal height to lens", SrkT1990 Memory;
    elp "ELP" "mm" = "ELP = H2 + offset" [], "lens position", T22010 Memory;
    al "LOPT" "mm" = "LOPT = AL + 0.65696 - 0.02029 AL" [SRKT_RT_0, SRKT_RT_1],
        "axial length in the optics, with retinal thickness", SrkT1990 Memory;
    kc "Kc" "D" = "Kc = 1000 (1.333 - 1) / r" [INDEX_SRKT], "corneal power in the optics", SrkT1990 Memory;
}

/// T2 for one eye and one lens.
///
/// ```text
/// H2  = -10.326 + 0.32630 AL + 0.13533 K          the measured AL
/// ELP = H2 + ACDconst - 3.336                      the rest as SRK/T
/// ```
///
/// Source: Sheard, Smith, Cooke 2010 (memory).
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::t2, quantity::*};
/// let k = CornealPower::from_d(48.0)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let eye = t2::working(AxialLength::from_mm(26.3)?, &cornea, AConstant::new(118.9)?);
/// let lens = eye.thin_eye().power(Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?;
/// assert!((lens.power - 5.76).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, a: AConstant) -> Working {
    let (measured_al, k, r, a) = (al.mm(), cornea.k(), cornea.radius().mm(), a.get());
    let h2 = corneal_height(measured_al, k);
    let acd_const = acd_const(a);
    let offset = acd_const - SRKT_OFFSET.get();
    let ThinEye { al, kc, elp, .. } = optics(measured_al, r, h2 + offset);
    Working { measured_al, k, r, a, h2, acd_const, offset, elp, al, kc }
}

/// The height of the corneal dome, mm.
///
/// ```text
/// H2 = -10.326 + 0.32630 AL + 0.13533 K
/// ```
///
/// ```
/// use ocellus_core::lens::t2::corneal_height;
/// assert!((corneal_height(23.5, 43.8) - 3.2695).abs() < 5e-5);
/// ```
pub fn corneal_height(al: f64, k: f64) -> f64 {
    T2_H_0.get() + T2_H_AL.get() * al + T2_H_K.get() * k
}

impl Working {
    /// The eye as T2's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(self.thin_eye())
    }

    /// `dH2/dAL = 0.32630`, `dH2/dK = 0.13533`
    fn chain(&self) -> Option<Chain> {
        Some(Chain { elp_al: T2_H_AL.get(), elp_k: T2_H_K.get(), ..chain(self.kc, self.k) })
    }

    fn doubts(&self, _eye: &dyn Eye) -> Doubts {
        [(self.measured_al > RETINA_TURNS.get()).then_some(Doubt::RetinaTurned), None, None, None]
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "t2",
    name: "T2",
    source: Source::T22010,
    of: Eyes::Ordinary,
    view: |eye, then| {
        then(&working(eye.axial_length()?, eye.cornea()?, a_constant(eye)?));
        Ok(())
    },
};
