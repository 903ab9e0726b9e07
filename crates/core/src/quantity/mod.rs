//! Quantities: each a number in the unit the user typed, with its meaning in the type, and the range that is accepted.
//!
//! A quantity is made only by its checked constructor, so one that exists lies in its bounds. It keeps the typed unit because
//! turning millimetres into metres and back changes the last bit of many values. Bounds are of what can be typed at all, kept
//! wide; what is merely unusual is another question.

mod bounds;

pub(crate) use bounds::UNITS;
pub use bounds::*;
