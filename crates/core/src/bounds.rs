//! An accepted range.

use crate::source::Source;

/// An accepted range, both ends included: of what can be given at all, kept wide.
#[derive(Debug, PartialEq)]
pub struct Bounds {
    /// Of what.
    pub name: &'static str,
    /// Its unit as printed; "1" for a pure number.
    pub unit: &'static str,
    /// The least value accepted.
    pub min: f64,
    /// The largest value accepted.
    pub max: f64,
    /// Why the range ends there.
    pub why: &'static str,
    /// Where that comes from.
    pub source: Source,
}
