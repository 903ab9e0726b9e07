//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Difference of pressures of the air, measured and by the altitude, that is reported: weather makes less.
    STATION_FAR "station far" "mmHg" = 40, NoSource CommonPractice;
    /// Pressure at the eye above which the optic nerve is at risk.
    HEAD_HIGH "head above" "mmHg" = 80, NoSource CommonPractice;
}
