//! Entries that are one of a few words.

ocellus_core::choices! {
    /// What is set on a pump.
    PumpKind {
        /// The flow: vacuum follows.
        Flow "flow",
        /// The vacuum: flow follows.
        Vacuum "vacuum",
    }
}
