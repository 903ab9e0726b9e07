//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Reynolds number above which flow in a tube is not laminar.
    LAMINAR "Re" "1" = 2300, NoSource CommonPractice;
}

/// Seconds or mmHg beyond any bench: nobody would read them.
pub(super) const TOO_MUCH: f64 = 1e7;
