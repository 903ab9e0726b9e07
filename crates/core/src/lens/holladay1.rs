//! Holladay 1.

use crate::constant::lens::*;
use crate::constant::optics::{INDEX_1_3375, INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER};
use crate::lens::convert;
use crate::lens::eye::Eye;
use crate::lens::slopes::{Chain, radius_per_k};
use crate::lens::view::{Doubt, Doubts, Eyes, Optics, Spec, View};
use crate::math::{sqrt, square};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AxialLength, SurgeonFactor};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// Holladay 1's intermediate values.
    Working "The eye as this method sees it";
    measured_al "AL" "mm" = "entered; AL* where a long eye's is adjusted" [], "axial length", Entered Entered;
    r "r" "mm" = "r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [], "radius of the mean corneal power", Identity Two;
    sf "SF" "mm" = "entered, or from the A-constant: SF = 0.5663 A - 65.60" [SF_SLOPE, SF_0], "surgeon factor", Holladay2003 Two;
    rag "Rag" "mm" = "Rag = max(r, 7)" [HOLLADAY_R_MIN], "radius used for the chamber", Holladay1988 Memory;
    ag "AG" "mm" = "AG = min(12.5 AL/23.45, 13.5)" [HOLLADAY_AG, HOLLADAY_AL, HOLLADAY_AG_MAX],
        "diameter of the anterior chamber", Holladay1988 Memory;
    aacd "aACD" "mm" = "aACD = 0.56 + Rag - sqrt(Rag^2 - AG^2/4)" [HOLLADAY_CORNEA], "anatomical chamber depth", Holladay1988 Memory;
    elp "ELP" "mm" = "ELP = aACD + SF" [], "lens position", Holladay1988 Memory;
    al "ALm" "mm" = "ALm = AL + 0.200" [HOLLADAY_RT], "axial length in the optics, with retinal thickness", Holladay1988 Memory;
    kc "Kc" "D" = "Kc = 1000 (4/3 - 1) / r" [INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER],
        "corneal power in the optics", Holladay1988 Memory;
}

/// Holladay 1 for one eye and one lens.
///
/// ```text
/// Rag = max(r, 7)      AG = min(12.5 AL/23.45, 13.5)
/// ELP = 0.56 + Rag - sqrt(Rag^2 - AG^2/4) + SF
/// ```
///
/// The radicand cannot be negative: Rag is at least 7 and AG at most 13.5. Source: Holladay 1988 (memory; lens position
/// and optics supported by one published table).
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::{convert, holladay1}, quantity::*};
/// let k = CornealPower::from_d(39.0)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let sf = convert::surgeon_factor(AConstant::new(118.9)?)?;
/// let eye = holladay1::working(AxialLength::from_mm(24.5)?, &cornea, sf);
/// let lens = eye.thin_eye().power(Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?;
/// assert!((lens.power - 23.3).abs() < 0.05);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, sf: SurgeonFactor) -> Working {
    let (measured_al, r, sf) = (al.mm(), cornea.radius().mm(), sf.mm());
    let rag = r.max(HOLLADAY_R_MIN.get());
    let ag = (HOLLADAY_AG.get() * measured_al / HOLLADAY_AL.get()).min(HOLLADAY_AG_MAX.get());
    let aacd = HOLLADAY_CORNEA.get() + rag - sqrt(square(rag) - square(ag) / 4.0);
    let index = INDEX_HOLLADAY_OVER.get() / INDEX_HOLLADAY_UNDER.get();
    Working {
        measured_al,
        r,
        sf,
        rag,
        ag,
        aacd,
        elp: aacd + sf,
        al: measured_al + HOLLADAY_RT.get(),
        kc: 1000.0 * (index - 1.0) / r,
    }
}

impl Working {
    /// The eye as Holladay 1's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(self.thin_eye())
    }

    /// ```text
    /// daACD/dAL = AG dAG/dAL/(4 s)          daACD/dK = dRag/dK (1 - Rag/s)          s = sqrt(Rag^2 - AG^2/4)
    /// dAG/dAL = 12.5/23.45, 0 at its greatest          dRag/dK = dr/dK, 0 at its least
    /// ```
    fn chain(&self) -> Option<Chain> {
        let s = sqrt(square(self.rag) - square(self.ag) / 4.0);
        let ag_al = if self.ag < HOLLADAY_AG_MAX.get() { HOLLADAY_AG.get() / HOLLADAY_AL.get() } else { 0.0 };
        let rag_k = if self.r > HOLLADAY_R_MIN.get() { radius_per_k(self.r) } else { 0.0 };
        let k = 1000.0 * (INDEX_1_3375.get() - 1.0) / self.r;
        let (elp_al, elp_k) = (self.ag * ag_al / 4.0 / s, rag_k * (1.0 - self.rag / s));
        Some(Chain { al: 1.0, kc: self.kc / k, elp_al, elp_k, constant: 1.0, ..Chain::NONE })
    }

    fn doubts(&self, eye: &dyn Eye) -> Doubts {
        [eye.surgeon_factor().is_none().then_some(Doubt::Converted), None, None, None]
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "holladay1",
    name: "Holladay 1",
    source: Source::Holladay1988,
    of: Eyes::Ordinary,
    view: |eye, then| {
        then(&working(eye.axial_length()?, eye.cornea()?, convert::surgeon_factor_of(eye)?));
        Ok(())
    },
};
