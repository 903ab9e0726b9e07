//! A toric lens that sits wrong: where its mark should be, and how far to turn it either way.

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::{short_way, turned};
use crate::math::{cos_deg, sin_deg};
use crate::quantity::Axis;

working! {
    /// The best turn, step by step.
    Working "The best turn";
    m "m" "deg" = "entered" [], "where the mark is now", Entered Entered;
    c_l "C_L" "D" = "cylinder of the lens at the cornea, at this method's lens position" [], "what the lens corrects", Identity Two;
    e_x "E_x" "D" = "E = C cos 2A, C at A the plus cylinder of the refraction now, at the cornea" [], "still needed now", Thibos1997 Two;
    e_y "E_y" "D" = "C sin 2A" [], "still needed now", Thibos1997 Two;
    k_x "K_x" "D" = "K_x = E_x + C_L cos 2m" [], "what the lens should correct", Identity Two;
    k_y "K_y" "D" = "K_y = E_y + C_L sin 2m" [], "what the lens should correct", Identity Two;
    best "m*" "deg" = "m* = atan2(K_y, K_x)/2" [], "best meridian for the mark", Identity Two;
    turn "p" "deg" = "p = m* - m, in (-90, 90]" [], "turn to it, counter-clockwise plus", Identity Two;
    now "|E|" "D" = "|E|" [], "cylinder still needed now", Identity Two;
    left "left" "D" = "||K| - C_L|" [], "cylinder still needed after it", Identity Two;
}

/// The best turn of a lens that sits wrong; `None` where no meridian is better than another.
///
/// `needed` is the correction still needed at the cornea, `lens` the cylinder of the lens there, and `mark` the meridian of
/// its mark now.
///
/// ```text
/// K = E + C_L (cos 2m, sin 2m)          m* = atan2(K_y, K_x)/2          left | |K| - C_L |
/// ```
///
/// The direction is that of someone who looks at the eye from the front, from any seat: it is the same for both eyes and every
/// seat, and in an image turned upside down. Only a mirror reverses it.
///
/// ```
/// use ocellus_core::astigmatism::{off_axis::needed, power_vector::PowerVector, turning::working};
/// use ocellus_core::quantity::Axis;
/// // wanted at 90, found at 102: 12 degrees too far counter-clockwise
/// let now = PowerVector::of(needed(2.0, Axis::from_deg(90.0)?, 12.0));
/// let w = working(now, 2.0, Axis::from_deg(102.0)?).unwrap();
/// assert!((w.best - 90.0).abs() < 1e-9 && (w.turn + 12.0).abs() < 1e-9 && w.left < 1e-9);
/// assert!((w.clockwise() - 12.0).abs() < 1e-9 && (w.counter_clockwise() - 168.0).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(needed: PowerVector<Cornea>, lens: f64, mark: Axis) -> Option<Working> {
    let (e_x, e_y) = (-2.0 * needed.j0, -2.0 * needed.j45);
    let twice = 2.0 * mark.deg();
    let (k_x, k_y) = (e_x + lens * cos_deg(twice), e_y + lens * sin_deg(twice));
    let wanted = PowerVector::at(Cornea, 0.0, k_x / 2.0, k_y / 2.0);
    let best = wanted.strongest()?;
    Some(Working {
        m: mark.deg(),
        c_l: lens,
        e_x,
        e_y,
        k_x,
        k_y,
        best: best.deg(),
        turn: short_way(best.deg() - mark.deg()),
        now: needed.cylinder(),
        left: (wanted.cylinder() - lens).abs(),
    })
}

impl Working {
    /// Degrees to turn counter-clockwise to the best meridian, in [0, 180).
    pub fn counter_clockwise(&self) -> f64 {
        if self.turn < 0.0 { self.turn + 180.0 } else { self.turn }
    }

    /// Degrees to turn clockwise to the same meridian, in [0, 180).
    pub fn clockwise(&self) -> f64 {
        if self.turn > 0.0 { 180.0 - self.turn } else { 0.0 - self.turn }
    }

    /// The correction still needed at the cornea after another turn, counter-clockwise plus; its mean stays as it is.
    ///
    /// ```text
    /// E' = K - C_L (cos 2(m + p), sin 2(m + p))
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{off_axis::needed, power_vector::PowerVector, turning::working};
    /// use ocellus_core::quantity::Axis;
    /// let now = PowerVector::of(needed(2.0, Axis::from_deg(90.0)?, 12.0));
    /// let w = working(now, 2.0, Axis::from_deg(102.0)?).unwrap();
    /// assert!(w.after(-12.0, 0.0).cylinder() < 1e-9);
    /// assert!((w.after(-7.0, 0.0).cylinder() - 0.3486).abs() < 5e-5);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn after(&self, turn: f64, mean: f64) -> PowerVector<Cornea> {
        let twice = 2.0 * Axis::from_deg(self.m).map_or(self.m + turn, |mark| turned(mark, turn).deg());
        let (e_x, e_y) = (self.k_x - self.c_l * cos_deg(twice), self.k_y - self.c_l * sin_deg(twice));
        PowerVector::at(Cornea, mean, -e_x / 2.0, -e_y / 2.0)
    }
}
