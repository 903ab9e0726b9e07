//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Volume of the anterior chamber in 92 eyes with a cataract, mean; its SD is 38.2.
    CHAMBER_VOLUME "chamber" "uL" = 139.8, ChamberVolume Read;
}
