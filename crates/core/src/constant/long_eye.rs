//! Straight lines that shorten a long axial length, a set a publication and a line a method.

constants! {
    /// Holladay 1, first set of 2011: slope.
    HOLLADAY1_FIRST_1 "first 2011, Holladay 1 slope" "1" = 0.8289, Wang2011 Memory;
    /// And constant.
    HOLLADAY1_FIRST_0 "first 2011, Holladay 1 constant" "mm" = 4.2663, Wang2011 Memory;
    /// Haigis, first set of 2011: slope.
    HAIGIS_FIRST_1 "first 2011, Haigis slope" "1" = 0.9286, Wang2011 Memory;
    /// And constant.
    HAIGIS_FIRST_0 "first 2011, Haigis constant" "mm" = 1.562, Wang2011 Memory;
    /// SRK/T, first set of 2011: slope.
    SRKT_FIRST_1 "first 2011, SRK/T slope" "1" = 0.8544, Wang2011 Memory;
    /// And constant.
    SRKT_FIRST_0 "first 2011, SRK/T constant" "mm" = 3.7222, Wang2011 Memory;
    /// Hoffer Q, first set of 2011: slope.
    HOFFERQ_FIRST_1 "first 2011, Hoffer Q slope" "1" = 0.8530, Wang2011 Memory;
    /// And constant.
    HOFFERQ_FIRST_0 "first 2011, Hoffer Q constant" "mm" = 3.5794, Wang2011 Memory;

    /// Holladay 1, second set of 2011: slope.
    HOLLADAY1_SECOND_1 "second 2011, Holladay 1 slope" "1" = 0.8814, Wang2011 Memory;
    /// And constant.
    HOLLADAY1_SECOND_0 "second 2011, Holladay 1 constant" "mm" = 2.8701, Wang2011 Memory;
    /// Haigis, second set of 2011: slope.
    HAIGIS_SECOND_1 "second 2011, Haigis slope" "1" = 0.9621, Wang2011 Memory;
    /// And constant.
    HAIGIS_SECOND_0 "second 2011, Haigis constant" "mm" = 0.6763, Wang2011 Memory;
    /// SRK/T, second set of 2011: slope.
    SRKT_SECOND_1 "second 2011, SRK/T slope" "1" = 0.8981, Wang2011 Memory;
    /// And constant.
    SRKT_SECOND_0 "second 2011, SRK/T constant" "mm" = 2.5637, Wang2011 Memory;
    /// Hoffer Q, second set of 2011: slope.
    HOFFERQ_SECOND_1 "second 2011, Hoffer Q slope" "1" = 0.8776, Wang2011 Memory;
    /// And constant.
    HOFFERQ_SECOND_0 "second 2011, Hoffer Q constant" "mm" = 2.9269, Wang2011 Memory;

    /// Holladay 1, 2018: slope.
    HOLLADAY1_2018_1 "2018, Holladay 1 slope" "1" = 0.817, Wang2018 Memory;
    /// And constant.
    HOLLADAY1_2018_0 "2018, Holladay 1 constant" "mm" = 4.7013, Wang2018 Memory;
    /// SRK/T, 2018: slope.
    SRKT_2018_1 "2018, SRK/T slope" "1" = 0.8453, Wang2018 Memory;
    /// And constant.
    SRKT_2018_0 "2018, SRK/T constant" "mm" = 4.0773, Wang2018 Memory;

    /// Both sets of 2011 begin above this length.
    ABOVE_2011 "2011, above" "mm" = 25.0, Wang2011 Memory;
    /// Holladay 1's line of 2018 begins above this length.
    HOLLADAY1_2018_ABOVE "2018, Holladay 1 above" "mm" = 26.5, Wang2018 Memory;
    /// SRK/T's line of 2018 begins above this length.
    SRKT_2018_ABOVE "2018, SRK/T above" "mm" = 27.0, Wang2018 Memory;
}
