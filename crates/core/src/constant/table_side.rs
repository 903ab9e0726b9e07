//! Rhexis and wound.

constants! {
    /// A ring at the capsule seen through the cornea, mean of 40 eyes.
    SEEN_MEAN "seen over true, mean" "%" = 115.9, RhexisSeen Read;
    /// The same in a shallow, flat eye.
    SEEN_LEAST "seen over true, least" "%" = 110, RhexisSeen Read;
    /// The same in a deep, steep eye.
    SEEN_MOST "seen over true, most" "%" = 120, RhexisSeen Read;
}
