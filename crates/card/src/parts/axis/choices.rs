//! Entries that are one of a few words.

ocellus_core::choices! {
    /// How the patient was when the axis was marked.
    Marked {
        /// Upright.
        Upright "upright",
        /// Lying down, without a mark made upright.
        Lying "lying",
    }
}
