//! A thin lens at the same place in each eye: a trial of how a method is added, and none to use.

use crate::constant::lens::{ACD_CONST_0, ACD_CONST_SLOPE};
use crate::constant::optics::INDEX_1_3375;
use crate::lens::convert::{a_constant, acd_constant};
use crate::lens::slopes::Chain;
use crate::lens::view::{Eyes, Optics, Spec, View};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AConstant, AxialLength};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// The trial's intermediate values.
    Working "The eye as this method sees it";
    al "AL" "mm" = "entered" [], "axial length, also in the optics", Entered Entered;
    k "K" "D" = "K = 1000 (1.3375 - 1)/r, r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [INDEX_1_3375], "mean corneal power, also in the optics", Identity Two;
    a "A" "1" = "entered" [], "A-constant", Entered Entered;
    elp "ELP" "mm" = "ELP = 0.62467 A - 68.747, whatever the eye" [ACD_CONST_SLOPE, ACD_CONST_0], "lens position", Here Chosen;
}

/// The trial for one eye and one lens.
///
/// ```text
/// ELP = ACDconst = 0.62467 A - 68.747
/// ```
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::trial, quantity::*};
/// let k = CornealPower::from_d(43.8)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let eye = trial::working(AxialLength::from_mm(23.5)?, &cornea, AConstant::new(118.4)?);
/// assert!((eye.elp - 5.214).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, a: AConstant) -> Working {
    Working { al: al.mm(), k: cornea.k(), a: a.get(), elp: acd_constant(a) }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(ThinEye::new(self.al, self.k, self.elp))
    }

    fn chain(&self) -> Option<Chain> {
        Some(Chain { al: 1.0, kc: 1.0, constant: ACD_CONST_SLOPE.get(), ..Chain::NONE })
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "trial",
    name: "Trial",
    source: Source::Here,
    of: Eyes::Ordinary,
    view: |eye, then| {
        then(&working(eye.axial_length()?, eye.cornea()?, a_constant(eye)?));
        Ok(())
    },
};
