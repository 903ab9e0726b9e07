//! The host program.
pub mod card;
pub mod text;
