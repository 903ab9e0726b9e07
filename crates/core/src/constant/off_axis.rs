//! Lenses off their axis: marking, lying down, what is noise and what is not.

constants! {
    /// The rule of thumb.
    RULE_PER_DEG "left per degree, rule of thumb" "%" = 3.3, NoSource CommonPractice;
    /// Mean error of marking and placing together.
    MARKING_MEAN "marking and placing, mean error" "deg" = 4.9, Marking2011 Read;
    /// Its SD.
    MARKING_SD "marking and placing, its SD" "deg" = 2.1, Marking2011 Read;
    /// Mean turn of an eye that lies down.
    LYING_MEAN "turn of the eye lying down, mean" "deg" = 1.43, LyingDown2015 Read;
    /// Its SD.
    LYING_SD "turn of the eye lying down, SD" "deg" = 3.41, LyingDown2015 Read;
    /// A correction wanted below this makes indices that are divided by it unsteady.
    SMALL_TARGET "small target below" "D" = 1.0, Indices2001 Read;
    /// A back of the cornea with more astigmatism: four SDs above the mean.
    BACK_FAR "back of the cornea above" "D" = 0.9, BackOfCornea2020 Chosen;
    /// A back that is steep sideways with more than this is worth a second look.
    BACK_SIDEWAYS "back of the cornea, steep sideways, above" "D" = 0.1, BackOfCornea2020 Chosen;
    /// A lens that should correct further from what the cornea has.
    TURN_DISAGREES "refraction, lens and cornea off by" "D" = 1, Here Chosen;
    /// Further from a meridian than this is nearer to the one across.
    ACROSS "across a meridian beyond" "deg" = 45, Identity Two;
    /// A turn of less is printed as none.
    TURN_LITTLE "turn of less than" "deg" = 0.5, Here Chosen;
    /// A steep meridian this near to the edge of a class is as well in the other.
    NEAR_EDGE "near the edge of a class" "deg" = 5, Here Chosen;
}
