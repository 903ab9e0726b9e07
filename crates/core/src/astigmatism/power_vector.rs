//! The one representation: power vectors.

use crate::astigmatism::sphero_cylinder::SpheroCylinder;
use crate::astigmatism::{NO_CYLINDER, half_direction};
use crate::math::{cos_deg, sin_deg, sqrt, square};
use crate::quantity::Axis;

/// A power in every meridian: `F(t) = M + J0 cos 2t + J45 sin 2t`, D.
///
/// Thibos, Wheeler, Horner 1997 (two). Vectors at one plane add component by component.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PowerVector {
    /// Mean power, D.
    pub m: f64,
    /// Half the difference between the meridians 0 and 90, D.
    pub j0: f64,
    /// Half the difference between the meridians 45 and 135, D.
    pub j45: f64,
}

impl PowerVector {
    /// From a sphero-cylinder.
    ///
    /// ```text
    /// M = S + C/2      J0 = -(C/2) cos 2A      J45 = -(C/2) sin 2A
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{power_vector::PowerVector, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::Axis;
    /// let rx = SpheroCylinder::new(-1.0, -2.0, Some(Axis::from_deg(180.0)?));
    /// let v = PowerVector::of(rx);
    /// assert!((v.m - -2.0).abs() < 1e-15 && (v.j0 - 1.0).abs() < 1e-15 && v.j45.abs() < 1e-15);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn of(rx: SpheroCylinder) -> PowerVector {
        let half = rx.cylinder / 2.0;
        let (cos, sin) = rx.axis.map_or((0.0, 0.0), |a| (cos_deg(2.0 * a.deg()), sin_deg(2.0 * a.deg())));
        PowerVector { m: rx.sphere + half, j0: -half * cos, j45: -half * sin }
    }

    /// From a mean power and a difference between the strongest meridian and the one across it.
    ///
    /// ```text
    /// J0 = (N/2) cos 2a      J45 = (N/2) sin 2a
    /// ```
    ///
    /// ```
    /// use ocellus_core::{astigmatism::power_vector::PowerVector, quantity::Axis};
    /// let cornea = PowerVector::strongest_along(43.5, 2.0, Axis::from_deg(90.0)?);
    /// assert!((cornea.in_meridian(Axis::from_deg(90.0)?) - 44.5).abs() < 1e-12);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn strongest_along(mean: f64, difference: f64, meridian: Axis) -> PowerVector {
        let twice = 2.0 * meridian.deg();
        PowerVector { m: mean, j0: difference / 2.0 * cos_deg(twice), j45: difference / 2.0 * sin_deg(twice) }
    }

    /// The sum of two powers at one plane: crossed cylinders.
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::PowerVector;
    /// let a = PowerVector { m: 1.0, j0: 0.5, j45: 0.0 };
    /// assert_eq!(a.plus(a), PowerVector { m: 2.0, j0: 1.0, j45: 0.0 });
    /// ```
    pub fn plus(self, other: PowerVector) -> PowerVector {
        PowerVector { m: self.m + other.m, j0: self.j0 + other.j0, j45: self.j45 + other.j45 }
    }

    /// The difference of two powers at one plane.
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::PowerVector;
    /// let a = PowerVector { m: 1.0, j0: 0.5, j45: 0.25 };
    /// assert_eq!(a.minus(a), PowerVector::default());
    /// ```
    pub fn minus(self, other: PowerVector) -> PowerVector {
        PowerVector { m: self.m - other.m, j0: self.j0 - other.j0, j45: self.j45 - other.j45 }
    }

    /// Power in one meridian, D.
    ///
    /// ```text
    /// F(t) = M + J0 cos 2t + J45 sin 2t
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{power_vector::PowerVector, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::Axis;
    /// let v = PowerVector::of(SpheroCylinder::new(0.5, -2.0, Some(Axis::from_deg(30.0)?)));
    /// assert!((v.in_meridian(Axis::from_deg(45.0)?) - 0.366).abs() < 0.0005);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn in_meridian(self, meridian: Axis) -> f64 {
        self.m + self.j0 * cos_deg(2.0 * meridian.deg()) + self.j45 * sin_deg(2.0 * meridian.deg())
    }

    /// Difference between the strongest and the weakest meridian, D; never negative.
    ///
    /// ```text
    /// N = 2 sqrt(J0^2 + J45^2)
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::PowerVector;
    /// assert_eq!(PowerVector { m: 0.0, j0: 0.6, j45: -0.8 }.cylinder(), 2.0);
    /// ```
    pub fn cylinder(self) -> f64 {
        2.0 * sqrt(square(self.j0) + square(self.j45))
    }

    /// The strongest meridian; `None` where all are equal.
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::PowerVector;
    /// assert_eq!(PowerVector { m: 43.0, j0: -1.0, j45: 0.0 }.strongest().unwrap().deg(), 90.0);
    /// assert_eq!(PowerVector { m: 43.0, j0: 0.0, j45: 0.0 }.strongest(), None);
    /// ```
    pub fn strongest(self) -> Option<Axis> {
        if self.cylinder() > NO_CYLINDER { half_direction(self.j45, self.j0) } else { None }
    }

    /// Blur strength, D.
    ///
    /// ```text
    /// B = sqrt(M^2 + J0^2 + J45^2)
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::PowerVector;
    /// assert_eq!(PowerVector { m: 1.0, j0: 2.0, j45: 2.0 }.blur(), 3.0);
    /// ```
    pub fn blur(self) -> f64 {
        sqrt(square(self.m) + square(self.j0) + square(self.j45))
    }

    /// As a sphero-cylinder with a minus cylinder.
    ///
    /// ```text
    /// C = -2 sqrt(J0^2 + J45^2),  S = M - C/2,  A = atan2(J45, J0)/2 mod 180
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::PowerVector;
    /// let rx = PowerVector { m: -1.0, j0: 1.0, j45: 0.0 }.minus_cylinder();
    /// assert_eq!((rx.sphere, rx.cylinder, rx.axis.unwrap().deg()), (0.0, -2.0, 0.0));
    /// ```
    pub fn minus_cylinder(self) -> SpheroCylinder {
        let cylinder = -self.cylinder();
        SpheroCylinder::new(self.m - cylinder / 2.0, cylinder, self.strongest())
    }

    /// Each principal meridian changed by a function of its power, the axis kept: vertexing, travel through a gap.
    ///
    /// # Errors
    /// Whatever the function returns.
    pub(crate) fn by_meridian<E>(self, change: impl Fn(f64) -> Result<f64, E>) -> Result<PowerVector, E> {
        let half = self.cylinder() / 2.0;
        let (strong, weak) = (change(self.m + half)?, change(self.m - half)?);
        // the direction as it is, only its length changes
        let stretch = if half > 0.0 { (strong - weak) / 2.0 / half } else { 0.0 };
        Ok(PowerVector { m: (strong + weak) / 2.0, j0: self.j0 * stretch, j45: self.j45 * stretch })
    }
}
