//! Indices and planes the eye's optics share.

constants! {
    /// Index of aqueous and vitreous, the n of every vergence formula here.
    N "n" "1" = 1.336, Holladay1988 Two;
    /// Index of the cornea itself.
    INDEX_CORNEA "corneal index" "1" = 1.376, Gullstrand Two;
    /// Index most keratometers assume; 337.5/r is what a method means by "K".
    INDEX_1_3375 "keratometric index" "1" = 1.3375, NoSource CommonPractice;
    /// Index of SRK/T's and T2's corneal power.
    INDEX_SRKT "SRK/T corneal index" "1" = 1.333, SrkT1990 Memory;
    /// Index of Haigis' corneal power.
    INDEX_HAIGIS "Haigis corneal index" "1" = 1.3315, Haigis2004 Memory;
    /// Numerator of Holladay's corneal index 4/3.
    INDEX_HOLLADAY_OVER "Holladay corneal index, numerator" "1" = 4, Holladay1988 Memory;
    /// Denominator of Holladay's corneal index 4/3.
    INDEX_HOLLADAY_UNDER "Holladay corneal index, denominator" "1" = 3, Holladay1988 Memory;
}
