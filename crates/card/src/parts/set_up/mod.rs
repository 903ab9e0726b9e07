//! A set-up of fluids, which needs no eye: what a card without one begins with.

pub mod table;
