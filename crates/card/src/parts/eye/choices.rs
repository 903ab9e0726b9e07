//! Entries that are one of a few words.

ocellus_core::choices! {
    /// What the keratometry is: the word "K" means either.
    KKind {
        /// Front surface, turned into a power by the keratometric index.
        Keratometric "keratometric",
        /// A net power of both surfaces: refused by the methods, which expect the other.
        Total "total",
    }
    /// Where the anterior chamber depth starts.
    AcdFrom {
        /// From the front of the cornea.
        Epithelium "epithelium",
        /// From the back of the cornea.
        Endothelium "endothelium",
    }
    /// How the axial length was measured.
    AlMethod {
        /// By light.
        Optical "optical",
        /// By ultrasound through a water bath.
        Immersion "immersion",
        /// By ultrasound with the probe on the cornea.
        Contact "contact",
    }
    /// What was in the eye when it was measured.
    EyeState {
        /// The natural lens.
        Phakic "phakic",
        /// An artificial lens.
        Pseudophakic "pseudophakic",
        /// No lens.
        Aphakic "aphakic",
        /// Silicone oil in place of the vitreous.
        SiliconeOil "silicone_oil",
    }
    /// What was done to, or is wrong with, the cornea.
    PreviousSurgery {
        /// Nothing: asked, and answered.
        None "none",
        /// Laser for short sight.
        MyopicLaser "myopic_laser",
        /// Laser for long sight.
        HyperopicLaser "hyperopic_laser",
        /// Radial cuts.
        RadialCuts "radial_cuts",
        /// A corneal graft.
        Graft "graft",
        /// Keratoconus.
        Keratoconus "keratoconus",
        /// Not known.
        Unknown "unknown",
    }
    /// How good the biometer says its measurement is.
    Quality {
        /// No doubt was raised.
        Good "good",
        /// A doubt was raised.
        Reduced "reduced",
    }
    /// Contact lenses before biometry.
    ContactLens {
        /// The patient wears none.
        NotWorn "not_worn",
        /// They were left out as long as local rules ask.
        LeftOut "left_out",
        /// They were worn up to the measurement.
        Worn "worn",
    }
}
