//! SRK/T, and the optics and constants it shares with T2.

use crate::constant::lens::*;
use crate::constant::optics::{INDEX_1_3375, INDEX_SRKT};
use crate::eye::cornea::Cornea;
use crate::lens::Method;
use crate::lens::slope::{Chain, radius_per_k};
use crate::lens::vergence::ThinEye;
use crate::math::{sqrt, square};
use crate::quantity::{AConstant, AxialLength};
use crate::working::Topic;

working! {
    /// SRK/T's intermediate values.
    Working of Topic::Method(Method::Srkt);
    measured_al "AL" "mm" = "entered; AL* where a long eye's is adjusted" [], "axial length", Entered Entered;
    r "r" "mm" = "r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [], "radius of the mean corneal power", Identity Two;
    k "K" "D" = "K = 1000 (1.3375 - 1)/r" [INDEX_1_3375], "mean corneal power", Identity Two;
    a "A" "1" = "entered" [], "A-constant", Entered Entered;
    lcor "LCOR" "mm" = "LCOR = AL (AL <= 24.2), -3.446 + 1.716 AL - 0.0237 AL^2 (AL > 24.2)"
        [SRKT_LCOR_EDGE, SRKT_LCOR_0, SRKT_LCOR_1, SRKT_LCOR_2], "axial length corrected for long eyes", SrkT1990 Memory;
    cw "Cw" "mm" = "Cw = -5.41 + 0.58412 LCOR + 0.098 K" [SRKT_CW_0, SRKT_CW_1, SRKT_CW_2], "corneal width", SrkT1990 Memory;
    radicand "q" "mm2" = "q = r^2 - Cw^2/4" [], "radicand of the corneal height", SrkT1990 Memory;
    h "H" "mm" = "H = r - sqrt(q); H = r where q < 0" [], "corneal height", SrkT1990 Memory;
    acd_const "ACDconst" "mm" = "ACDconst = 0.62467 A - 68.747" [ACD_CONST_SLOPE, ACD_CONST_0],
        "chamber depth constant of the lens", SrkT1990 Two;
    offset "offset" "mm" = "offset = ACDconst - 3.336" [SRKT_OFFSET], "from corneal height to lens", SrkT1990 Memory;
    elp "ELP" "mm" = "ELP = H + offset" [], "lens position", SrkT1990 Memory;
    al "LOPT" "mm" = "LOPT = AL + 0.65696 - 0.02029 AL" [SRKT_RT_0, SRKT_RT_1],
        "axial length in the optics, with retinal thickness", SrkT1990 Memory;
    kc "Kc" "D" = "Kc = 1000 (1.333 - 1) / r" [INDEX_SRKT], "corneal power in the optics", SrkT1990 Memory;
}

/// SRK/T for one eye and one lens.
///
/// ```text
/// LCOR = AL (AL<=24.2),  -3.446 + 1.716 AL - 0.0237 AL^2 (AL>24.2)
/// Cw   = -5.41 + 0.58412 LCOR + 0.098 K
/// H    = r - sqrt(r^2 - Cw^2/4)              radicand < 0 -> H = r
/// ELP  = H + ACDconst - 3.336                ACDconst = 0.62467 A - 68.747
/// ```
///
/// LCOR jumps by 0.0015 mm at 24.2 mm and turns over at 36.20 mm. A steep cornea on a long eye makes the radicand
/// negative, and the answer departs from its neighbours well before that: [`crate::lens`] compares it with T2.
/// Source: Retzlaff, Sanders, Kraff 1990 with erratum (memory; algebra two).
///
/// ```
/// use ocellus_core::{eye::cornea::Cornea, lens::srkt, quantity::*};
/// let k = CornealPower::from_d(43.8)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let eye = srkt::working(AxialLength::from_mm(23.5)?, &cornea, AConstant::new(118.4)?);
/// let lens = eye.thin_eye().power(Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?;
/// assert!((lens.power - 20.250).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, a: AConstant) -> Working {
    let (measured_al, k, r, a) = (al.mm(), cornea.k(), cornea.radius().mm(), a.get());
    let lcor = if measured_al <= SRKT_LCOR_EDGE.get() {
        measured_al
    } else {
        SRKT_LCOR_0.get() + SRKT_LCOR_1.get() * measured_al + SRKT_LCOR_2.get() * square(measured_al)
    };
    let cw = SRKT_CW_0.get() + SRKT_CW_1.get() * lcor + SRKT_CW_2.get() * k;
    let radicand = square(r) - square(cw) / 4.0;
    let h = if radicand < 0.0 { r } else { r - sqrt(radicand) };
    let acd_const = acd_const(a);
    let offset = acd_const - SRKT_OFFSET.get();
    let ThinEye { al, kc, elp, .. } = optics(measured_al, r, h + offset);
    Working { measured_al, k, r, a, lcor, cw, radicand, h, acd_const, offset, elp, al, kc }
}

/// `ACDconst = 0.62467 A - 68.747`, mm.
pub(super) fn acd_const(a: f64) -> f64 {
    ACD_CONST_SLOPE.get() * a + ACD_CONST_0.get()
}

/// `LOPT = AL + 0.65696 - 0.02029 AL` and `Kc = 333/r`: the optics of SRK/T and T2 around a lens position.
pub(super) fn optics(al: f64, r: f64, elp: f64) -> ThinEye {
    ThinEye::new(al + SRKT_RT_0.get() + SRKT_RT_1.get() * al, 1000.0 * (INDEX_SRKT.get() - 1.0) / r, elp)
}

/// What SRK/T and T2 share of the derivatives.
pub(super) fn chain(kc: f64, k: f64) -> Chain {
    Chain { al: 1.0 + SRKT_RT_1.get(), kc: kc / k, constant: ACD_CONST_SLOPE.get(), ..Chain::NONE }
}

impl Working {
    /// The eye as SRK/T's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }

    /// How its numbers move with what was measured.
    ///
    /// ```text
    /// dLCOR/dAL = 1 (AL<=24.2), 1.716 - 2*0.0237 AL (AL>24.2)          dCw/dAL = 0.58412 dLCOR/dAL, dCw/dK = 0.098
    /// dH/dAL = Cw dCw/dAL/(4 sqrt(q))                                  q = r^2 - Cw^2/4
    /// dH/dK  = dr/dK - (r dr/dK - Cw dCw/dK/4)/sqrt(q)                 q < 0: dH/dAL = 0, dH/dK = dr/dK
    /// ```
    pub fn chain(&self) -> Chain {
        let lcor_al = if self.measured_al <= SRKT_LCOR_EDGE.get() {
            1.0
        } else {
            SRKT_LCOR_1.get() + 2.0 * SRKT_LCOR_2.get() * self.measured_al
        };
        let r_k = radius_per_k(self.r);
        let (elp_al, elp_k) = if self.radicand > 0.0 {
            let root = sqrt(self.radicand);
            let along = self.cw / 4.0 / root;
            (along * SRKT_CW_1.get() * lcor_al, r_k - self.r * r_k / root + along * SRKT_CW_2.get())
        } else {
            (0.0, r_k)
        };
        Chain { elp_al, elp_k, ..chain(self.kc, self.k) }
    }
}
