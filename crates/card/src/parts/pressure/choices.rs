//! Entries that are one of a few words.

ocellus_core::choices! {
    /// Where the density of the fluid is taken from.
    FluidFrom {
        /// From its own entry.
        Entered "entered",
        /// From water at its temperature.
        Water "water",
    }
}
