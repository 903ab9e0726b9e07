//! The host program.
