//! Pressure, air, water and what flows through tubes.

constants! {
    /// Standard gravity.
    G "g" "m/s2" = 9.80665, Sp811 Two;
    /// Pascals in a millimetre of mercury.
    MMHG "mmHg" "Pa" = 133.322387415, Sp811 Two;
    /// Pascals in an atmosphere.
    ATM "atm" "Pa" = 101325, Sp811 Two;
    /// Torr in an atmosphere.
    TORR_PER_ATM "torr in an atmosphere" "1" = 760, Sp811 Two;
    /// Pascals in a conventional centimetre of water.
    CMH2O "cmH2O" "Pa" = 98.0665, Sp811 Two;
    /// Pascals in a conventional inch of mercury.
    INHG "inHg" "Pa" = 3386.388640, Sp811 Two;
    /// Pascals in a conventional inch of water.
    INH2O "inH2O" "Pa" = 249.08891, Sp811 Two;
    /// Pascals in a pound per square inch.
    PSI "psi" "Pa" = 6894.757293168, Sp811 Two;
    /// Pressure at sea level.
    AIR_P0 "P0" "Pa" = 101325, Iso2533 Two;
    /// Temperature at sea level.
    AIR_T0 "T0" "K" = 288.15, Iso2533 Two;
    /// How temperature falls with height.
    AIR_L "L" "K/m" = 0.0065, Iso2533 Two;
    /// Molar mass of air.
    AIR_M "M" "kg/mol" = 0.0289644, Iso2533 Two;
    /// Gas constant of that standard.
    AIR_R "R" "J/(mol K)" = 8.31432, Iso2533 Two;
    /// Radius of the earth in that standard.
    EARTH "r0" "m" = 6356766, Iso2533 Two;
    /// Celsius zero.
    CELSIUS "0 C" "K" = 273.15, Sp811 Two;
    /// IF97 region 4, n1.
    IF97_N1 "n1" "1" = 1167.0521452767, Iapws97 Two;
    /// n2.
    IF97_N2 "n2" "1" = -724213.16703206, Iapws97 Two;
    /// n3.
    IF97_N3 "n3" "1" = -17.073846940092, Iapws97 Two;
    /// n4.
    IF97_N4 "n4" "1" = 12020.824702470, Iapws97 Two;
    /// n5.
    IF97_N5 "n5" "1" = -3232555.0322333, Iapws97 Two;
    /// n6.
    IF97_N6 "n6" "1" = 14.915108613530, Iapws97 Two;
    /// n7.
    IF97_N7 "n7" "1" = -4823.2657361591, Iapws97 Two;
    /// n8.
    IF97_N8 "n8" "1" = 405113.40542057, Iapws97 Two;
    /// n9.
    IF97_N9 "n9" "1" = -0.23855557567849, Iapws97 Two;
    /// n10.
    IF97_N10 "n10" "1" = 650.17534844798, Iapws97 Two;
    /// Magnus' formula, pressure at 0 C.
    MAGNUS_P0 "Magnus e0" "hPa" = 6.112, Wmo8 Two;
    /// Its factor.
    MAGNUS_A "Magnus a" "1" = 17.62, Wmo8 Two;
    /// Its temperature.
    MAGNUS_B "Magnus b" "C" = 243.12, Wmo8 Two;
    /// Density of water, a5.
    TANAKA_A5 "a5" "kg/m3" = 999.974950, Tanaka2001 Two;
    /// a1, with its sign.
    TANAKA_A1 "a1" "C" = -3.983035, Tanaka2001 Two;
    /// a2.
    TANAKA_A2 "a2" "C" = 301.797, Tanaka2001 Two;
    /// a3.
    TANAKA_A3 "a3" "C2" = 522528.9, Tanaka2001 Two;
    /// a4.
    TANAKA_A4 "a4" "C" = 69.34881, Tanaka2001 Two;

    /// Temperature by which that of water is divided in its viscosity.
    VISCOSITY_T "T*" "K" = 300, IapwsViscosity Memory;
    /// First coefficient.
    VISCOSITY_A1 "mu a1" "uPa s" = 280.68, IapwsViscosity Memory;
    /// First exponent.
    VISCOSITY_B1 "mu b1" "1" = -1.9, IapwsViscosity Memory;
    /// Second coefficient.
    VISCOSITY_A2 "mu a2" "uPa s" = 511.45, IapwsViscosity Memory;
    /// Second exponent.
    VISCOSITY_B2 "mu b2" "1" = -7.7, IapwsViscosity Memory;
    /// Third coefficient.
    VISCOSITY_A3 "mu a3" "uPa s" = 61.131, IapwsViscosity Memory;
    /// Third exponent.
    VISCOSITY_B3 "mu b3" "1" = -19.6, IapwsViscosity Memory;
    /// Fourth coefficient.
    VISCOSITY_A4 "mu a4" "uPa s" = 0.45903, IapwsViscosity Memory;
    /// Fourth exponent.
    VISCOSITY_B4 "mu b4" "1" = -40, IapwsViscosity Memory;
    /// Loss of a laminar jet and its entrance, in kinetic pressures: profile 2, entrance 0.2 to 0.4.
    KINETIC "K" "1" = 2.3, Here Chosen;
    /// Entrance length over Reynolds number and bore.
    ENTRANCE "entrance" "1" = 0.056, NoSource Memory;
    /// How near to its steady value a pressure has recovered.
    RECOVERED "recovered within" "mmHg" = 1, Here Chosen;
    /// How near to it a pressure that only falls has come to rest.
    STILL "still within" "mmHg" = 0.05, Here Chosen;
}
