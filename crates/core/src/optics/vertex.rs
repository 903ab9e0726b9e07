//! Vertexing: a refraction at the spectacles, and the same at the cornea.

use crate::error::Error;
use crate::quantity::Vertex;

/// A refraction at the spectacle plane, as it is at the cornea, D.
///
/// ```text
/// Rc = Rx / (1 - V Rx/1000)
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] when the light would be focused at or before the cornea.
///
/// ```
/// use ocellus_core::{optics::vertex::to_cornea, quantity::Vertex};
/// let rc = to_cornea(-10.0, Vertex::from_mm(12.0)?)?;
/// assert!((rc - -8.9286).abs() < 0.00005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn to_cornea(rx: f64, vertex: Vertex) -> Result<f64, Error> {
    let divisor = 1.0 - vertex.mm() * rx / 1000.0;
    if divisor > 0.0 { Ok(rx / divisor) } else { Err(Error::NoSolution) }
}

/// A refraction at the cornea, as it is at the spectacle plane, D.
///
/// ```text
/// Rx = Rc / (1 + V Rc/1000)
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] when no spectacle lens at that distance does it.
///
/// ```
/// use ocellus_core::{optics::vertex::to_spectacles, quantity::Vertex};
/// let rx = to_spectacles(11.363636363636363, Vertex::from_mm(12.0)?)?;
/// assert!((rx - 10.0).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn to_spectacles(rc: f64, vertex: Vertex) -> Result<f64, Error> {
    let divisor = 1.0 + vertex.mm() * rc / 1000.0;
    if divisor > 0.0 { Ok(rc / divisor) } else { Err(Error::NoSolution) }
}
