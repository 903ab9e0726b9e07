//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Reynolds number above which flow in a tube is not laminar.
    LAMINAR "Re" "1" = 2300, NoSource CommonPractice;
}
