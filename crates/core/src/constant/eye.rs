//! Limits beyond which an eye, an entry or an answer is worth a second look.

constants! {
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
    AL_SCATTER "recheck AL scatter above" "mm" = 0.05, Recheck2010 Memory;
    /// Largest scatter of repeated K.
    K_SCATTER "recheck K scatter above" "D" = 0.5, Recheck2010 Memory;
    /// Largest scatter of repeated chamber depths.
    ACD_SCATTER "recheck ACD scatter above" "mm" = 0.07, Recheck2010 Memory;
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
    /// Refractions of the two eyes further apart.
    ANISOMETROPIA "anisometropia above" "D" = 2, NoSource CommonPractice;
    /// Biometry older than this.
    BIOMETRY_DAYS "biometry older than" "days" = 180, NoSource CommonPractice;
    /// Below this length guidance names Haigis or Hoffer Q.
    GUIDANCE_SHORT "guidance, short eye" "mm" = 22.00, Ng77 Memory;
    /// Above this length guidance names Haigis or SRK/T.
    GUIDANCE_LONG "guidance, long eye" "mm" = 26.00, Ng77 Memory;
    /// Above this length adjustments for long eyes begin.
    LONG_EYE "long eye above" "mm" = 25.0, Wang2011 Memory;
    /// SRK/T that departs from T2 by more leaves the spread.
    DEPARTS "SRK/T departs from T2 by" "D" = 0.5, Here Chosen;
    /// Above this length SRK/T's and T2's retinal thickness is negative.
    RETINA_TURNS "SRK/T retinal thickness zero at" "mm" = 32.38, SrkT1990 Two;
    /// Above this length SRK/T's LCOR falls.
    LCOR_TURNS "SRK/T LCOR largest at" "mm" = 36.20, SrkT1990 Two;
    /// Exact powers that differ by more than this are a wide spread.
    SPREAD_WIDE "spread of powers above" "D" = 1, Here Chosen;
    /// A lens that leaves the eye further from its target than this.
    FAR_FROM_TARGET "lens from target by" "D" = 0.5, Here Chosen;
    /// A backup power further than this from what the methods ask for.
    BACKUP_FAR "backup power off by" "D" = 1, Here Chosen;
    /// Less in the sulcus by a rule of thumb, at least.
    THUMB_LESS "sulcus, rule of thumb, least" "D" = 0.5, NoSource CommonPractice;
    /// And at most.
    THUMB_MUCH "sulcus, rule of thumb, most" "D" = 1.0, NoSource CommonPractice;
    /// Eyes shorter than this are hardly in any series.
    VERY_SHORT "very short eye below" "mm" = 20.0, Here Chosen;
    /// An estimate of K after laser further from what its history says.
    K_AFTER_APART "K after from its history by" "D" = 1, Here Chosen;
    /// A K after laser further from today's keratometry.
    K_AFTER_TODAY "K after from today's K by" "D" = 2, Here Chosen;
    /// A lens by refraction further from what the methods ask for.
    SECOND_APART "lens by refraction off by" "D" = 2, Here Chosen;
    /// Constants of one lens that mean A-constants further apart.
    CONSTANTS_APART "constants apart by, as A" "1" = 1, Here Chosen;
    /// A first eye further from its prediction.
    FIRST_EYE_FAR "first eye off by" "D" = 1, Here Chosen;
    /// A toric lens that leaves more cylinder than this.
    RESIDUAL_LARGE "cylinder left above" "D" = 0.5, Here Chosen;
    /// An incision further than this from a temporal seat.
    SEAT_TEMPORAL "incision from a temporal seat by" "deg" = 60, Here Chosen;
    /// An incision further than this from a superior seat.
    SEAT_SUPERIOR "incision from a superior seat by" "deg" = 100, Here Chosen;
    /// A toric axis chosen further than this from the best meridian.
    OFF_AXIS "toric axis off by" "deg" = 5, Here Chosen;
    /// Targets below this are unusual.
    TARGET_LEAST "target below" "D" = -3, Here Chosen;
    /// Targets above this are unusual.
    TARGET_MOST "target above" "D" = 0.25, Here Chosen;
}
