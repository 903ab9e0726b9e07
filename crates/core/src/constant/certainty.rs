//! How far a label may be off, what follows for an interval, and what the first eye shows.

constants! {
    /// Label tolerance of weak lenses.
    LABEL_WEAK "label tolerance to 15 D" "D" = 0.3, Iso11979 Read;
    /// Label tolerance of usual lenses.
    LABEL_USUAL "label tolerance to 25 D" "D" = 0.4, Iso11979 Read;
    /// Label tolerance of strong lenses.
    LABEL_STRONG "label tolerance to 30 D" "D" = 0.5, Iso11979 Read;
    /// Label tolerance of the strongest lenses.
    LABEL_STRONGEST "label tolerance above 30 D" "D" = 1.0, Iso11979 Read;
    /// Where weak ends.
    LABEL_EDGE_WEAK "label tolerance, first edge" "D" = 15, Iso11979 Memory;
    /// Where usual ends.
    LABEL_EDGE_USUAL "label tolerance, second edge" "D" = 25, Iso11979 Memory;
    /// Where strong ends.
    LABEL_EDGE_STRONG "label tolerance, third edge" "D" = 30, Iso11979 Memory;
    /// Half of a normal distribution lies within so many SDs.
    NORMAL_50 "SDs around half" "1" = 0.6744897502, Identity Two;
    /// 95 % of a normal distribution lie within so many SDs.
    NORMAL_95 "SDs around 95 %" "1" = 1.95996398454, Identity Two;
    /// How much of the first eye's error is expected of the second.
    SECOND_EYE "part of the first eye's error" "1" = 0.5, Covert2010 Memory;
}
