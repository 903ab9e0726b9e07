//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A first eye further from its prediction.
    FIRST_EYE_FAR "first eye off by" "D" = 1, Here Chosen;
}
