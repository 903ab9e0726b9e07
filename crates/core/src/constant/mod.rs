//! Every number a paper or a standard gives: its name, unit, digits as printed, source and mark.
//!
//! A constant is used by [`Constant::get`]. In a build with `--cfg ocellus_perturb` one constant at a time can be
//! shifted by a unit in its last printed digit, to prove that some check against the outside would notice.

#[macro_use]
pub mod printed;

pub mod certainty;
pub mod fluids;
pub mod laser;
pub mod lens;
pub mod long_eye;
pub mod off_axis;
pub mod optics;
pub mod posterior;
pub mod table_side;

pub use printed::Constant;
#[cfg(ocellus_perturb)]
pub use printed::perturb;

/// Every constant there is.
///
/// ```
/// assert!(ocellus_core::constant::all().any(|c| c.name == "SRK/T c0"));
/// ```
pub fn all() -> impl Iterator<Item = &'static Constant> {
    [
        optics::ALL,
        lens::ALL,
        long_eye::ALL,
        laser::ALL,
        certainty::ALL,
        posterior::ALL,
        off_axis::ALL,
        table_side::ALL,
        fluids::ALL,
    ]
    .into_iter()
    .flatten()
    .copied()
}
