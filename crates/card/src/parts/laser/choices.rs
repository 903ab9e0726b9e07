//! Entries that are one of a few words.

ocellus_core::choices! {
    /// Where an estimate of the corneal power after laser comes from.
    KAfterFrom {
        /// From the power before and the change of refraction, entered or computed here.
        History "history",
        /// From the refraction over a hard contact lens.
        ContactLens "contact_lens",
        /// From both surfaces of the cornea, given as the keratometric power that would mean the same.
        BothSurfaces "both_surfaces",
        /// What a keratometer reads: too steep after laser for short sight, and refused.
        Keratometer "keratometer",
    }
}
