//! Hoffer Q.

use crate::constant::lens::*;
use crate::constant::optics::INDEX_1_3375;
use crate::lens::convert;
use crate::lens::eye::Eye;
use crate::lens::slopes::Chain;
use crate::lens::view::{Doubt, Doubts, Eyes, Optics, Spec, View};
use crate::math::{radians, square, tan_deg};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AxialLength, Pacd};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// Hoffer Q's intermediate values.
    Working "The eye as this method sees it";
    al "AL" "mm" = "entered; AL* where a long eye's is adjusted" [], "axial length, also in the optics", Entered Entered;
    k "K" "D" = "K = 1000 (1.3375 - 1)/r, r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [INDEX_1_3375], "mean corneal power, also in the optics", Identity Two;
    pacd "pACD" "mm" = "entered; or (SF + 3.595)/0.9704 with SF = 0.5663 A - 65.60, or the surgeon factor where there is no A"
        [PACD_ADD, PACD_DIV, SF_SLOPE, SF_0], "personalised chamber depth", Holladay2003 Two;
    a "A'" "mm" = "A' = AL held between 18.5 and 31" [HOFFERQ_MIN, HOFFERQ_MAX], "axial length in the regression", HofferQ1993 Memory;
    m "M" "1" = "M = +1 (A' <= 23), -1 (A' > 23)" [HOFFERQ_EDGE], "sign", HofferQ1993 Memory;
    g "G" "mm" = "G = 28 (A' <= 23), 23.5 (A' > 23)" [HOFFERQ_G_SHORT, HOFFERQ_G_LONG], "centre", HofferQ1993 Memory;
    length_term "t1" "mm" = "t1 = 0.3 (A' - 23.5)" [HOFFERQ_SLOPE, HOFFERQ_MEAN], "part of the length", HofferQ1993 Memory;
    cornea_term "t2" "mm" = "t2 = tan(K)^2, K in degrees" [], "part of the cornea", HofferQ1993 Two;
    extreme_term "t3" "mm" = "t3 = 0.1 M (23.5 - A')^2 tan(0.1 (G - A')^2), in degrees" [HOFFERQ_OUTER, HOFFERQ_MEAN, HOFFERQ_INNER],
        "part of the extremes", HofferQ1993 Memory;
    acd "ACD" "mm" = "ACD = pACD + t1 + t2 + t3 - 0.99166" [HOFFERQ_0], "chamber depth", HofferQ1993 Memory;
    elp "ELP" "mm" = "ELP = ACD + 0.05" [HOFFERQ_POSITION], "lens position", HofferQ1993 Memory;
}

/// Hoffer Q for one eye and one lens.
///
/// ```text
/// A' = clamp(AL, 18.5, 31)      M = +1, G = 28 (A' <= 23)      M = -1, G = 23.5 (A' > 23)
/// ACD = pACD + 0.3 (A' - 23.5) + tan(K)^2 + 0.1 M (23.5 - A')^2 tan(0.1 (G - A')^2) - 0.99166      degrees
/// ELP = ACD + 0.05
/// ```
///
/// Whether the clamp also holds in the optics is not settled in what was read: here it holds in the regression only,
/// and a length outside 18.5 to 31 mm is a caution. The switch at 23 makes a step of 0.0011 mm.
/// Source: Hoffer 1993 with errata (memory; degrees two).
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::hoffer_q, quantity::*};
/// let k = CornealPower::from_d(44.88)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let eye = hoffer_q::working(AxialLength::from_mm(23.5)?, &cornea, Pacd::from_mm(5.4)?);
/// assert!((eye.acd - 5.4).abs() < 1e-5);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, pacd: Pacd) -> Working {
    let (al, k, pacd) = (al.mm(), cornea.k(), pacd.mm());
    let a = al.clamp(HOFFERQ_MIN.get(), HOFFERQ_MAX.get());
    let (m, g) = if a <= HOFFERQ_EDGE.get() { (1.0, HOFFERQ_G_SHORT.get()) } else { (-1.0, HOFFERQ_G_LONG.get()) };
    let length_term = HOFFERQ_SLOPE.get() * (a - HOFFERQ_MEAN.get());
    let cornea_term = square(tan_deg(k));
    let extreme_term =
        HOFFERQ_OUTER.get() * m * square(HOFFERQ_MEAN.get() - a) * tan_deg(HOFFERQ_INNER.get() * square(g - a));
    let acd = pacd + length_term + cornea_term + extreme_term + HOFFERQ_0.get();
    Working { al, k, pacd, a, m, g, length_term, cornea_term, extreme_term, acd, elp: acd + HOFFERQ_POSITION.get() }
}

impl Working {
    /// The eye as Hoffer Q's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.k, self.elp)
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(self.thin_eye())
    }

    /// Nothing moves with a length that is held.
    ///
    /// ```text
    /// dACD/dK  = 2 tan(K) (1 + tan(K)^2) pi/180
    /// dACD/dA' = 0.3 - 0.1 M (2 (23.5 - A') tan(u) + (23.5 - A')^2 (1 + tan(u)^2) 0.2 (G - A') pi/180)
    /// u        = 0.1 (G - A')^2 degrees
    /// ```
    fn chain(&self) -> Option<Chain> {
        let held = self.a != self.al;
        let (off, to_centre) = (HOFFERQ_MEAN.get() - self.a, self.g - self.a);
        let tan = tan_deg(HOFFERQ_INNER.get() * square(to_centre));
        let inner = (1.0 + square(tan)) * radians(2.0 * HOFFERQ_INNER.get() * to_centre);
        let extreme = HOFFERQ_OUTER.get() * self.m * (2.0 * off * tan + square(off) * inner);
        let elp_al = if held { 0.0 } else { HOFFERQ_SLOPE.get() - extreme };
        let elp_k = radians(2.0 * tan_deg(self.k) * (1.0 + self.cornea_term));
        Some(Chain { al: 1.0, kc: 1.0, elp_al, elp_k, constant: 1.0, ..Chain::NONE })
    }

    fn doubts(&self, eye: &dyn Eye) -> Doubts {
        let converted = eye.pacd().is_none().then_some(Doubt::Converted);
        [converted, (self.a != self.al).then_some(Doubt::Clamped), None, None]
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "hofferq",
    name: "Hoffer Q",
    source: Source::HofferQ1993,
    of: Eyes::Ordinary,
    view: |eye, then| {
        then(&working(eye.axial_length()?, eye.cornea()?, convert::pacd_of(eye)?));
        Ok(())
    },
};
