//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A back of the cornea with more astigmatism: four SDs above the mean.
    BACK_FAR "back of the cornea above" "D" = 0.9, BackOfCornea2020 Chosen;
    /// A back that is steep sideways with more than this is worth a second look.
    BACK_SIDEWAYS "back of the cornea, steep sideways, above" "D" = 0.1, BackOfCornea2020 Chosen;
    /// Further from a meridian than this is nearer to the one across.
    ACROSS "across a meridian beyond" "deg" = 45, Identity Two;
    /// A steep meridian this near to the edge of a class is as well in the other.
    NEAR_EDGE "near the edge of a class" "deg" = 5, Here Chosen;
}
