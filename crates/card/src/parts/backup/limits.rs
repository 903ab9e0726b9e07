//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A backup power further than this from what the methods ask for.
    BACKUP_FAR "backup power off by" "D" = 1, Here Chosen;
    /// Less in the sulcus by a rule of thumb, at least.
    THUMB_LESS "sulcus, rule of thumb, least" "D" = 0.5, NoSource CommonPractice;
    /// And at most.
    THUMB_MUCH "sulcus, rule of thumb, most" "D" = 1.0, NoSource CommonPractice;
}
