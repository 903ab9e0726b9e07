//! Entries that are one of a few words.

macro_rules! choices {
    ($($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident $word:literal,)+ })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum $name { $($(#[$vdoc])* $variant,)+ }

        impl $name {
            /// The words, in the order of their codes.
            pub const WORDS: &[&str] = &[$($word),+];
            pub(crate) const ALL: &[$name] = &[$($name::$variant),+];

            /// The word that is typed and printed.
            pub fn word(self) -> &'static str {
                Self::WORDS.get(self as usize).copied().unwrap_or("")
            }

            /// The code a draft keeps it as.
            pub const fn code(self) -> f64 {
                self as u8 as f64
            }
        }

        impl crate::field::Quantity for $name {
            fn admitted(value: f64) -> Option<Self> {
                Self::ALL.get(value as usize).copied()
            }

            #[cfg(test)]
            fn is(kind: crate::field::Kind) -> bool {
                matches!(kind, crate::field::Kind::Choice(words) if words == Self::WORDS)
            }
        }
    )*};
}

choices! {
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
    /// Where an estimate of the corneal power after laser comes from.
    KAfterFrom {
        /// From the power before and the change of refraction, entered or computed here.
        History "history",
        /// From the refraction over a hard contact lens.
        ContactLens "contact_lens",
        /// From both surfaces of the cornea, given as the keratometric power that would mean the same.
        BothSurfaces "both_surfaces",
        /// What a keratometer reads: too steep after laser for short sight, and refused.
        Keratometer "keratometer",
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
    /// What the patient and the surgeon agreed the eye shall see without spectacles.
    TargetFor {
        /// Across the room and further.
        Distance "distance",
        /// A desk.
        Intermediate "intermediate",
        /// A book.
        Near "near",
    }
    /// Where the constants of a lens come from.
    ConstantsFrom {
        /// From the surgeon's own or pooled results with this lens and this biometry.
        Optimised "optimised",
        /// From the maker.
        Maker "maker",
    }
    /// How a lens is made.
    LensStyle {
        /// Optic and haptics of one piece.
        OnePiece "one_piece",
        /// Haptics set into the optic.
        ThreePiece "three_piece",
    }
    /// Where the backup lens would go.
    BackupPlace {
        /// Lens and haptics in the sulcus.
        Sulcus "sulcus",
        /// Haptics in the sulcus, optic held behind the rhexis.
        Captured "captured",
    }
    /// Why a lens is computed from a refraction.
    SecondFor {
        /// A second lens before the one in the eye.
        Added "added",
        /// Another lens in the place of the one in the eye.
        Exchange "exchange",
        /// A lens into an eye that has none.
        Aphakic "aphakic",
    }
    /// Where that lens goes.
    SecondPlace {
        /// Into the bag.
        Bag "bag",
        /// Into the sulcus.
        Sulcus "sulcus",
    }
    /// How the patient was when the axis was marked.
    Marked {
        /// Upright.
        Upright "upright",
        /// Lying down, without a mark made upright.
        Lying "lying",
    }
    /// Where the density of the fluid is taken from.
    FluidFrom {
        /// From its own entry.
        Entered "entered",
        /// From water at its temperature.
        Water "water",
    }
    /// What is set on a pump.
    PumpKind {
        /// The flow: vacuum follows.
        Flow "flow",
        /// The vacuum: flow follows.
        Vacuum "vacuum",
    }
    /// Where the viscosity of the fluid is taken from.
    ViscosityFrom {
        /// From water at its temperature.
        Water "water",
        /// From its own entry, measured at the shear of this tube.
        AtShear "at_shear",
        /// From its own entry, measured at rest.
        ZeroShear "zero_shear",
    }
    /// No or yes.
    YesNo {
        /// No.
        No "no",
        /// Yes.
        Yes "yes",
    }
}
