//! Polar values: what an astigmatism is along one meridian of interest, and oblique to it.

use crate::astigmatism::power_vector::PowerVector;
use crate::math::{cos_deg, sin_deg};
use crate::quantity::Axis;

/// An astigmatism about a reference meridian, D.
///
/// Naeser, J Cataract Refract Surg 1990;16:162-168 (memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Polar {
    /// What is stronger along the meridian than across it.
    pub along: f64,
    /// What is stronger 45 degrees counter-clockwise of it than across that.
    pub oblique: f64,
}

impl Polar {
    /// The polar values of a power about a meridian.
    ///
    /// ```text
    /// along = N cos 2(a - r)      oblique = N sin 2(a - r)
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, polar::Polar, power_vector::PowerVector};
    /// use ocellus_core::quantity::Axis;
    /// let right = Axis::from_deg(90.0)?;
    /// let polar = Polar::about(right, PowerVector::strongest_along(Cornea, 0.0, 1.5, right));
    /// assert!((polar.along - 1.5).abs() < 1e-15 && polar.oblique.abs() < 1e-15);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn about<P: Copy>(reference: Axis, power: PowerVector<P>) -> Polar {
        let (cos, sin) = double(reference);
        Polar { along: 2.0 * (power.j0 * cos + power.j45 * sin), oblique: 2.0 * (power.j45 * cos - power.j0 * sin) }
    }

    /// Back to a power, which has a mean too.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, polar::Polar, power_vector::PowerVector};
    /// use ocellus_core::quantity::Axis;
    /// let (reference, power) = (Axis::from_deg(35.0)?, PowerVector::at(Cornea, 43.5, 0.4, -0.7));
    /// let back = Polar::about(reference, power).power(reference, Cornea, 43.5);
    /// assert!((back.j0 - 0.4).abs() < 1e-15 && (back.j45 + 0.7).abs() < 1e-15);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn power<P: Copy>(self, reference: Axis, plane: P, mean: f64) -> PowerVector<P> {
        let (cos, sin) = double(reference);
        let (j0, j45) = (self.along * cos - self.oblique * sin, self.along * sin + self.oblique * cos);
        PowerVector::at(plane, mean, j0 / 2.0, j45 / 2.0)
    }
}

fn double(meridian: Axis) -> (f64, f64) {
    (cos_deg(2.0 * meridian.deg()), sin_deg(2.0 * meridian.deg()))
}
