//! Haigis.

use crate::constant::lens::*;
use crate::constant::optics::{INDEX_1_3375, INDEX_HAIGIS};
use crate::eye::cornea::Cornea;
use crate::lens::Method;
use crate::lens::slope::Chain;
use crate::lens::vergence::ThinEye;
use crate::quantity::{AxialLength, ChamberDepth, HaigisA0, HaigisSlope};
use crate::working::Topic;

/// Haigis' a0, a1 and a2.
pub type Constants = (HaigisA0, HaigisSlope, HaigisSlope);

working! {
    /// Haigis' intermediate values.
    Working of Topic::Method(Method::Haigis);
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
/// With unoptimised constants it lands about 1 D above SRK/T on an average eye. Source: Haigis 2004 (memory).
///
/// ```
/// use ocellus_core::{eye::cornea::Cornea, lens::haigis, quantity::*};
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

    /// How its numbers move with what was measured: `dd/dAL = a2`, `dd/dACD = a1`.
    pub fn chain(&self) -> Chain {
        let k = 1000.0 * (INDEX_1_3375.get() - 1.0) / self.r;
        Chain { al: 1.0, kc: self.kc / k, elp_al: self.a2, elp_acd: self.a1, constant: 1.0, ..Chain::NONE }
    }
}
