//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A lens by refraction further from what the methods ask for.
    SECOND_APART "lens by refraction off by" "D" = 2, Here Chosen;
}
