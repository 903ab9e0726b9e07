//! At the table: capsule and wound.

pub mod rhexis;
pub mod wound;
