//! Entries that are one of a few words.

ocellus_core::choices! {
    /// What the patient and the surgeon agreed the eye shall see without spectacles.
    TargetFor {
        /// Across the room and further.
        Distance "distance",
        /// A desk.
        Intermediate "intermediate",
        /// A book.
        Near "near",
    }
    /// Why a lens is computed from a refraction.
    SecondFor {
        /// A second lens before the one in the eye.
        Added "added",
        /// Another lens in the place of the one in the eye.
        Exchange "exchange",
        /// A lens into an eye that has none.
        Aphakic "aphakic",
    }
    /// Where that lens goes.
    SecondPlace {
        /// Into the bag.
        Bag "bag",
        /// Into the sulcus.
        Sulcus "sulcus",
    }
}
