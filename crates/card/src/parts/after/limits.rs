//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A correction wanted below this makes indices that are divided by it unsteady.
    SMALL_TARGET "small target below" "D" = 1.0, Indices2001 Read;
}
