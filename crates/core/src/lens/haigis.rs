//! Haigis.

use crate::constant::lens::*;
use crate::constant::optics::{INDEX_1_3375, INDEX_HAIGIS};
use crate::lens::convert;
use crate::lens::eye::Eye;
use crate::lens::slopes::Chain;
use crate::lens::view::{Doubt, Doubts, Eyes, Optics, Spec, View};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AxialLength, ChamberDepth, HaigisA0, HaigisSlope};
use crate::source::Source;
use crate::working::Steps;

/// Haigis' a0, a1 and a2.
pub type Constants = (HaigisA0, HaigisSlope, HaigisSlope);

working! {
    /// Haigis' intermediate values.
    Working "The eye as this method sees it";
    al "AL" "mm" = "entered; AL* where a long eye's is adjusted" [], "axial length, also in the optics", Entered Entered;
    acd "ACD" "mm" = "entered, from the front of the cornea" [], "chamber depth", Entered Entered;
    r "r" "mm" = "r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [], "radius of the mean corneal power", Identity Two;
    a0 "a0" "mm" = "entered, or unoptimised: a0 = 0.62467 A - 72.434" [ACD_CONST_SLOPE, HAIGIS_A0], "lens constant", Haigis2004 Two;
    a1 "a1" "1" = "entered, or unoptimised: 0.4" [HAIGIS_A1], "slope on the chamber depth", Haigis2004 Two;
    a2 "a2" "1" = "entered, or unoptimised: 0.1" [HAIGIS_A2], "slope on the axial length", Haigis2004 Two;
    elp "d" "mm" = "d = a0 + a1 ACD + a2 AL" [], "lens position", Haigis2004 Memory;
    kc "Dc" "D" = "Dc = 1000 (1.3315 - 1) / r" [INDEX_HAIGIS], "corneal power in the optics", Haigis2004 Memory;
}

/// Haigis for one eye and one lens.
///
/// ```text
/// ELP = a0 + a1 ACD + a2 AL            ACD from the corneal epithelium to the lens
/// ```
///
/// With unoptimised constants it gives about 1 D more than SRK/T for an average eye. Source: Haigis 2004 (memory).
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::haigis, quantity::*};
/// let k = CornealPower::from_d(43.8)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let constants = (HaigisA0::from_mm(1.527)?, HaigisSlope::new(0.4)?, HaigisSlope::new(0.1)?);
/// let eye = haigis::working(AxialLength::from_mm(23.5)?, &cornea, ChamberDepth::from_mm(3.2)?, constants);
/// assert!((eye.elp - 5.157).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, acd: ChamberDepth, (a0, a1, a2): Constants) -> Working {
    let (al, acd, r) = (al.mm(), acd.mm(), cornea.radius().mm());
    let (a0, a1, a2) = (a0.mm(), a1.get(), a2.get());
    let elp = a0 + a1 * acd + a2 * al;
    Working { al, acd, r, a0, a1, a2, elp, kc: 1000.0 * (INDEX_HAIGIS.get() - 1.0) / r }
}

impl Working {
    /// The eye as Haigis' optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(self.thin_eye())
    }

    /// `dd/dAL = a2`, `dd/dACD = a1`
    fn chain(&self) -> Option<Chain> {
        let k = 1000.0 * (INDEX_1_3375.get() - 1.0) / self.r;
        Some(Chain { al: 1.0, kc: self.kc / k, elp_al: self.a2, elp_acd: self.a1, constant: 1.0, ..Chain::NONE })
    }

    fn doubts(&self, eye: &dyn Eye) -> Doubts {
        doubts(eye, (self.a0, self.a1, self.a2))
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// What is against constants that are not the lens's own.
pub(super) fn doubts(eye: &dyn Eye, used: (f64, f64, f64)) -> Doubts {
    let own = eye.haigis_a0().is_some();
    let unoptimised = (!own || as_converted(eye, used)).then_some(Doubt::Unoptimised);
    [unoptimised, (own && eye.haigis_slopes().is_none()).then_some(Doubt::UsualSlopes), None, None]
}

/// Whether they are what the conversion from the A-constant gives, to the digits that are entered.
fn as_converted(eye: &dyn Eye, (own0, own1, own2): (f64, f64, f64)) -> bool {
    let converted = eye.a_constant().and_then(|a| convert::haigis(a).ok());
    converted.is_some_and(|(a0, a1, a2)| own1 == a1.get() && own2 == a2.get() && (own0 - a0.mm()).abs() < 0.006)
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "haigis",
    name: "Haigis",
    source: Source::Haigis2004,
    of: Eyes::Ordinary,
    view: |eye, then| {
        let al = eye.axial_length()?;
        let constants = convert::haigis_of(eye)?;
        then(&working(al, eye.cornea()?, eye.chamber_depth()?, constants));
        Ok(())
    },
};
