//! An accepted range.

/// An accepted range, both ends included: of what can be given at all, kept wide.
#[derive(Debug, PartialEq)]
pub struct Bounds {
    /// Of what.
    #[cfg(feature = "names")]
    pub name: &'static str,
    /// Its unit as printed; "1" for a pure number.
    pub unit: &'static str,
    /// The least value accepted.
    pub min: f64,
    /// The largest value accepted.
    pub max: f64,
    /// Why the range ends there.
    pub why: ocellus_text::Text,
    /// Where that comes from.
    #[cfg(feature = "names")]
    pub source: crate::source::Source,
}
