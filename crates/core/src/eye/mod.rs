//! The eye as measured, and whether the measurement can be believed.

pub mod checks;
pub mod cornea;
pub mod misread;
