//! Shammas-PL: after corneal laser, from what is measured today alone.

use crate::constant::laser::*;
use crate::lens::convert::a_constant;
use crate::lens::eye::{Lack, Laser};
use crate::lens::slopes::Chain;
use crate::lens::view::{Eyes, Optics, Spec, View};
use crate::optics::cornea::Cornea;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{AConstant, AxialLength};
use crate::source::Source;
use crate::working::Steps;

working! {
    /// Shammas-PL's intermediate values.
    Working "The eye as this method sees it";
    measured_al "AL" "mm" = "entered" [], "axial length", Entered Entered;
    k "K" "D" = "K = 1000 (1.3375 - 1)/r, as the keratometer reads it today" [], "mean corneal power", Identity Two;
    a "A" "1" = "entered" [], "A-constant", Entered Entered;
    kc "Kc" "D" = "Kc = 1.14 K - 6.8 after laser for short sight, 1.0457 K - 1.9538 for long sight"
        [SHAMMAS_MYOPIC_1, SHAMMAS_MYOPIC_0, SHAMMAS_HYPEROPIC_1, SHAMMAS_HYPEROPIC_0], "corneal power, corrected", Shammas2007 Read;
    pacd "pACD" "mm" = "pACD = 0.5835 A - 64.40" [SHAMMAS_PACD_1, SHAMMAS_PACD_0], "chamber depth constant", Shammas2007 Memory;
    elp "ELP" "mm" = "ELP = pACD + 0.05" [SHAMMAS_POSITION], "lens position", Shammas2007 Memory;
    al "AL'" "mm" = "AL' = AL - 0.1 (AL - 23)" [SHAMMAS_AL_1, SHAMMAS_AL_0], "axial length in the optics", Shammas2007 Memory;
    divisor "c" "1" = "c = 1.0125" [SHAMMAS_DIVISOR], "what Kc + Rc is divided by", Shammas2007 Memory;
}

/// Shammas-PL for one eye and one lens.
///
/// ```text
/// Kc = 1.14 K - 6.8 (short sight),  1.0457 K - 1.9538 (long sight)          pACD = 0.5835 A - 64.40
/// P  = 1336/(AL - 0.1 (AL - 23) - (pACD + 0.05)) - 1/(1.0125/(Kc + Rc) - (pACD + 0.05)/1336)
/// ```
///
/// Sources: Shammas 2007 (Kc read, the rest memory), 2013 (read).
///
/// ```
/// use ocellus_core::{lens::{eye::Laser, shammas_pl::*}, optics::cornea::Cornea, quantity::*};
/// let k = CornealPower::from_d(38.9)?;
/// let cornea = Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?;
/// let eye = working(AxialLength::from_mm(26.0)?, &cornea, AConstant::new(118.4)?, Laser::Myopic);
/// assert!((eye.kc - 37.546).abs() < 1e-9 && (eye.elp - 4.7364).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(al: AxialLength, cornea: &Cornea, a: AConstant, laser: Laser) -> Working {
    let (measured_al, k, a) = (al.mm(), cornea.k(), a.get());
    let pacd = SHAMMAS_PACD_1.get() * a + SHAMMAS_PACD_0.get();
    let constant = match laser {
        Laser::Myopic => SHAMMAS_MYOPIC_0.get(),
        Laser::Hyperopic => SHAMMAS_HYPEROPIC_0.get(),
    };
    Working {
        measured_al,
        k,
        a,
        kc: slope(laser) * k + constant,
        pacd,
        elp: pacd + SHAMMAS_POSITION.get(),
        al: measured_al - SHAMMAS_AL_1.get() * (measured_al - SHAMMAS_AL_0.get()),
        divisor: SHAMMAS_DIVISOR.get(),
    }
}

fn slope(laser: Laser) -> f64 {
    match laser {
        Laser::Myopic => SHAMMAS_MYOPIC_1.get(),
        Laser::Hyperopic => SHAMMAS_HYPEROPIC_1.get(),
    }
}

impl Working {
    /// The eye as Shammas-PL's optics see it.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye { divisor: self.divisor, ..ThinEye::new(self.al, self.kc, self.elp) }
    }
}

impl View for (Working, Laser) {
    fn optics(&self) -> Optics {
        Optics::Thin(self.0.thin_eye())
    }

    fn chain(&self) -> Option<Chain> {
        let constant = SHAMMAS_PACD_1.get();
        Some(Chain { al: 1.0 - SHAMMAS_AL_1.get(), kc: slope(self.1), constant, ..Chain::NONE })
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.0.show(steps);
    }
}

/// The method.
pub static METHOD: Spec = Spec {
    key: "shammas_pl",
    name: "Shammas-PL",
    source: Source::Shammas2007,
    of: Eyes::AfterLaser,
    view: |eye, then| {
        let al = eye.axial_length()?;
        let laser = eye.laser().ok_or(Lack::ThisEye)?;
        then(&(working(al, eye.cornea()?, a_constant(eye)?, laser), laser));
        Ok(())
    },
};
