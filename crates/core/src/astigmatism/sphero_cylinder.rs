//! Refractions as they are written: sphere, cylinder, axis.

use crate::astigmatism::plane::{Cornea, Spectacles};
use crate::astigmatism::{NO_CYLINDER, meridian};
use crate::error::Error;
use crate::optics::vertex::{to_cornea, to_spectacles};
use crate::quantity::{Axis, Vertex};

/// Sphere, cylinder of either sign, and its axis, at a plane; a cylinder of nothing has no axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpheroCylinder<P> {
    /// Power along the axis, D.
    pub sphere: f64,
    /// What is added across the axis, D.
    pub cylinder: f64,
    /// The axis.
    pub axis: Option<Axis>,
    /// Where it is meant.
    pub plane: P,
}

impl<P: Copy> SpheroCylinder<P> {
    /// From its three parts, at a plane; without an axis there is no cylinder, and without a cylinder no axis.
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Spectacles, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::Axis;
    /// assert_eq!(SpheroCylinder::at(Spectacles, 1.0, 0.0, Some(Axis::from_deg(90.0)?)).axis, None);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn at(plane: P, sphere: f64, cylinder: f64, axis: Option<Axis>) -> SpheroCylinder<P> {
        let axis = axis.filter(|_| cylinder.abs() > NO_CYLINDER);
        SpheroCylinder { sphere, cylinder: if axis.is_some() { cylinder } else { 0.0 }, axis, plane }
    }

    /// The same power with the cylinder of the other sign.
    ///
    /// ```text
    /// S' = S + C,  C' = -C,  A' = A + 90
    /// ```
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Spectacles, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::Axis;
    /// let rx = SpheroCylinder::at(Spectacles, 0.5, -2.0, Some(Axis::from_deg(30.0)?)).transposed();
    /// assert_eq!((rx.sphere, rx.cylinder, rx.axis.unwrap().deg()), (-1.5, 2.0, 120.0));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn transposed(self) -> SpheroCylinder<P> {
        let axis = self.axis.and_then(|a| meridian(a.deg() + 90.0));
        SpheroCylinder { sphere: self.sphere + self.cylinder, cylinder: 0.0 - self.cylinder, axis, ..self }
    }

    fn moved<Q: Copy>(self, to: Q, change: impl Fn(f64) -> Result<f64, Error>) -> Result<SpheroCylinder<Q>, Error> {
        let (along, across) = (change(self.sphere)?, change(self.sphere + self.cylinder)?);
        Ok(SpheroCylinder::at(to, along, across - along, self.axis))
    }
}

impl SpheroCylinder<Spectacles> {
    /// From the spectacle plane to the cornea, each principal meridian by itself, the axis unchanged.
    ///
    /// # Errors
    /// As [`to_cornea`].
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Spectacles, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::*;
    /// let rx = SpheroCylinder::at(Spectacles, -10.0, -2.0, Some(Axis::from_deg(180.0)?));
    /// let at_cornea = rx.to_cornea(Vertex::from_mm(12.0)?)?;
    /// assert!((at_cornea.sphere - -8.9286).abs() < 5e-5 && (at_cornea.cylinder - -1.5609).abs() < 5e-5);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn to_cornea(self, vertex: Vertex) -> Result<SpheroCylinder<Cornea>, Error> {
        self.moved(Cornea, |power| to_cornea(power, vertex))
    }
}

impl SpheroCylinder<Cornea> {
    /// From the cornea to the spectacle plane.
    ///
    /// # Errors
    /// As [`to_spectacles`].
    ///
    /// ```
    /// use ocellus_core::astigmatism::{plane::Spectacles, sphero_cylinder::SpheroCylinder};
    /// use ocellus_core::quantity::*;
    /// let (rx, vertex) = (SpheroCylinder::at(Spectacles, -10.0, -2.0, Some(Axis::from_deg(15.0)?)), Vertex::from_mm(12.0)?);
    /// let back = rx.to_cornea(vertex)?.to_spectacles(vertex)?;
    /// assert!((back.sphere - rx.sphere).abs() < 1e-12 && (back.cylinder - rx.cylinder).abs() < 1e-12);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn to_spectacles(self, vertex: Vertex) -> Result<SpheroCylinder<Spectacles>, Error> {
        self.moved(Spectacles, |power| to_spectacles(power, vertex))
    }
}
