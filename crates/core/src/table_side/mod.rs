//! At the table: capsule, wound, where the lens lies.

pub mod rhexis;
pub mod wound;
