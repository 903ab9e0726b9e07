//! Why there is no number.

use crate::bounds::Bounds;

/// Why there is no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// It is not a finite number.
    NotANumber,
    /// The value lies outside what is accepted.
    Outside(f64, &'static Bounds),
    /// The equations have no answer here.
    NoSolution,
}
