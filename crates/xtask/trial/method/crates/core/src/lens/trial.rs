//! A thin lens whose place goes with the length: a trial of how a method is added, and none to use.

use crate::constant::lens::{ACD_CONST_0, ACD_CONST_SLOPE, HOFFERQ_MEAN};
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
    acd_const "ACDconst" "mm" = "ACDconst = 0.62467 A - 68.747" [ACD_CONST_SLOPE, ACD_CONST_0], "chamber depth constant", SrkT1990 Two;
    elp "ELP" "mm" = "ELP = ACDconst AL/23.5" [HOFFERQ_MEAN], "lens position", Here Chosen;
}

/// The trial for one eye and one lens.
///
/// ```text
/// ELP = ACDconst AL/23.5          ACDconst = 0.62467 A - 68.747
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
    let (al, acd_const) = (al.mm(), acd_constant(a));
    Working { al, k: cornea.k(), acd_const, elp: acd_const * al / HOFFERQ_MEAN.get() }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Thin(ThinEye::new(self.al, self.k, self.elp))
    }

    /// ```text
    /// dELP/dAL = ACDconst/23.5          dELP/dA = 0.62467 AL/23.5
    /// ```
    fn chain(&self) -> Option<Chain> {
        let [elp_al, of_a] = [self.acd_const, ACD_CONST_SLOPE.get() * self.al].map(|of| of / HOFFERQ_MEAN.get());
        Some(Chain { al: 1.0, kc: 1.0, elp_al, constant: of_a, ..Chain::NONE })
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
