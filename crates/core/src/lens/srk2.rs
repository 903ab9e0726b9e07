//! SRK II, a regression without optics: kept for history and teaching, shown only when asked for.

use crate::constant::lens::*;
use crate::constant::optics::INDEX_1_3375;
use crate::lens::convert::a_constant;
use crate::lens::eye::Eye;
use crate::lens::view::{Doubt, Doubts, Eyes, Line, Optics, Spec, View};
use crate::optics::cornea::Cornea;
use crate::quantity::{AConstant, AxialLength};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// SRK II's intermediate values.
    Working "The eye as this method sees it";
    al "AL" "mm" = "entered" [], "axial length", Entered Entered;
    k "K" "D" = "K = 1000 (1.3375 - 1)/r, r = 1000 (index - 1)/((K1 + K2)/2), or 2/(1/r1 + 1/r2) of radii entered" [INDEX_1_3375], "mean corneal power", Identity Two;
    a "A" "1" = "entered" [], "A-constant", Entered Entered;
    a1 "A1" "1" = "A1 = A + 3 (AL < 20), + 2 (20 to 21), + 1 (21 to 22), + 0 (22 to 24.5), -0.5 (AL >= 24.5)"
        [SRK2_BELOW_20, SRK2_EDGE_20, SRK2_BELOW_21, SRK2_EDGE_21, SRK2_BELOW_22, SRK2_EDGE_22, SRK2_EDGE_LONG, SRK2_LONG],
        "A-constant for this length", SrkII1988 Memory;
    p0 "P0" "D" = "P0 = A1 - 0.9 K - 2.5 AL" [SRK2_K, SRK2_AL], "lens for no refraction", SrkII1988 Read;
    cr "CR" "1" = "CR = 1.25 if P0 > 14, else 1.00; then P = P0 - CR Rx and Rx = (P0 - P)/CR" [SRK2_CR_HIGH, SRK2_CR_EDGE, SRK2_CR_LOW],
        "lens dioptres per dioptre of refraction", SrkII1988 Memory;
}

/// SRK II for one eye and one lens.
///
/// ```text
/// A1 = A+3 (AL<20), A+2 (20<=AL<21), A+1 (21<=AL<22), A (22<=AL<24.5), A-0.5 (AL>=24.5)
/// P0 = A1 - 0.9 K - 2.5 AL          CR = 1.25 if P0 > 14 else 1.00
/// ```
///
/// It jumps at each step of AL. Source: Sanders, Retzlaff, Kraff 1988 (memory).
///
/// ```
/// use ocellus_core::{optics::cornea::Cornea, lens::srk2, quantity::*};
/// let r = CornealRadius::from_mm(7.7)?;
/// let cornea = Cornea::from_radii(r, r, None)?;
/// let lens = srk2::working(AxialLength::from_mm(23.5)?, &cornea, AConstant::new(118.4)?);
/// assert!((lens.p0 - 20.2).abs() < 0.01);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, a: AConstant) -> Working {
    let (al, k, a) = (al.mm(), cornea.k(), a.get());
    let step = if al < SRK2_EDGE_20.get() {
        SRK2_BELOW_20.get()
    } else if al < SRK2_EDGE_21.get() {
        SRK2_BELOW_21.get()
    } else if al < SRK2_EDGE_22.get() {
        SRK2_BELOW_22.get()
    } else if al < SRK2_EDGE_LONG.get() {
        0.0
    } else {
        SRK2_LONG.get()
    };
    let a1 = a + step;
    let p0 = a1 - SRK2_K.get() * k - SRK2_AL.get() * al;
    let cr = if p0 > SRK2_CR_EDGE.get() { SRK2_CR_HIGH.get() } else { SRK2_CR_LOW.get() };
    Working { al, k, a, a1, p0, cr }
}

impl Working {
    /// What follows for any refraction.
    pub fn line(&self) -> Line {
        Line { p0: self.p0, cr: self.cr }
    }
}

impl View for Working {
    fn optics(&self) -> Optics {
        Optics::Line(self.line())
    }

    fn doubts(&self, _eye: &dyn Eye) -> Doubts {
        [Some(Doubt::Superseded), None, None, None]
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "srk2",
    name: "SRK II",
    source: Source::SrkII1988,
    of: Eyes::Ordinary,
    view: |eye, then| {
        then(&working(eye.axial_length()?, eye.cornea()?, a_constant(eye)?));
        Ok(())
    },
};
