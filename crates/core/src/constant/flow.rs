//! Flow through tubes and needles: the viscosity of water, what a short tube loses besides, the sizes of needles.

constants! {
    /// Temperature that the viscosity of water is reckoned by.
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
    /// Reynolds number above which flow in a tube is not laminar.
    LAMINAR "Re" "1" = 2300, NoSource CommonPractice;

    /// Volume of the anterior chamber in 92 eyes with a cataract, mean; its SD is 38.2.
    CHAMBER_VOLUME "chamber" "uL" = 139.8, ChamberVolume Read;
    /// Difference of pressures of the air, measured and by the altitude, that is told: weather makes less.
    STATION_FAR "station far" "mmHg" = 40, NoSource CommonPractice;
    /// Difference of pressures at no flow, by readings and by the column, that is told.
    READINGS_APART "readings apart" "mmHg" = 5, Here Chosen;
    /// How near to its steady value a pressure has recovered.
    RECOVERED "recovered within" "mmHg" = 1, Here Chosen;
    /// How near to it a pressure that only falls has come to rest.
    STILL "still within" "mmHg" = 0.05, Here Chosen;
}
