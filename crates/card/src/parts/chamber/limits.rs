//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Difference of pressures at no flow, by readings and by the column, that is reported.
    READINGS_APART "readings apart" "mmHg" = 5, Here Chosen;
}
