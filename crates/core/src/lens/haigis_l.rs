//! Haigis-L: after corneal laser for short sight, from what is measured today alone.

use crate::constant::laser::*;
use crate::constant::optics::INDEX_HAIGIS;
use crate::error::Error;
use crate::lens::convert;
use crate::lens::eye::{Eye, Lack, Laser};
use crate::lens::haigis;
use crate::lens::slopes::{Chain, radius_per_k};
use crate::lens::view::{Doubts, Eyes, Optics, Spec, View};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AxialLength, ChamberDepth};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// Haigis-L's intermediate values.
    Working "The eye as this method sees it";
    al "AL" "mm" = "entered" [], "axial length, also in the optics", Entered Entered;
    acd "ACD" "mm" = "entered, from the front of the cornea" [], "chamber depth", Entered Entered;
    r "r" "mm" = "r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [], "radius of the mean corneal power, as measured today", Identity Two;
    a0 "a0" "mm" = "as Haigis" [], "lens constant", Haigis2004 Two;
    a1 "a1" "1" = "as Haigis" [], "slope on the chamber depth", Haigis2004 Two;
    a2 "a2" "1" = "as Haigis" [], "slope on the axial length", Haigis2004 Two;
    elp "d" "mm" = "d = a0 + a1 ACD + a2 AL" [], "lens position", Haigis2004 Memory;
    radius "r'" "mm" = "r' = 331.5/(-5.1625 r + 82.2603 - 0.35), 331.5 = 1000 (1.3315 - 1)" [HAIGIS_L_1, HAIGIS_L_0, HAIGIS_L_OFFSET, INDEX_HAIGIS],
        "radius, corrected", HaigisL2008 Read;
    kc "Dc" "D" = "Dc = 1000 (1.3315 - 1) / r'" [INDEX_HAIGIS], "corneal power in the optics", HaigisL2008 Read;
}

/// Haigis-L for one eye and one lens.
///
/// ```text
/// r' = 331.5/(-5.1625 r + 82.2603 - 0.35)          then Haigis
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] for a radius at or beyond the pole, 15.87 mm.
///
/// Source: Haigis 2008 (read in a tutorial).
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::haigis_l, quantity::*};
/// let r = CornealRadius::from_mm(8.7)?;
/// let cornea = Cornea::from_radii(r, r, None)?;
/// let constants = (HaigisA0::from_mm(1.527)?, HaigisSlope::new(0.4)?, HaigisSlope::new(0.1)?);
/// let eye = haigis_l::working(AxialLength::from_mm(26.0)?, &cornea, ChamberDepth::from_mm(3.4)?, constants)?;
/// assert!((eye.kc - 36.99655).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(
    al: AxialLength,
    cornea: &Cornea,
    acd: ChamberDepth,
    constants: haigis::Constants,
) -> Result<Working, Error> {
    let haigis::Working { al, acd, r, a0, a1, a2, elp, .. } = haigis::working(al, cornea, acd, constants);
    let power = HAIGIS_L_1.get() * r + HAIGIS_L_0.get() - HAIGIS_L_OFFSET.get();
    if power <= 0.0 {
        return Err(Error::NoSolution);
    }
    let scale = 1000.0 * (INDEX_HAIGIS.get() - 1.0);
    let radius = scale / power;
    Ok(Working { al, acd, r, a0, a1, a2, elp, radius, kc: scale / radius })
}

impl Working {
    /// The eye as Haigis-L's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(self.thin_eye())
    }

    /// ```text
    /// dDc/dK = -5.1625 dr/dK = 5.1625 r/K = 5.1625 r^2/337.5
    /// ```
    fn chain(&self) -> Option<Chain> {
        let kc = HAIGIS_L_1.get() * radius_per_k(self.r);
        Some(Chain { al: 1.0, kc, elp_al: self.a2, elp_acd: self.a1, constant: 1.0, ..Chain::NONE })
    }

    fn doubts(&self, eye: &dyn Eye) -> Doubts {
        haigis::doubts(eye, (self.a0, self.a1, self.a2))
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "haigis_l",
    name: "Haigis-L",
    source: Source::HaigisL2008,
    of: Eyes::AfterLaser,
    view: |eye, then| {
        let al = eye.axial_length()?;
        if eye.laser() != Some(Laser::Myopic) {
            return Err(Lack::ThisEye);
        }
        let constants = convert::haigis_of(eye)?;
        then(&working(al, eye.cornea()?, eye.chamber_depth()?, constants)?);
        Ok(())
    },
};
