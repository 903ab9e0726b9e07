//! Words that any part may ask for.

ocellus_core::choices! {
    /// No or yes.
    YesNo {
        /// No.
        No "no",
        /// Yes.
        Yes "yes",
    }
}
