//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// Shortest axial length that needs no second look.
    AL_SHORT "recheck AL below" "mm" = 21.30, Recheck2010 Memory;
    /// Longest axial length that needs no second look.
    AL_LONG "recheck AL above" "mm" = 26.60, Recheck2010 Memory;
    /// Flattest mean K that needs no second look.
    K_FLAT "recheck K below" "D" = 41, Recheck2010 Memory;
    /// Steepest mean K that needs no second look.
    K_STEEP "recheck K above" "D" = 47, Recheck2010 Memory;
    /// Largest corneal astigmatism that needs no second look.
    CYLINDER_LARGE "recheck cylinder above" "D" = 2.5, Recheck2010 Memory;
    /// Smallest white to white that needs no second look.
    WTW_SMALL "recheck white to white below" "mm" = 10.75, Recheck2010 Memory;
    /// Largest white to white that needs no second look.
    WTW_LARGE "recheck white to white above" "mm" = 13.0, Recheck2010 Memory;
    /// Largest difference in axial length between eyes.
    AL_APART "recheck AL between eyes above" "mm" = 0.7, Recheck2010 Memory;
    /// The same in an older rule.
    AL_APART_OLDER "recheck AL between eyes above, older rule" "mm" = 0.3, Recheck2010 Memory;
    /// Largest difference in mean K between eyes.
    K_APART "recheck K between eyes above" "D" = 0.9, Recheck2010 Memory;
    /// Largest scatter of repeated axial lengths.
    AL_SCATTER_MOST "recheck AL scatter above" "mm" = 0.05, Recheck2010 Memory;
    /// Largest scatter of repeated K.
    K_SCATTER_MOST "recheck K scatter above" "D" = 0.5, Recheck2010 Memory;
    /// Largest scatter of repeated chamber depths.
    ACD_SCATTER_MOST "recheck ACD scatter above" "mm" = 0.07, Recheck2010 Memory;
    /// Eyes closer than this in AL, and in both K by the next, are nearly identical: about the repeatability of AL.
    IDENTICAL_AL "nearly identical AL" "mm" = 0.02, Repeat2025 Chosen;
    /// And in both K.
    IDENTICAL_K "nearly identical K" "D" = 0.05, Repeat2025 Chosen;
    /// Corneal axes further from a right angle than this.
    OFF_SQUARE "axes off square" "deg" = 5, Here Chosen;
    /// Axes this far off square are nearly one meridian.
    SAME_AXIS "axes nearly the same" "deg" = 60, Here Chosen;
    /// Astigmatism of cornea and spectacles must both reach this before their axes are compared.
    AXES_COMPARED "cylinder before axes are compared" "D" = 1.0, Here Chosen;
    /// Axes that differ by more than this point across each other.
    AXES_CROSSED "axes crossed" "deg" = 60, Here Chosen;
    /// Axial length of an eye without refraction, for the check of spectacles.
    USUAL_AL "usual AL" "mm" = 23.43, Here Chosen;
    /// Corneal power of an eye without refraction, for the check of spectacles.
    USUAL_K "usual K" "D" = 43.9, Here Chosen;
    /// Refraction per millimetre of axial length.
    D_PER_MM "refraction per mm of AL" "D/mm" = 2.5, NoSource CommonPractice;
    /// Old spectacles further from what length and cornea suggest.
    SPECTACLES_OFF "spectacles off by" "D" = 4, Here Chosen;
    /// Difference of spectacles between eyes further from what the differences suggest.
    FELLOW_OFF "spectacles between eyes off by" "D" = 2.5, Here Chosen;
    /// Biometry older than this.
    BIOMETRY_DAYS "biometry older than" "days" = 180, NoSource CommonPractice;
}
