//! SRK/T.

use crate::constant::lens::*;
use crate::constant::optics::{INDEX_1_3375, INDEX_SRKT};
use crate::lens::convert::a_constant;
use crate::lens::eye::Eye;
use crate::lens::slopes::{Chain, radius_per_k};
use crate::lens::srkt_optics::{acd_const, chain, optics};
use crate::lens::t2::corneal_height;
use crate::lens::view::{Doubt, Doubts, Eyes, Optics, Spec, View};
use crate::math::{sqrt, square};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AConstant, AxialLength};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// SRK/T's intermediate values.
    Working "The eye as this method sees it";
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
/// use ocellus_core::{optics::cornea::Cornea, lens::srkt, quantity::*};
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

impl Working {
    /// The eye as SRK/T's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(self.thin_eye())
    }

    /// ```text
    /// dLCOR/dAL = 1 (AL<=24.2), 1.716 - 2*0.0237 AL (AL>24.2)          dCw/dAL = 0.58412 dLCOR/dAL, dCw/dK = 0.098
    /// dH/dAL = Cw dCw/dAL/(4 sqrt(q))                                  q = r^2 - Cw^2/4
    /// dH/dK  = dr/dK - (r dr/dK - Cw dCw/dK/4)/sqrt(q)                 q < 0: dH/dAL = 0, dH/dK = dr/dK
    /// ```
    fn chain(&self) -> Option<Chain> {
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
        Some(Chain { elp_al, elp_k, ..chain(self.kc, self.k) })
    }

    fn doubts(&self, _eye: &dyn Eye) -> Doubts {
        let when = |is: bool, doubt| is.then_some(doubt);
        [
            when(self.radicand < 0.0, Doubt::Radicand),
            when(self.measured_al > RETINA_TURNS.get(), Doubt::RetinaTurned),
            when(self.measured_al > LCOR_TURNS.get(), Doubt::LcorTurned),
            None,
        ]
    }

    /// With T2's corneal height in its place.
    fn beside(&self) -> Option<ThinEye> {
        Some(ThinEye { elp: corneal_height(self.measured_al, self.k) + self.offset, ..self.thin_eye() })
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "srkt",
    name: "SRK/T",
    source: Source::SrkT1990,
    of: Eyes::Ordinary,
    view: |eye, then| {
        then(&working(eye.axial_length()?, eye.cornea()?, a_constant(eye)?));
        Ok(())
    },
};
