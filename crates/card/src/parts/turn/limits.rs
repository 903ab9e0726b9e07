//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A lens that should correct further from what the cornea has.
    TURN_DISAGREES "refraction, lens and cornea off by" "D" = 1, Here Chosen;
    /// A turn of less is printed as none.
    TURN_LITTLE "turn of less than" "deg" = 0.5, Here Chosen;
}
