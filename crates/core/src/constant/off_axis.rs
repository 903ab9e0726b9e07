//! Lenses off their axis: marking, placing, lying down.

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
}
