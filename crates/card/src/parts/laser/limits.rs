//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// An estimate of K after laser further from what its history says.
    K_AFTER_APART "K after from its history by" "D" = 1, Here Chosen;
    /// A K after laser further from today's keratometry.
    K_AFTER_TODAY "K after from today's K by" "D" = 2, Here Chosen;
}
