//! The lens itself: its power and its principal planes, from its surfaces.

use crate::constant::optics::N;
use crate::error::Error;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{LensCentre, LensIndex, LensRadius};

working! {
    /// A thick lens in the eye, step by step.
    Working "The lens itself";
    r1 "r1" "mm" = "entered; 0 is a plane" [], "front radius, positive where its centre lies behind", Entered Entered;
    r2 "r2" "mm" = "entered; 0 is a plane" [], "back radius, negative where its centre lies before", Entered Entered;
    t "t" "mm" = "entered" [], "thickness at the centre", Entered Entered;
    n "nL" "1" = "entered" [], "index of the lens", Entered Entered;
    p1 "P1" "D" = "P1 = 1000 (nL - 1.336)/r1" [N], "power of the front surface", Identity Two;
    p2 "P2" "D" = "P2 = 1000 (1.336 - nL)/r2" [N], "power of the back surface", Identity Two;
    power "P" "D" = "P = P1 + P2 - (t/nL) P1 P2/1000" [], "power in the eye", Identity Two;
    front "h" "mm" = "h = 1.336 (t/nL) P2/P" [N], "front principal plane, behind the front vertex", Identity Two;
    back "h'" "mm" = "h' = t - 1.336 (t/nL) P1/P" [N], "back principal plane, behind the front vertex", Identity Two;
}

/// A lens in aqueous from radii, thickness and index.
///
/// ```text
/// P1 = 1000 (nL - n)/r1     P2 = 1000 (n - nL)/r2     P = P1 + P2 - (t/nL) P1 P2/1000
/// h  = n (t/nL) P2/P        h' = t - n (t/nL) P1/P
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] where it has no power, and so no planes.
///
/// ```
/// use ocellus_core::{optics::thick::working, quantity::*};
/// let r = |mm| LensRadius::from_mm(mm);
/// let lens = working(r(13.35)?, r(-13.35)?, LensCentre::from_mm(0.9)?, LensIndex::new(1.47)?)?;
/// assert!((lens.power - 20.0).abs() < 0.05 && (lens.front + lens.back - 0.9).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(front: LensRadius, back: LensRadius, centre: LensCentre, index: LensIndex) -> Result<Working, Error> {
    let (r1, r2, t, n) = (front.mm(), back.mm(), centre.mm(), index.get());
    let surface = |step: f64, radius: f64| if radius == 0.0 { 0.0 } else { 1000.0 * step / radius };
    let (p1, p2) = (surface(n - N.get(), r1), surface(N.get() - n, r2));
    let reduced = t / n;
    let power = p1 + p2 - reduced * p1 * p2 / 1000.0;
    if power == 0.0 {
        return Err(Error::NoSolution);
    }
    let (front, back) = (N.get() * reduced * p2 / power, t - N.get() * reduced * p1 / power);
    Ok(Working { r1, r2, t, n, p1, p2, power, front, back })
}

impl Working {
    /// An eye with this lens in place of its thin one, the front vertex at a place behind the cornea, mm: exact, since light
    /// goes from the back principal plane as it came to the front one.
    ///
    /// ```text
    /// d = vertex + h          AL less the way between the planes, h' - h
    /// ```
    ///
    /// ```
    /// use ocellus_core::{optics::{thick::working, thin_eye::ThinEye}, quantity::*};
    /// let r = |mm| LensRadius::from_mm(mm);
    /// let lens = working(r(13.35)?, r(-13.35)?, LensCentre::from_mm(0.9)?, LensIndex::new(1.47)?)?;
    /// let eye = lens.placed(ThinEye::new(23.5, 43.0, 5.0), 4.8);
    /// assert!(eye.elp > 5.1 && eye.al < 23.5);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn placed(&self, eye: ThinEye, vertex: f64) -> ThinEye {
        ThinEye { al: eye.al - (self.back - self.front), elp: vertex + self.front, ..eye }
    }
}
