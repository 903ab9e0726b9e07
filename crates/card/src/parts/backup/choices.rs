//! Entries that are one of a few words.

ocellus_core::choices! {
    /// Where the backup lens would go.
    BackupPlace {
        /// Lens and haptics in the sulcus.
        Sulcus "sulcus",
        /// Haptics in the sulcus, optic held behind the rhexis.
        Captured "captured",
    }
}
