//! The second eye: part of the first eye's error is expected of it too.

use crate::constant::certainty::SECOND_EYE;

/// How far the first eye ended from what was predicted for it, and the part of that expected of the second, D.
///
/// ```text
/// error = refraction - predicted          expected = error/2
/// ```
///
/// Source: Covert 2010 (memory).
///
/// ```
/// use ocellus_core::{lens::second_eye::expected, quantity::Refraction};
/// let (left, predicted) = (Refraction::from_d(0.75)?, Refraction::from_d(-0.25)?);
/// assert_eq!(expected(left, predicted), (1.0, 0.5));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn expected(refraction: crate::quantity::Refraction, predicted: crate::quantity::Refraction) -> (f64, f64) {
    let error = refraction.d() - predicted.d();
    (error, SECOND_EYE.get() * error)
}
