//! The host program.
pub mod batch;
pub mod card;
pub mod text;
