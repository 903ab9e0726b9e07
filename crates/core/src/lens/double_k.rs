//! Double-K: after corneal laser, the lens position from the cornea before it and the optics from the cornea after it.

use crate::constant::optics::{INDEX_1_3375, INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER, INDEX_SRKT};
use crate::error::Error;
use crate::lens::eye::{Eye, Lack};
use crate::lens::slopes::Chain;
use crate::lens::view::{Doubt, Doubts, Optics, View};
use crate::optics::cornea::Cornea;
use crate::optics::{thin_eye::ThinEye, vertex::to_cornea};
use crate::quantity::{CornealPower, KeratometricIndex, Refraction, Vertex};
use crate::working::Steps;

working! {
    /// The optics of an ordinary method on another cornea.
    Working "The optics with the cornea after the laser";
    k_before "K1" "D" = "entered; the steps above rest on it" [], "mean K before the laser", Entered Entered;
    k_after "K2" "D" = "entered, or K2 = K1 - (Rc after - Rc before)" [], "mean K after the laser, estimated", Aramberri2003 Two;
    r_after "r2" "mm" = "r2 = 1000 (1.3375 - 1)/K2" [INDEX_1_3375], "its radius", Identity Two;
    al "AL'" "mm" = "of the method, above" [], "axial length in the optics", Aramberri2003 Two;
    elp "ELP" "mm" = "of the method, above, from K1" [], "lens position", Aramberri2003 Two;
    kc "Kc" "D" = "Kc = 1000 (i - 1)/r2, i the method's own: SRK/T 1.333, Holladay 1 4/3, Hoffer Q 1.3375"
        [INDEX_SRKT, INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER, INDEX_1_3375], "corneal power in the optics", Aramberri2003 Two;
}

/// An ordinary method's eye, from the cornea before, with the cornea after in its optics.
///
/// ```text
/// ELP, AL' from K before          Kc from K after, at the method's own index
/// ```
///
/// Both are keratometric powers at 1.3375. Source: Aramberri 2003 (two).
///
/// ```
/// use ocellus_core::{lens::double_k, optics::thin_eye::ThinEye, quantity::CornealPower};
/// let (before, after) = (CornealPower::from_d(44.0)?, CornealPower::from_d(38.4)?);
/// let eye = double_k::working(before, after, 1.333, ThinEye::new(26.1, 43.4, 5.6)).thin_eye();
/// assert!((eye.kc - 37.888).abs() < 1e-9 && eye.elp == 5.6);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(before: CornealPower, after: CornealPower, index: f64, own: ThinEye) -> Working {
    let r_after = 1000.0 * (INDEX_1_3375.get() - 1.0) / after.d();
    Working {
        k_before: before.d(),
        k_after: after.d(),
        r_after,
        al: own.al,
        elp: own.elp,
        kc: 1000.0 * (index - 1.0) / r_after,
    }
}

impl Working {
    /// The eye as the method's optics see it after the laser.
    pub fn thin_eye(&self) -> ThinEye {
        ThinEye::new(self.al, self.kc, self.elp)
    }
}

/// The corneal power after laser that its history suggests.
///
/// ```text
/// K after = K before - (Rc after - Rc before)          refractions at the cornea
/// ```
///
/// # Errors
/// Where the refractions or the power are outside their bounds.
///
/// ```
/// use ocellus_core::{lens::double_k::from_history, quantity::*};
/// let (before, after) = (Refraction::from_d(-6.0)?, Refraction::from_d(0.0)?);
/// let k = from_history(CornealPower::from_d(44.0)?, before, after, Vertex::from_mm(12.0)?)?;
/// assert!((k.d() - 38.40).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn from_history(
    before: CornealPower,
    rx_before: Refraction,
    rx_after: Refraction,
    vertex: Vertex,
) -> Result<CornealPower, Error> {
    let change = to_cornea(rx_after.d(), vertex)? - to_cornea(rx_before.d(), vertex)?;
    CornealPower::from_d(before.d() - change)
}

/// The corneas before a laser and after it, as an ordinary method is asked for them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Corneas {
    before: CornealPower,
    after: CornealPower,
    by_history: bool,
}

/// The corneas of an eye, and the one before as it is measured.
pub(super) fn corneas(eye: &dyn Eye) -> Result<(Cornea, Corneas), Lack> {
    let before = eye.k_before()?;
    let (after, by_history) = eye.k_after()?;
    let index = KeratometricIndex::new(INDEX_1_3375.get())?;
    Ok((Cornea::from_powers(before, before, index, None)?, Corneas { before, after, by_history }))
}

/// An ordinary method's view of the eye before, with the cornea after in its optics.
pub(super) struct Double<'a> {
    pub(super) own: &'a dyn View,
    pub(super) corneas: Corneas,
    /// The method's own index.
    pub(super) index: f64,
}

impl Double<'_> {
    /// What it makes of the method's own eye.
    fn working(&self) -> Option<Working> {
        Some(working(self.corneas.before, self.corneas.after, self.index, self.own.optics().thin_eye()?))
    }
}

impl View for Double<'_> {
    fn optics(&self) -> Optics {
        self.working().map_or(self.own.optics(), |w| Optics::Thin(w.thin_eye()))
    }

    /// The optics follow the cornea after the laser, the position that before it.
    fn chain(&self) -> Option<Chain> {
        let (own, w) = (self.own.chain()?, self.working()?);
        Some(Chain { kc: w.kc / w.k_after, elp_k: 0.0, elp_k_before: own.elp_k, ..own })
    }

    fn doubts(&self, eye: &dyn Eye) -> Doubts {
        let [first, second, third, _] = self.own.doubts(eye);
        [first, self.corneas.by_history.then_some(Doubt::KFromHistory), second, third]
    }

    fn beside(&self) -> Option<ThinEye> {
        Some(ThinEye { elp: self.own.beside()?.elp, ..self.optics().thin_eye()? })
    }

    fn show(&self, steps: &mut dyn Steps) {
        self.own.show(steps);
        if let Some(w) = self.working() {
            w.show(steps);
        }
    }
}
