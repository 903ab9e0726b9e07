//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// An incision further than this from a temporal seat.
    SEAT_TEMPORAL "incision from a temporal seat by" "deg" = 60, Here Chosen;
    /// An incision further than this from a superior seat.
    SEAT_SUPERIOR "incision from a superior seat by" "deg" = 100, Here Chosen;
}
