//! Entries that are one of a few words.

ocellus_core::choices! {
    /// Where the viscosity of the fluid is taken from.
    ViscosityFrom {
        /// From water at its temperature.
        Water "water",
        /// From its own entry, measured at the shear of this tube.
        AtShear "at_shear",
        /// From its own entry, measured at rest.
        ZeroShear "zero_shear",
    }
}
