//! Many eyes: the mean vector, how they scatter, and how sure the mean is.

use crate::astigmatism::half_direction;
use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::math::{pow, sqrt, square};

/// Astigmatism vectors gathered one by one: their sums and no more, so that a small machine holds a group of any size.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Group {
    n: f64,
    x: f64,
    y: f64,
    xx: f64,
    xy: f64,
    yy: f64,
}

working! {
    /// A group of vectors in the double-angle plane, step by step.
    Summary "A group of eyes";
    n "n" "1" = "counted" [], "eyes", Identity Two;
    x "x" "D" = "mean of N cos 2a" [], "centroid", Identity Two;
    y "y" "D" = "mean of N sin 2a" [], "centroid", Identity Two;
    sd_x "s_x" "D" = "SD of N cos 2a, n - 1" [], "scatter", Identity Two;
    sd_y "s_y" "D" = "SD of N sin 2a, n - 1" [], "scatter", Identity Two;
    cov "s_xy" "D2" = "covariance, n - 1" [], "scatter", Identity Two;
    major "l1" "D" = "square root of the larger eigenvalue of the covariance" [], "SD along the longest direction", Identity Two;
    minor "l2" "D" = "square root of the smaller" [], "SD across it", Identity Two;
    direction "th" "deg" = "half of atan2(2 s_xy, s_x^2 - s_y^2), in the double-angle plane" [], "the longest direction", Identity Two;
    of_mean "f_m" "1" = "sqrt((n - 1)/n (0.05^(-2/(n-2)) - 1))" [], "semi-axes of the mean's 95 % ellipse over l", Hotelling Two;
    of_eyes "f_e" "1" = "sqrt((n - 1)(n + 1)/n (0.05^(-2/(n-2)) - 1))" [], "semi-axes of single eyes' over l", Hotelling Two;
}

impl Summary {
    /// A point of an ellipse about the centroid: `factor` is [`Summary::of_mean`] or [`Summary::of_eyes`], and the angle
    /// goes round it from its longest direction.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{group::Group, plane::Cornea, power_vector::PowerVector};
    /// let mut group = Group::default();
    /// for (j0, j45) in [(0.1, 0.0), (0.2, 0.1), (0.3, -0.1)] {
    ///     group.add(PowerVector::at(Cornea, 0.0, j0, j45));
    /// }
    /// let summary = group.summary().unwrap();
    /// let end = summary.ellipse(summary.of_mean, 0.0).minus(group.centroid().unwrap());
    /// assert!((end.cylinder() - summary.of_mean * summary.major).abs() < 1e-12);
    /// ```
    pub fn ellipse(&self, factor: f64, degrees: f64) -> PowerVector<Cornea> {
        // vectors turn by twice an angle
        let unit = PowerVector::at(Cornea, 0.0, factor / 2.0, 0.0).turned(degrees / 2.0);
        let axes = PowerVector { j0: self.major * unit.j0, j45: self.minor * unit.j45, ..unit };
        axes.turned(self.direction / 2.0).plus(PowerVector::at(Cornea, 0.0, self.x / 2.0, self.y / 2.0))
    }
}

/// Whether a centroid differs from zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AgainstZero {
    /// Hotelling's T2.
    pub t2: f64,
    /// How often chance alone would give as large a one, 0 to 1.
    pub p: f64,
}

impl Group {
    /// A group of no eyes.
    pub const EMPTY: Group = Group { n: 0.0, x: 0.0, y: 0.0, xx: 0.0, xy: 0.0, yy: 0.0 };

    /// Takes in one more vector; its mean is not looked at.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{group::Group, plane::Cornea, power_vector::PowerVector};
    /// let mut group = Group::default();
    /// for (j0, j45) in [(0.1, 0.0), (0.2, 0.1), (0.3, -0.1)] {
    ///     group.add(PowerVector::at(Cornea, 0.0, j0, j45));
    /// }
    /// let summary = group.summary().unwrap();
    /// assert!((summary.x - 0.4).abs() < 1e-12 && summary.y.abs() < 1e-12);
    /// ```
    pub fn add(&mut self, vector: PowerVector<Cornea>) {
        let (x, y) = (2.0 * vector.j0, 2.0 * vector.j45);
        self.n += 1.0;
        let (from_x, from_y) = (x - self.x, y - self.y);
        self.x += from_x / self.n;
        self.y += from_y / self.n;
        self.xx += from_x * (x - self.x);
        self.xy += from_x * (y - self.y);
        self.yy += from_y * (y - self.y);
    }

    /// How many eyes it has.
    ///
    /// ```
    /// assert_eq!(ocellus_core::astigmatism::group::Group::default().count(), 0.0);
    /// ```
    pub fn count(&self) -> f64 {
        self.n
    }

    /// The mean of all vectors; none of an empty group.
    ///
    /// ```
    /// assert_eq!(ocellus_core::astigmatism::group::Group::default().centroid(), None);
    /// ```
    pub fn centroid(&self) -> Option<PowerVector<Cornea>> {
        (self.n > 0.0).then(|| PowerVector::at(Cornea, 0.0, self.x / 2.0, self.y / 2.0))
    }

    /// Centroid, scatter, and the factors of both 95 % ellipses; `None` of fewer than three eyes.
    ///
    /// ```text
    /// F(2, m; upper a) = (m/2)(a^(-2/m) - 1)                     two dimensions
    /// ellipse of the mean     sqrt(lambda (n-1)/n      (a^(-2/(n-2)) - 1))
    /// ellipse of single eyes  sqrt(lambda (n-1)(n+1)/n (a^(-2/(n-2)) - 1))
    /// ```
    ///
    /// They hold where the vectors are normal about one centre.
    ///
    /// ```
    /// assert_eq!(ocellus_core::astigmatism::group::Group::default().summary(), None);
    /// ```
    pub fn summary(&self) -> Option<Summary> {
        let Group { n, x, y, .. } = *self;
        if n < 3.0 {
            return None;
        }
        let (xx, xy, yy) = (self.xx / (n - 1.0), self.xy / (n - 1.0), self.yy / (n - 1.0));
        let (middle, half) = ((xx + yy) / 2.0, sqrt(square((xx - yy) / 2.0) + square(xy)));
        let wide = pow(0.05, -2.0 / (n - 2.0)) - 1.0;
        Some(Summary {
            n,
            x,
            y,
            sd_x: sqrt(xx.max(0.0)),
            sd_y: sqrt(yy.max(0.0)),
            cov: xy,
            major: sqrt(middle + half),
            minor: sqrt((middle - half).max(0.0)),
            direction: half_direction(2.0 * xy, xx - yy)?.deg(),
            of_mean: sqrt((n - 1.0) / n * wide),
            of_eyes: sqrt((n - 1.0) * (n + 1.0) / n * wide),
        })
    }

    /// Hotelling's test of the centroid against zero; `None` of fewer than three eyes, or where they lie on a line.
    ///
    /// ```text
    /// T2 = n c' S^-1 c          p = (1 + T2/(n-1))^(-(n-2)/2)
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{group::Group, plane::Cornea, power_vector::PowerVector};
    /// let mut group = Group::default();
    /// for (j0, j45) in [(0.1, 0.0), (-0.1, 0.1), (0.0, -0.1)] {
    ///     group.add(PowerVector::at(Cornea, 0.0, j0, j45));
    /// }
    /// assert!(group.against_zero().unwrap().p > 0.99);
    /// ```
    pub fn against_zero(&self) -> Option<AgainstZero> {
        let Group { n, x, y, xx, xy, yy } = *self;
        let volume = xx * yy - square(xy);
        if n < 3.0 || volume <= 1e-12 * xx * yy {
            return None;
        }
        let t2 = n * (n - 1.0) * (square(x) * yy - 2.0 * x * y * xy + square(y) * xx) / volume;
        Some(AgainstZero { t2, p: pow(1.0 + t2 / (n - 1.0), (2.0 - n) / 2.0) })
    }
}
