//! The whole cornea where both of its surfaces were measured: true indices, thickness, any crossing of the axes.

use crate::astigmatism::matrix::PowerMatrix;
use crate::astigmatism::plane;
use crate::astigmatism::power_vector::PowerVector;
use crate::constant::optics::{INDEX_CORNEA, N};
use crate::optics::cornea::Cornea;
use crate::quantity::{Axis, CornealRadius, CornealThickness};

working! {
    /// Front and back of a cornea, and what they are together, step by step.
    Working "Front and back of the cornea together";
    front_m "F1_M" "D" = "1000 (1.376 - 1)/r in each principal meridian of the front; their mean" [INDEX_CORNEA],
        "power of the front", Identity Two;
    front_0 "F1_0" "D" = "half their difference, cos 2a" [], "its part along 0 and 90", Thibos1997 Two;
    front_45 "F1_45" "D" = "half their difference, sin 2a" [], "its part along 45 and 135", Thibos1997 Two;
    back_m "F2_M" "D" = "1000 (1.336 - 1.376)/r in each principal meridian of the back; their mean" [N, INDEX_CORNEA],
        "power of the back", Identity Two;
    back_0 "F2_0" "D" = "half their difference, cos 2a" [], "its part along 0 and 90", Thibos1997 Two;
    back_45 "F2_45" "D" = "half their difference, sin 2a" [], "its part along 45 and 135", Thibos1997 Two;
    total_m "F_M" "D" = "F = F1 + F2 - (t/1.376) (F1 F2 + F2 F1)/2, 2x2 matrices, t in m" [INDEX_CORNEA],
        "power of both", Identity Two;
    total_0 "F_0" "D" = "its part along 0 and 90" [], "the same", Identity Two;
    total_45 "F_45" "D" = "its part along 45 and 135" [], "the same", Identity Two;
}

impl Working {
    /// The astigmatism of both surfaces, without their mean.
    ///
    /// ```
    /// use ocellus_core::{astigmatism::two_surfaces::working, optics::cornea::Cornea, quantity::*};
    /// let r = |mm| CornealRadius::from_mm(mm);
    /// let (along, across) = (Axis::from_deg(0.0)?, Axis::from_deg(90.0)?);
    /// let front = Cornea::from_radii(r(7.8)?, r(7.5)?, Some((along, across)))?;
    /// let back = Cornea::from_radii(r(6.6)?, r(6.2)?, Some((along, across)))?;
    /// let w = working(&front, &back, CornealThickness::from_um(540.0)?).unwrap();
    /// // the back, steep upright too, takes a part of the front's astigmatism away
    /// assert!(w.astigmatism().cylinder() < 2.0 * w.front_0.abs());
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn astigmatism(&self) -> PowerVector<plane::Cornea> {
        PowerVector::at(plane::Cornea, 0.0, self.total_0, self.total_45)
    }
}

/// Both surfaces of a cornea, and what they are together; `None` where an axis is not known.
///
/// ```text
/// F = F1 + F2 - (t/n) (F1 F2 + F2 F1)/2          F1 = 376/r, F2 = -40/r in the principal meridians of each; n 1.376
/// ```
///
/// ```
/// use ocellus_core::{astigmatism::two_surfaces::working, optics::cornea::Cornea, quantity::*};
/// let r = |mm| CornealRadius::from_mm(mm);
/// let axes = Some((Axis::from_deg(0.0)?, Axis::from_deg(90.0)?));
/// let (front, back) = (Cornea::from_radii(r(7.7)?, r(7.7)?, axes)?, Cornea::from_radii(r(6.8)?, r(6.8)?, axes)?);
/// let w = working(&front, &back, CornealThickness::from_um(500.0)?).unwrap();
/// // Gullstrand's cornea: 43.05 D
/// assert!((w.total_m - 43.05).abs() < 0.01);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(front: &Cornea, back: &Cornea, thickness: CornealThickness) -> Option<Working> {
    let corneal = INDEX_CORNEA.get();
    let first = surface(corneal - 1.0, front)?;
    let second = surface(N.get() - corneal, back)?;
    let (f1, f2) = (PowerMatrix::of(first), PowerMatrix::of(second));
    let reduced = thickness.um() / 1e6 / corneal;
    let total = f1.plus(f2).plus(f1.product(f2).times(-reduced)).at(plane::Cornea);
    Some(Working {
        front_m: first.m,
        front_0: first.j0,
        front_45: first.j45,
        back_m: second.m,
        back_0: second.j0,
        back_45: second.j45,
        total_m: total.m,
        total_0: total.j0,
        total_45: total.j45,
    })
}

/// A toric surface with a step of index.
fn surface(step: f64, cornea: &Cornea) -> Option<PowerVector<plane::Cornea>> {
    let power = |radius: CornealRadius| 1000.0 * step / radius.mm();
    let (flat, steep) = (power(cornea.flat_radius()), power(cornea.steep_radius()));
    let axis: Axis = cornea.steep_axis()?;
    Some(PowerVector::strongest_along(plane::Cornea, (flat + steep) / 2.0, steep - flat, axis))
}
