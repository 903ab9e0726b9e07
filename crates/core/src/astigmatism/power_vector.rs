//! The one representation: power vectors.

use crate::astigmatism::sphero_cylinder::SpheroCylinder;
use crate::astigmatism::{NO_CYLINDER, half_direction};
use crate::math::{cos_deg, sin_deg, sqrt, square};
use crate::quantity::Axis;

/// A power in every meridian: `F(t) = M + J0 cos 2t + J45 sin 2t`, D.
///
/// Thibos, Wheeler, Horner 1997 (two). Vectors at one plane add component by component; of two planes they do not.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PowerVector<P> {
    /// Mean power, D.
    pub m: f64,
    /// Half the difference between the meridians 0 and 90, D.
    pub j0: f64,
    /// Half the difference between the meridians 45 and 135, D.
    pub j45: f64,
    /// Where it is meant.
    pub plane: P,
}

impl<P: Copy> PowerVector<P> {
    /// From its parts, at a plane.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// assert_eq!(PowerVector::at(Cornea, 43.0, 0.5, 0.0).m, 43.0);
    /// ```
    pub const fn at(plane: P, m: f64, j0: f64, j45: f64) -> PowerVector<P> {
        PowerVector { m, j0, j45, plane }
    }

    /// From the powers in the meridians 0, 45 and 90, D.
    ///
    /// ```text
    /// M = (F0 + F90)/2      J0 = (F0 - F90)/2      J45 = F45 - M
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// assert_eq!(PowerVector::in_meridians(Cornea, 43.0, 44.0, 44.0), PowerVector::at(Cornea, 43.5, -0.5, 0.5));
    /// ```
    pub fn in_meridians(plane: P, f0: f64, f45: f64, f90: f64) -> PowerVector<P> {
        let m = (f0 + f90) / 2.0;
        PowerVector::at(plane, m, (f0 - f90) / 2.0, f45 - m)
    }

    /// From a sphero-cylinder.
    ///
    /// ```text
    /// M = S + C/2      J0 = -(C/2) cos 2A      J45 = -(C/2) sin 2A
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Spectacles, power_vector::PowerVector, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::Axis;
    /// let rx = SpheroCylinder::at(Spectacles, -1.0, -2.0, Some(Axis::from_deg(180.0)?));
    /// let v = PowerVector::of(rx);
    /// assert!((v.m - -2.0).abs() < 1e-15 && (v.j0 - 1.0).abs() < 1e-15 && v.j45.abs() < 1e-15);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn of(rx: SpheroCylinder<P>) -> PowerVector<P> {
        let half = rx.cylinder / 2.0;
        let (cos, sin) = rx.axis.map_or((0.0, 0.0), |a| (cos_deg(2.0 * a.deg()), sin_deg(2.0 * a.deg())));
        PowerVector::at(rx.plane, rx.sphere + half, -half * cos, -half * sin)
    }

    /// From a mean power and a difference between the strongest meridian and the one across it.
    ///
    /// ```text
    /// J0 = (N/2) cos 2a      J45 = (N/2) sin 2a
    /// ```
    ///
    /// ```
    /// use ocellus_core::{astigmatism::{plane::Cornea, power_vector::PowerVector}, quantity::Axis};
    /// let cornea = PowerVector::strongest_along(Cornea, 43.5, 2.0, Axis::from_deg(90.0)?);
    /// assert!((cornea.in_meridian(Axis::from_deg(90.0)?) - 44.5).abs() < 1e-12);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn strongest_along(plane: P, mean: f64, difference: f64, meridian: Axis) -> PowerVector<P> {
        let twice = 2.0 * meridian.deg();
        PowerVector::at(plane, mean, difference / 2.0 * cos_deg(twice), difference / 2.0 * sin_deg(twice))
    }

    /// The sum of two powers at one plane: crossed cylinders.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// let a = PowerVector::at(Cornea, 1.0, 0.5, 0.0);
    /// assert_eq!(a.plus(a), PowerVector::at(Cornea, 2.0, 1.0, 0.0));
    /// ```
    pub fn plus(self, other: PowerVector<P>) -> PowerVector<P> {
        PowerVector { m: self.m + other.m, j0: self.j0 + other.j0, j45: self.j45 + other.j45, ..self }
    }

    /// The difference of two powers at one plane.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// let a = PowerVector::at(Cornea, 1.0, 0.5, 0.25);
    /// assert_eq!(a.minus(a), PowerVector::at(Cornea, 0.0, 0.0, 0.0));
    /// ```
    pub fn minus(self, other: PowerVector<P>) -> PowerVector<P> {
        PowerVector { m: self.m - other.m, j0: self.j0 - other.j0, j45: self.j45 - other.j45, ..self }
    }

    /// Power in one meridian, D.
    ///
    /// ```text
    /// F(t) = M + J0 cos 2t + J45 sin 2t
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Spectacles, power_vector::PowerVector, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::Axis;
    /// let v = PowerVector::of(SpheroCylinder::at(Spectacles, 0.5, -2.0, Some(Axis::from_deg(30.0)?)));
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
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// assert_eq!(PowerVector::at(Cornea, 0.0, 0.6, -0.8).cylinder(), 2.0);
    /// ```
    pub fn cylinder(self) -> f64 {
        2.0 * sqrt(square(self.j0) + square(self.j45))
    }

    /// The strongest meridian; `None` where all are equal.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// assert_eq!(PowerVector::at(Cornea, 43.0, -1.0, 0.0).strongest().unwrap().deg(), 90.0);
    /// assert_eq!(PowerVector::at(Cornea, 43.0, 0.0, 0.0).strongest(), None);
    /// ```
    pub fn strongest(self) -> Option<Axis> {
        self.direction(self.cylinder())
    }

    /// The same where its cylinder is known.
    fn direction(self, cylinder: f64) -> Option<Axis> {
        if cylinder > NO_CYLINDER { half_direction(self.j45, self.j0) } else { None }
    }

    /// Blur strength, D.
    ///
    /// ```text
    /// B = sqrt(M^2 + J0^2 + J45^2)
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// assert_eq!(PowerVector::at(Cornea, 1.0, 2.0, 2.0).blur(), 3.0);
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
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// let rx = PowerVector::at(Cornea, -1.0, 1.0, 0.0).minus_cylinder();
    /// assert_eq!((rx.sphere, rx.cylinder, rx.axis.unwrap().deg()), (0.0, -2.0, 0.0));
    /// ```
    pub fn minus_cylinder(self) -> SpheroCylinder<P> {
        let size = self.cylinder();
        SpheroCylinder::at(self.plane, self.m + size / 2.0, -size, self.direction(size))
    }

    /// As a sphero-cylinder with a plus cylinder.
    ///
    /// ```text
    /// C = 2 sqrt(J0^2 + J45^2),  S = M - C/2,  A = atan2(J45, J0)/2 + 90 mod 180
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector};
    /// let rx = PowerVector::at(Cornea, -1.0, 1.0, 0.0).plus_cylinder();
    /// assert_eq!((rx.sphere, rx.cylinder, rx.axis.unwrap().deg()), (-2.0, 2.0, 90.0));
    /// ```
    pub fn plus_cylinder(self) -> SpheroCylinder<P> {
        self.minus_cylinder().transposed()
    }

    /// The same power turned counter-clockwise as seen from the front.
    ///
    /// ```text
    /// J0' = J0 cos 2p - J45 sin 2p      J45' = J0 sin 2p + J45 cos 2p
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Lens, power_vector::PowerVector};
    /// assert_eq!(PowerVector::at(Lens, 20.0, 1.0, 0.0).turned(45.0), PowerVector::at(Lens, 20.0, 0.0, 1.0));
    /// ```
    pub fn turned(self, degrees: f64) -> PowerVector<P> {
        self.turned_by(Turn::by(degrees))
    }

    /// The same by a turn worked out before, where many are turned by it.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Lens, power_vector::{PowerVector, Turn}};
    /// let power = PowerVector::at(Lens, 20.0, 1.0, 0.5);
    /// assert_eq!(power.turned_by(Turn::by(20.0)), power.turned(20.0));
    /// ```
    pub fn turned_by(self, Turn { cos, sin }: Turn) -> PowerVector<P> {
        PowerVector { j0: self.j0 * cos - self.j45 * sin, j45: self.j0 * sin + self.j45 * cos, ..self }
    }
}

/// A turn of so many degrees, counter-clockwise, as the double angle that vectors turn by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    cos: f64,
    sin: f64,
}

impl Turn {
    /// The turns that tables are made of, worked out before: each takes a device 12,000 instructions.
    ///
    /// ```
    /// use ocellus_core::astigmatism::power_vector::Turn;
    /// assert_eq!(Turn::NONE, Turn::by(0.0));
    /// assert_eq!([Turn::BY_5, Turn::BY_10, Turn::BY_30], [5.0, 10.0, 30.0].map(Turn::by));
    /// assert_eq!([Turn::BACK_5, Turn::BACK_10, Turn::BACK_30], [-5.0, -10.0, -30.0].map(Turn::by));
    /// ```
    pub const NONE: Turn = Turn { cos: 1.0, sin: 0.0 };
    /// By 5 degrees.
    pub const BY_5: Turn = Turn { cos: 0.984807753012208, sin: 0.17364817766693033 };
    /// By 10 degrees.
    pub const BY_10: Turn = Turn { cos: 0.9396926207859084, sin: 0.3420201433256687 };
    /// By 30 degrees.
    pub const BY_30: Turn = Turn { cos: 0.49999999999999994, sin: 0.8660254037844387 };
    /// By 5 degrees clockwise.
    pub const BACK_5: Turn = Turn::BY_5.back();
    /// By 10 degrees clockwise.
    pub const BACK_10: Turn = Turn::BY_10.back();
    /// By 30 degrees clockwise.
    pub const BACK_30: Turn = Turn::BY_30.back();

    const fn back(self) -> Turn {
        Turn { sin: -self.sin, ..self }
    }

    /// Of so many degrees.
    pub fn by(degrees: f64) -> Turn {
        Turn { cos: cos_deg(2.0 * degrees), sin: sin_deg(2.0 * degrees) }
    }
}
