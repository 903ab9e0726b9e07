//! What the methods for eyes after corneal laser carry in their equations.

constants! {
    /// Shammas-PL: Kc = slope K + constant, after laser for short sight.
    SHAMMAS_MYOPIC_1 "Shammas-PL slope on K, myopic" "1" = 1.14, Shammas2007 Read;
    /// And constant.
    SHAMMAS_MYOPIC_0 "Shammas-PL constant, myopic" "D" = -6.8, Shammas2007 Read;
    /// The same after laser for long sight.
    SHAMMAS_HYPEROPIC_1 "Shammas-PL slope on K, hyperopic" "1" = 1.0457, Shammas2013 Read;
    /// And constant.
    SHAMMAS_HYPEROPIC_0 "Shammas-PL constant, hyperopic" "D" = -1.9538, Shammas2013 Read;
    /// Shammas-PL: pACD from the A-constant, slope.
    SHAMMAS_PACD_1 "Shammas-PL pACD slope on A" "mm" = 0.5835, Shammas2007 Memory;
    /// And constant.
    SHAMMAS_PACD_0 "Shammas-PL pACD constant" "mm" = -64.40, Shammas2007 Memory;
    /// From pACD to the lens position.
    SHAMMAS_POSITION "Shammas-PL position offset" "mm" = 0.05, Shammas2007 Memory;
    /// Shammas-PL: how fast the length in the optics falls behind the measured one.
    SHAMMAS_AL_1 "Shammas-PL slope on AL" "1" = 0.1, Shammas2007 Memory;
    /// From which length on.
    SHAMMAS_AL_0 "Shammas-PL usual AL" "mm" = 23, Shammas2007 Memory;
    /// Shammas-PL: what the power of cornea and refraction is divided by (from index 1.3375 to 4/3).
    SHAMMAS_DIVISOR "Shammas-PL divisor" "1" = 1.0125, Shammas2007 Memory;
    /// Haigis-L: corrected radius, factor of the measured one.
    HAIGIS_L_1 "Haigis-L slope on r" "D/mm" = -5.1625, HaigisL2008 Read;
    /// Haigis-L: constant.
    HAIGIS_L_0 "Haigis-L constant" "D" = 82.2603, HaigisL2008 Read;
    /// Haigis-L: taken off it.
    HAIGIS_L_OFFSET "Haigis-L offset" "D" = 0.35, HaigisL2008 Read;
}
