//! Entries that are one of a few words.

ocellus_core::choices! {
    /// Where the constants of a lens come from.
    ConstantsFrom {
        /// From the surgeon's own or pooled results with this lens and this biometry.
        Optimised "optimised",
        /// From the maker.
        Maker "maker",
    }
    /// How a lens is made.
    LensStyle {
        /// Optic and haptics of one piece.
        OnePiece "one_piece",
        /// Haptics set into the optic.
        ThreePiece "three_piece",
    }
}
