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
    /// A steep meridian this near to the edge of a class is as well in the other.
    NEAR_EDGE "near the edge of a class" "deg" = 5, Here Chosen;
}
