//! What became of a line.

use ocellus_core::field::Field;

/// What became of a line.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// Nothing to do.
    Nothing,
    /// So many entries were made, from this field on.
    Entered(Field, u8),
    /// It was not understood, and nothing of it was used.
    Refused,
    /// It was answered.
    Told,
    /// Two identifiers are to be asked for.
    Identify,
}
