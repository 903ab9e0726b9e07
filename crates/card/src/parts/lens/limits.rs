//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Refractions of the two eyes further apart.
    ANISOMETROPIA "anisometropia above" "D" = 2, NoSource CommonPractice;
    /// Above this length adjustments for long eyes begin.
    LONG_EYE_FROM "long eye above" "mm" = 25.0, Wang2011 Memory;
    /// SRK/T that departs from T2 by more leaves the spread.
    DEPARTS "SRK/T departs from T2 by" "D" = 0.5, Here Chosen;
    /// Exact powers that differ by more than this are a wide spread.
    SPREAD_WIDE "spread of powers above" "D" = 1, Here Chosen;
    /// A lens that leaves the eye further from its target than this.
    FAR_FROM_TARGET "lens from target by" "D" = 0.5, Here Chosen;
    /// Eyes shorter than this are hardly in any series.
    VERY_SHORT "very short eye below" "mm" = 20.0, Here Chosen;
    /// Constants of one lens that mean A-constants further apart.
    CONSTANTS_APART "constants apart by, as A" "1" = 1, Here Chosen;
    /// Targets below this are unusual.
    TARGET_LEAST "target below" "D" = -3, Here Chosen;
    /// Targets above this are unusual.
    TARGET_MOST "target above" "D" = 0.25, Here Chosen;
}
