//! A power as a symmetric 2x2 matrix: what two surfaces with crossed axes are multiplied with.

use crate::astigmatism::power_vector::PowerVector;

/// A power matrix, D: across a meridian with the direction u the power is u'Fu.
///
/// Long 1976, on the matrix formalism of lens power (memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PowerMatrix {
    /// Power along 0, D.
    pub xx: f64,
    /// What couples the two, D.
    pub xy: f64,
    /// Power along 90, D.
    pub yy: f64,
}

impl PowerMatrix {
    /// The same power as a matrix.
    ///
    /// ```text
    /// F = ( M + J0   J45    )
    ///     ( J45      M - J0 )
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{matrix::PowerMatrix, plane::Lens, power_vector::PowerVector};
    /// let f = PowerMatrix::of(PowerVector::at(Lens, 20.0, 1.5, 0.5));
    /// assert_eq!((f.xx, f.xy, f.yy), (21.5, 0.5, 18.5));
    /// ```
    pub fn of<P: Copy>(power: PowerVector<P>) -> PowerMatrix {
        PowerMatrix { xx: power.m + power.j0, xy: power.j45, yy: power.m - power.j0 }
    }

    /// The same power as a vector, at a plane.
    ///
    /// ```text
    /// M = (xx + yy)/2      J0 = (xx - yy)/2      J45 = xy
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{matrix::PowerMatrix, plane::Lens, power_vector::PowerVector};
    /// let power = PowerVector::at(Lens, 20.0, 1.5, 0.5);
    /// assert_eq!(PowerMatrix::of(power).at(Lens), power);
    /// ```
    pub fn at<P: Copy>(self, plane: P) -> PowerVector<P> {
        PowerVector::at(plane, (self.xx + self.yy) / 2.0, (self.xx - self.yy) / 2.0, self.xy)
    }

    /// The sum of two powers in contact.
    ///
    /// ```
    /// use ocellus_core::astigmatism::matrix::PowerMatrix;
    /// let f = PowerMatrix { xx: 1.0, xy: 0.5, yy: 2.0 };
    /// assert_eq!(f.plus(f), PowerMatrix { xx: 2.0, xy: 1.0, yy: 4.0 });
    /// ```
    pub fn plus(self, other: PowerMatrix) -> PowerMatrix {
        PowerMatrix { xx: self.xx + other.xx, xy: self.xy + other.xy, yy: self.yy + other.yy }
    }

    /// Every part times a number.
    ///
    /// ```
    /// use ocellus_core::astigmatism::matrix::PowerMatrix;
    /// assert_eq!(PowerMatrix { xx: 1.0, xy: 0.5, yy: 2.0 }.times(2.0), PowerMatrix { xx: 2.0, xy: 1.0, yy: 4.0 });
    /// ```
    pub fn times(self, factor: f64) -> PowerMatrix {
        PowerMatrix { xx: self.xx * factor, xy: self.xy * factor, yy: self.yy * factor }
    }

    /// The symmetric part of a product, D2: all of it where the axes are parallel or square.
    ///
    /// ```text
    /// (F G + G F)/2
    /// ```
    ///
    /// What it leaves out turns light without bending it, and at a cornea is below 0.001 D.
    ///
    /// ```
    /// use ocellus_core::astigmatism::matrix::PowerMatrix;
    /// let (f, g) = (PowerMatrix { xx: 2.0, xy: 0.0, yy: 3.0 }, PowerMatrix { xx: 5.0, xy: 0.0, yy: 7.0 });
    /// assert_eq!(f.product(g), PowerMatrix { xx: 10.0, xy: 0.0, yy: 21.0 });
    /// ```
    pub fn product(self, other: PowerMatrix) -> PowerMatrix {
        PowerMatrix {
            xx: self.xx * other.xx + self.xy * other.xy,
            xy: (self.xy * (other.xx + other.yy) + other.xy * (self.xx + self.yy)) / 2.0,
            yy: self.yy * other.yy + self.xy * other.xy,
        }
    }
}
