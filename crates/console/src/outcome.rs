//! What became of a line.

use ocellus_card::id::EntryId;

/// What became of a line.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// Nothing to do.
    Nothing,
    /// So many entries were made, from this one on.
    Entered(EntryId, u8),
    /// It was not understood, and nothing of it was used.
    Refused,
    /// It was answered.
    Answered,
    /// Two identifiers are to be asked for.
    Identify,
}
