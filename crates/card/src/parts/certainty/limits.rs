//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Scatter of one axial length in one eye.
    SD_AL "usual SD of AL" "mm" = 0.0177, Repeat2025 Read;
    /// Scatter of one mean corneal power in one eye.
    SD_K "usual SD of K" "D" = 0.18, Repeat2025 Read;
    /// Scatter of one chamber depth in one eye.
    SD_ACD "usual SD of ACD" "mm" = 0.0247, Repeat2025 Read;
}
