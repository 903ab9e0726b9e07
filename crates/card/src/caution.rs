//! What to know before trusting or using a number: stable codes, a severity, one text each.

use crate::field::Field;
use crate::lens::Method;
use crate::source::{Mark, Source};

/// How much a caution weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// No number is given.
    Refuse,
    /// Look again before using the number.
    Caution,
    /// Good to know.
    Note,
}

impl Severity {
    /// The word printed before the text.
    ///
    /// ```
    /// assert_eq!(ocellus_core::caution::Severity::Refuse.word(), "REFUSED");
    /// ```
    pub const fn word(self) -> &'static str {
        match self {
            Severity::Refuse => "REFUSED",
            Severity::Caution => "CAUTION",
            Severity::Note => "note",
        }
    }
}

/// One caution, with the entry or the method it is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// Which.
    pub code: Code,
    /// The entry it is about.
    pub field: Option<Field>,
    /// The method it is about.
    pub method: Option<Method>,
}

impl Caution {
    /// About an entry.
    pub(crate) const fn about(code: Code, field: Field) -> Caution {
        Caution { code, field: Some(field), method: None }
    }

    /// About a method.
    pub(crate) const fn of(code: Code, method: Method) -> Caution {
        Caution { code, field: None, method: Some(method) }
    }

    /// About the whole case.
    pub(crate) const fn general(code: Code) -> Caution {
        Caution { code, field: None, method: None }
    }
}

macro_rules! cautions {
    ($($id:ident $word:literal $severity:ident $text:literal, $source:ident $mark:ident;)*) => {
        /// The stable code of a caution.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Code { $(#[doc = $text] $id,)* }

        impl Code {
            /// Every code, in the order of its number.
            pub const ALL: &[Code] = &[$(Code::$id),*];

            /// The code as it is printed and kept.
            ///
            /// ```
            /// assert_eq!(ocellus_core::caution::Code::PreviousSurgery.word(), "previous_surgery");
            /// ```
            pub const fn word(self) -> &'static str { packed!(self, $($word),*) }

            /// How much it weighs.
            ///
            /// ```
            /// use ocellus_core::caution::{Code, Severity};
            /// assert_eq!(Code::PreviousSurgery.severity(), Severity::Refuse);
            /// ```
            pub const fn severity(self) -> Severity { match self { $(Code::$id => Severity::$severity,)* } }

            /// The text a person reads.
            ///
            /// ```
            /// assert!(ocellus_core::caution::Code::MinusPower.text().contains("minus"));
            /// ```
            pub const fn text(self) -> &'static str { packed!(self, $($text),*) }

            /// Where its limit or fact comes from.
            ///
            /// ```
            /// use ocellus_core::{caution::Code, source::Source};
            /// assert_eq!(Code::AlUnusual.source(), Source::Recheck2010);
            /// ```
            pub const fn source(self) -> Source { match self { $(Code::$id => Source::$source,)* } }

            /// How sure that is.
            ///
            /// ```
            /// use ocellus_core::{caution::Code, source::Mark};
            /// assert_eq!(Code::AlUnusual.mark(), Mark::Memory);
            /// ```
            pub const fn mark(self) -> Mark { match self { $(Code::$id => Mark::$mark,)* } }
        }
    };
}

cautions! {
    // The eye
    AlUnusual "al_unusual" Caution "Axial length below 21.30 or above 26.60 mm: measure again.", Recheck2010 Memory;
    KUnusual "k_unusual" Caution "Mean corneal power below 41 or above 47 D: measure again.", Recheck2010 Memory;
    AstigmatismLarge "astigmatism_large" Caution "Corneal astigmatism above 2.5 D: measure again, and look at the whole cornea.", Recheck2010 Memory;
    WtwUnusual "wtw_unusual" Caution "White to white below 10.75 or above 13.0 mm: measure again.", Recheck2010 Memory;
    AlBetweenEyes "al_between_eyes" Caution "Axial lengths of the two eyes differ by more than 0.7 mm: measure both again.", Recheck2010 Memory;
    AlBetweenEyesOlder "al_between_eyes_older" Note "Axial lengths of the two eyes differ by more than 0.3 mm, the limit of an older rule.", Recheck2010 Memory;
    KBetweenEyes "k_between_eyes" Caution "Mean corneal powers of the two eyes differ by more than 0.9 D: measure both again.", Recheck2010 Memory;
    AlScatter "al_scatter" Caution "Repeated axial lengths scatter by more than 0.05 mm: measure again.", Recheck2010 Memory;
    KScatter "k_scatter" Caution "Repeated corneal powers scatter by more than 0.5 D: measure again.", Recheck2010 Memory;
    AcdScatter "acd_scatter" Caution "Repeated chamber depths scatter by more than 0.07 mm: measure again.", Recheck2010 Memory;
    FellowIdentical "fellow_identical" Caution "The two eyes are nearly identical: is this the other eye's, or another patient's, printout?", WrongLens Chosen;
    AxesNotSquare "axes_not_square" Caution "The two corneal axes are not at right angles (more than 5 deg off): a digit may be wrong, or the cornea irregular.", Here Chosen;
    AxesSame "axes_same" Caution "The two corneal axes are nearly the same meridian: one of them was probably typed twice.", Here Chosen;
    AxesCrossed "axes_crossed" Caution "Old spectacles and cornea point across each other: the corneal axes may be crossed.", Here Chosen;
    AxesUnknown "axes_unknown" Note "No corneal axes: nothing is said about the direction of astigmatism.", Here Chosen;
    NoAstigmatism "no_astigmatism" Note "Both meridians are equal: there is no astigmatism and so no axis.", Identity Two;
    IndexUnusual "index_unusual" Caution "Keratometric index other than 1.3375, 1.332, 1.3315 or 4/3: read it off the printout again.", NoSource CommonPractice;
    SpectaclesDisagree "spectacles_disagree" Caution "Old spectacles do not fit axial length and cornea by more than 4 D; a cataract can shift them by several, a wrong printout by more.", Here Chosen;
    FellowDisagrees "fellow_disagrees" Caution "The difference in spectacles between the eyes does not fit the difference in length and cornea (about 2.5 D per mm) by more than 2.5 D.", NoSource CommonPractice;
    Anisometropia "anisometropia" Caution "Expected to differ from the fellow eye's refraction by more than 2 D: agree this with the patient.", NoSource CommonPractice;
    BiometryOld "biometry_old" Caution "Biometry is more than 180 days older than the operation.", NoSource CommonPractice;
    BiometryUndated "biometry_undated" Note "Biometry or operation has no date: its age is not checked.", Here Chosen;
    QualityReduced "quality_reduced" Caution "The biometer doubted its measurement: repeat it, or measure by another method.", NoSource CommonPractice;
    ContactLensWorn "contact_lens_worn" Caution "A contact lens was worn up to the measurement: the cornea may still be moulded.", NoSource CommonPractice;
    AlContact "al_contact" Caution "Axial length by contact ultrasound: the probe can flatten the eye, and constants for optical biometry do not fit.", NoSource CommonPractice;
    AlImmersion "al_immersion" Note "Axial length by immersion ultrasound: use constants made for it.", NoSource CommonPractice;
    NotPhakic "not_phakic" Caution "The eye held no natural lens when measured: chamber depth and sound or light path are not those the methods expect.", Here Chosen;

    // Refusals of the ordinary methods
    PreviousSurgery "previous_surgery" Refuse "Previous corneal surgery: the ordinary methods do not hold, and no lens is computed.", Aramberri2003 Two;
    CorneaUnfit "cornea_unfit" Refuse "Radial cuts, graft, keratoconus or an unknown history: no method here holds, and no lens is computed.", Here Chosen;
    TotalK "total_k" Refuse "The keratometry is a total power: the ordinary methods expect keratometric power and would ask for a lens 1.1 to 1.7 D too strong, and leave the eye myopic.", Identity Two;
    SiliconeOil "silicone_oil" Refuse "Silicone oil: light and sound travel otherwise in it, and no lens is computed.", NoSource CommonPractice;

    // After corneal laser
    AfterLaser "after_laser" Caution "After corneal laser the ordinary methods are refused. These were made for it; each rests on an estimate of the cornea, and they differ more than ordinary methods do.", Aramberri2003 Two;
    NotThisEye "not_this_eye" Note "Not made for this eye: Haigis-L is for eyes after laser for short sight, Shammas-PL and double-K for any laser.", HaigisL2008 Read;
    NeedsKBefore "needs_k_before" Note "No corneal power from before the laser, which this method takes the lens position from.", Aramberri2003 Two;
    NeedsKAfter "needs_k_after" Note "No estimate of the corneal power after the laser, with where it comes from (k_after_from; history takes the one that follows from the records).", Aramberri2003 Two;
    RawKAfter "raw_k_after" Refuse "What a keratometer reads after laser is not the power of the cornea: after -6 D of laser for short sight it is too steep, and the eye is left about 0.6 D hyperopic. Not taken as the power after.", Aramberri2003 Two;
    KFromHistory "k_from_history" Caution "K after by its history alone: only as good as records often years old.", Ng77 Memory;
    KBothSurfaces "k_both_surfaces" Caution "K after from both surfaces: it must be given as the keratometric power that means the same; a net power is more than 1 D less.", Identity Two;
    KAfterDiffers "k_after_differs" Caution "The estimate of K after and the history differ by more than 1 D: look for the wrong one.", Here Chosen;

    LaserKind "laser_kind" Caution "The kind of laser and what it did disagree: laser for short sight flattens the cornea and makes the refraction less minus, laser for long sight the other way.", Identity Two;
    KAfterToday "k_after_today" Caution "The K after and today's keratometry differ by more than 2 D: look for the wrong one.", Here Chosen;

    // The methods
    NeedsLength "needs_length" Note "No axial length for this method.", Here Chosen;
    NeedsConstant "needs_constant" Note "No lens constant for this method.", Here Chosen;
    NeedsAcd "needs_acd" Note "No anterior chamber depth for this method.", Here Chosen;
    NeedsCct "needs_cct" Note "The chamber depth starts at the back of the cornea: the corneal thickness is needed too.", Haigis2004 Two;
    NotMeasuredPhakic "not_measured_phakic" Note "The chamber depth was not measured to a natural lens: this method does not hold.", Haigis2004 Memory;
    NoSolution "no_solution" Refuse "The equations have no answer for this eye.", Identity Two;
    NoMethod "no_method" Refuse "No method has all it needs: enter the lens's own constants.", Here Chosen;
    Converted "converted" Caution "Constant converted from another of this lens: second best to the lens's own optimised one.", Holladay2003 Two;
    Unoptimised "unoptimised" Caution "Unoptimised constants, typically about 1 D above the others: not counted in the spread.", Haigis2004 Two;
    Radicand "radicand" Refuse "The corneal height has no real value (steep cornea, long eye): this answer must not be used.", HaigisCusp1993 Two;
    DepartsFromT2 "departs_from_t2" Caution "Departs from T2 by more than 0.5 D, as it does for steep or very flat corneas and extreme lengths: not counted in the spread.", HaigisCusp1993 Two;
    Clamped "clamped" Caution "Axial length outside 18.5 to 31 mm: the chamber depth is that of the nearest end.", HofferQ1993 Memory;
    RetinaTurned "retina_turned" Caution "Axial length above 32.38 mm: its retinal thickness is negative.", SrkT1990 Two;
    LcorTurned "lcor_turned" Caution "Axial length above 36.20 mm: its length correction falls again as the eye gets longer.", SrkT1990 Two;
    UsualSlopes "usual_slopes" Caution "Only a0 was entered: the usual a1 0.4 and a2 0.1 go with it. Are they this lens's own?", Haigis2004 Two;
    Superseded "superseded" Note "A regression of 1988, superseded: shown because it was asked for.", SrkII1988 Memory;
    LongEye "long_eye" Caution "Axial length above 25.0 mm: these methods tend to leave long eyes hyperopic, and no published adjustment of the length is applied.", Wang2011 Memory;
    LengthAdjusted "length_adjusted" Caution "The axial length is adjusted by the published set that was asked for, and every number of this method rests on it. Its line makes a step where it begins, shown here: an eye a little shorter would get another lens.", WangKoch Memory;
    SetsCompared "sets_compared" Note "The published adjustments are shown side by side; none of them is applied.", WangKoch Memory;
    VeryShort "very_short" Caution "Axial length below 20.0 mm: hardly any such eye was in the series behind these methods. A child's eye also grows, and its target is another question.", Here Chosen;
    ConstantsOfMaker "constants_of_maker" Caution "The constants are the maker's, not optimised on results: every prediction may be off to one side.", NoSource CommonPractice;
    ShortEye "short_eye" Caution "Axial length below 22.0 mm: lens position matters most here, and methods differ most.", NoSource CommonPractice;
    Agreement "agreement" Note "Agreement is not accuracy; all share the same AL and K.", Here Chosen;
    SpreadWide "spread_wide" Caution "The methods compared differ by more than 1 D of lens.", Here Chosen;
    NothingToCompare "nothing_to_compare" Note "Fewer than two methods are fit to be compared: there is no spread.", Here Chosen;

    // The lens chosen
    NoLensChosen "no_lens_chosen" Caution "No lens power was entered: choose one and enter it as on its label.", Here Chosen;
    MinusPower "minus_power" Caution "The lens power is minus: say the word minus when reading it out.", WrongLens Read;
    OffLabel "off_label" Caution "What was chosen is not one of the steps this model comes in.", Here Chosen;
    OutOfRange "out_of_model_range" Caution "The power chosen is outside the range this model comes in.", Here Chosen;
    ModelFallsShort "model_falls_short" Caution "The power asked for lies outside what this model comes in.", Here Chosen;
    FarFromTarget "far_from_target" Caution "A method fit to be compared puts the lens chosen more than 0.5 D from the agreed target: is it the lens and the target that were meant?", WrongLens Chosen;
    TargetUnusual "target_unusual" Caution "The target is hyperopic or beyond -3 D: is its sign the one that was agreed?", WrongLens Chosen;
    DefaultUsed "default_used" Note "Not entered; the usual value is used.", Here Chosen;
    LensModelMissing "lens_model_missing" Caution "No lens model: a constant belongs to one model and one kind of biometry.", WrongLens Read;

    NoSuchLens "no_such_lens" Caution "No lens of such a power is made: is every entry of this eye right?", Here Chosen;
    FirstLensBag "first_lens_bag" Caution "The powers of the methods are for the bag. The lens by the refraction today goes into the sulcus: its power stands in its own part.", Identity Two;
    FirstLensHidden "first_lens_hidden" Note "The eye keeps the lens that it has: what the methods for a first lens say is not shown.", Here Chosen;
    ConstantsApart "constants_apart" Caution "Two constants entered for this lens mean A-constants more than 1 apart: is one of them mistyped, or another lens's?", Here Chosen;
    RuleUsed "rule_used" Note "The label pointed out follows from the rule that was asked for, by each method: first myopic is the weakest that leaves less than 0 D, whatever the target; nearest is nearest to the target. It is no choice.", Here Chosen;
    RuleNeedsCylinder "rule_needs_cylinder" Refuse "A label that states the weak meridian cannot be pointed out before its cylinder is chosen.", Identity Two;
    RuleNone "rule_none" Note "No label of this model does what the rule asks.", Here Chosen;

    // How sure
    SdUsual "sd_usual" Note "SD of one optical biometer in 266 eyes used where none was entered (axial length 0.0177 mm, K 0.18 D, chamber depth 0.0247 mm).", Repeat2025 Read;
    SdMemory "sd_memory" Note "SD of lens position and of a refraction after surgery (0.2 to 0.3 mm, 0.3 D): their usual size, recalled without a source.", NoSource CommonPractice;
    IntervalIf "interval_if" Note "Only if these SDs are right, nothing is biased, and the errors independent; the pupil is left out. An interval is about the prediction, a chance about the target.", Norrby2008 Two;
    NoInterval "no_interval" Note "No interval and no chance: these hold only for constants optimised on results (constants_from), the method's own, where nothing speaks against its answer.", Here Chosen;
    SdNeeded "sd_needed" Note "No shares, interval or chance: the usual scatter of an axial length is that of an optical biometer. Enter that of this measurement (axial_length_sd_mm).", Repeat2025 Read;
    NoBudget "no_budget" Note "After laser no shares, interval or chance: the estimate of the cornea outweighs all that is known of scatter.", Here Chosen;
    RepeatAl "repeat_al" Note "Of the measurements the axial length adds most: repeat it first.", Identity Two;
    RepeatK "repeat_k" Note "Of the measurements the corneal power adds most: repeat it first.", Identity Two;
    RepeatAcd "repeat_acd" Note "Of the measurements the chamber depth adds most: repeat it first.", Identity Two;

    // The second eye
    HalfOfFirst "half_of_first" Note "Half of the first eye's error is expected of the second: shown beside, applied nowhere. It holds for the method and the lens model that the first prediction was by.", Covert2010 Memory;
    FirstEyeFar "first_eye_far" Caution "The first eye ended more than 1 D from its prediction: look for the reason before the second eye is planned.", Here Chosen;
    FirstEyeNoLens "first_eye_no_lens" Refuse "The fellow eye was not said to have an artificial lens: its refraction is the result of no operation, and teaches nothing of one.", Here Chosen;

    // A lens by refraction
    SecondVergence "second_vergence" Note "From refraction, cornea and lens position; no axial length. The larger the change, the more the position matters.", Holladay1993 Memory;
    SecondLaser "second_laser" Caution "After laser this lens is computed with the K after, where an estimate was entered, else with today's keratometry. The smaller the change of refraction, the less it matters.", Holladay1993 Memory;
    SecondApart "second_apart" Caution "By the refraction another power is asked for than by the methods, by more than 2 D: a sign or another entry may be wrong, or the surprise has a cause to look for.", Here Chosen;
    TwoLenses "two_lenses" Caution "A power was chosen for a first lens and one for the lens by refraction: which of them goes into this eye?", WrongLens Chosen;
    AddedInBag "added_in_bag" Caution "A second lens in the bag with the first: is the sulcus meant?", NoSource CommonPractice;
    SecondState "second_state" Caution "What was in the eye when it was measured does not go with what this lens is for.", Here Chosen;
    SecondNeedsPosition "second_needs_position" Refuse "No position was entered for this lens (second_position_mm), and no method gives one: that would take an axial length and the constants of the new lens.", Here Chosen;
    SecondNeedsLens "second_needs_lens" Refuse "An exchange needs the power of the lens that is in the eye.", Identity Two;
    NoSecondPower "no_second_power" Caution "No power was entered for this lens: choose one and enter it as on its label.", Here Chosen;
    SecondFar "second_far" Caution "The power chosen leaves more than 0.5 D from the target: is it the lens that was meant?", WrongLens Chosen;

    // The lens itself
    SurfacesDisagree "surfaces_disagree" Caution "The surfaces entered make another power than the label, by more than a label may be off.", Iso11979 Memory;
    PositionPlane "position_plane" Note "A lens position is that of a thin lens, so of principal planes. Shown is what would change if a method's meant a vertex or the centre instead; a lens constant hides which.", Identity Two;

    // Backup
    NoBackup "no_backup" Caution "No backup lens was entered: have one ready in case the capsule tears.", NoSource CommonPractice;
    NoBackupPower "no_backup_power" Caution "No backup power was entered: choose one and enter it as on its label.", Here Chosen;
    BackupFar "backup_far" Caution "The backup power chosen is more than 1 D from what the methods ask for in its place: is it the lens that was meant?", WrongLens Chosen;
    BackupMethods "backup_methods" Note "Backup lens: Holladay 1 and Hoffer Q by constants converted from its A-constant; unoptimised Haigis, and SRK/T where it departs from T2, are left out.", Holladay2003 Two;
    OnePieceSulcus "one_piece_sulcus" Refuse "A one-piece lens does not belong in the sulcus, nor its haptics with the optic captured.", NoSource CommonPractice;
    BackupStyleUnknown "backup_style_unknown" Caution "How the lens for the sulcus is made was not entered: a one-piece lens does not belong in the sulcus.", NoSource CommonPractice;
    SulcusThumb "sulcus_thumb" Note "Computed from the optics; the rule of thumb beside it (0.5 to 1.0 D less) is wrong for weak and strong lenses.", Holladay1993 Two;
    CapturedOptic "captured_optic" Note "Optic captured behind the rhexis: power as in the bag.", NoSource CommonPractice;

    // Astigmatism
    ToricNeedsAxes "toric_needs_axes" Refuse "A toric lens needs both corneal axes.", Identity Two;
    ToricNeedsIncision "toric_needs_incision" Refuse "A toric lens needs the incision's site and the surgeon's own flattening, or the surgeon's own centroid; 0.00 is an answer, silence is not.", NoSource CommonPractice;
    ToricNeedsPower "toric_needs_power" Note "No lens power was chosen: what a label cylinder leaves is computed for the exact power.", Here Chosen;
    LabelNeedsCylinder "label_needs_cylinder" Caution "The label states the weak meridian: without a cylinder chosen, the label powers here are taken as means of both.", Identity Two;
    CorneaPlaneLabel "cornea_plane_label" Caution "Label cylinder at the cornea: taken to the lens at each method's own lens position; the maker's own road may differ.", Here Chosen;
    ToricAfterLaser "toric_after_laser" Caution "After laser the measured cylinder and its axis need not be those at the middle of the pupil, and the back of the cornea weighs more: look at a map of the cornea first.", NoSource CommonPractice;
    PosteriorIgnored "posterior_ignored" Caution "The back of the cornea is not included: on average the corneal cylinder came out 0.5 to 0.6 D too large with the rule, 0.2 to 0.3 D too small against it.", PosteriorCornea2013 Read;
    BackCorrected "back_corrected" Note "A published correction, made for corneas never operated on, stands for the back of the cornea. Backs differ from eye to eye (0.34 +/- 0.14 D), and corrections from one another.", BackOfCornea2020 Read;
    BackMeasured "back_measured" Note "Front and back are added as measured, with true indices; incisions stay in dioptres of 1.3375.", Identity Two;
    ClassEdge "class_edge" Caution "The steep meridian is within 5 deg of the edge of a class, where this correction makes the step shown: a reading a little other may get another lens.", Eom2015 Chosen;
    GogginBeyond "goggin_beyond" Caution "This correction was published for lens cylinders up to 2 D; a method compared needs more.", Goggin2015 Read;
    SiaIsVector "sia_is_vector" Note "The flattening is used as a vector along the incision: a mean of vectors, never a mean of sizes, which is larger.", Identity Two;
    ResidualLarge "residual_large" Caution "The toric lens chosen leaves more than 0.5 D of cylinder by a method compared; below that sight was not degraded in most.", SmallCylinder2014 Read;
    ResidualNominal "residual_nominal" Note "What is left is nominal, at the cornea, as the plus cylinder still needed. Expected is its mean size with the scatter shown; no eye is promised the nominal one.", Marking2011 Read;
    MarkedUnknown "marked_unknown" Note "Not said whether the axis was marked upright: the turn of the eye lying down (+1.43 +/- 3.41 deg) is not in what is expected.", LyingDown2015 Read;
    MarkedLying "marked_lying" Caution "Marked lying down: eyes turn by +1.43 +/- 3.41 deg, some by far more. That is in what is expected; a mark made upright would take it out.", LyingDown2015 Read;
    AxisAcross "axis_across" Caution "The meridian chosen lies more than 45 deg from the best: there the lens adds to the astigmatism. Flat meridian entered for steep, or the axes of K exchanged?", Identity Two;
    CentroidAlong "centroid_along" Caution "The centroid steepens the meridian of the incision, where a cut usually flattens: was the flattened meridian entered? It is the one that becomes steeper that is meant.", NoSource CommonPractice;
    BackFar "back_far" Caution "The back as measured has more than 0.9 D of astigmatism, or is steep sideways: of 7,829 backs 97.55 % are steep upright, with 0.34 +/- 0.14 D. Radii or axes exchanged?", BackOfCornea2020 Chosen;
    TurnDisagrees "turn_disagrees" Caution "The refraction, the lens and the cornea as planned do not fit by more than 1 D: read the refraction, its signs and axis, and the mark again before turning.", Here Chosen;
    LabelWeaker "label_weaker" Caution "The exact powers are means of both meridians; this label states the weaker one, half the cylinder less.", Identity Two;
    TurnAway "turn_away" Caution "The best turn leads away from the meridian chosen. Before turning read the sign of the cylinder and its axis again: +0.75 x 40 is -0.75 x 130, not -0.75 x 40.", Here Chosen;
    MarkAcross "mark_across" Caution "The mark was found more than 45 deg from the meridian chosen: was it read across the lens?", Here Chosen;
    TurnLittle "turn_little" Caution "The lens lies where it leaves least, to less than a degree: turning does not help.", Identity Two;
    TurnNotEnough "turn_not_enough" Caution "The best turn still leaves more than 0.5 D: turning alone is not the remedy. Read the refraction and the lens cylinder again.", SmallCylinder2014 Read;
    TurnNeeds "turn_needs" Note "How to turn the lens is told once the refraction after, the meridian where its mark lies, and the lens cylinder are entered.", Here Chosen;
    TurnSense "turn_sense" Caution "Senses are of the eye seen from the front: the same for both eyes and from every seat; only a mirror reverses them. Say FROM and TO, never a sense alone. Which way a lens may be turned, its label says.", Identity Two;
    TurnWithinNoise "turn_within_noise" Caution "The best turn takes away no more than the scatter of a refraction: within measurement noise.", Here Chosen;
    TurnLeaves "turn_leaves" Note "What the best turn leaves is not of the lens's angle: its cylinder, the cornea or the refraction. Why it lies so, and when to turn it, is the surgeon's question.", Here Chosen;
    SmallTarget "small_target" Caution "The change wanted is below 1 D: ratios to it are unsteady, and the correction index is biased upward, so that even perfect corrections average above 1.", Indices2001 Read;
    OverCorrects "over_corrects" Note "A label cylinder beyond what is needed turns the axis of what is left by 90 deg: with the rule becomes against, or the other way about. Which to leave is the surgeon's choice.", Identity Two;
    ToricNotNeeded "toric_not_needed" Note "The weakest label cylinder leaves more than none at all would.", Identity Two;
    BeyondLabels "beyond_labels" Caution "More cylinder is needed than this model's strongest.", Identity Two;
    OffAxisChosen "off_axis_chosen" Caution "The axis chosen is more than 5 deg from the meridian that leaves least.", Here Chosen;

    // Wound, rhexis
    SeatElsewhere "seat_elsewhere" Caution "The incision does not lie where the surgeon sits: is it the eye and the site that were meant?", WrongLens Chosen;
    TunnelShort "tunnel_short" Note "Tunnel shorter than wide: square tunnels (3.2 by 3.2 mm) held where 3.2 by 2.0 mm leaked; others (1996;22:721-725) found 2.0 mm enough for 3.0 to 3.5 mm wide.", WoundLength1994 Read;
    RhexisUncovered "rhexis_uncovered" Caution "The rhexis edge would come off the optic on one side.", Identity Two;
    RhexisBand "rhexis_band" Note "Seen over true was 115.9 +/- 3.1 % in 40 eyes, 110 to 120 %; paraxial optics gives less.", RhexisSeen Read;

    // Pressure
    HeadHigh "head_high" Caution "Above 80 mmHg at the eye: a risk to the optic nerve. Living eyes reached 69 and 85 mmHg at 90 and 110 cm (J Refract Surg 2014;30:534-540).", NoSource CommonPractice;
    HeadNegative "head_negative" Caution "The eye is above the open level: the column pulls.", Identity Two;
    HeadStatic "head_static" Note "With nothing flowing, from the level open to air (drip chamber or vent tip, not always the fluid level). A flowing chamber has less.", Stoppered1990 Read;
    NoAir "no_air" Note "Neither altitude nor station pressure was entered: no ceiling on vacuum is given.", Here Chosen;
    StationBeatsAltitude "station_beats_altitude" Note "The measured station pressure is used, not the altitude.", Here Chosen;
    VacuumUnreachable "vacuum_unreachable" Caution "This vacuum cannot be reached here: the fluid boils first. Do not compensate with bottle or setting.", Iso2533 Two;
    CeilingIdeal "ceiling_ideal" Note "Dissolved gas comes out earlier: the true ceiling is lower.", NoSource CommonPractice;
    StationFar "station_far" Caution "The measured pressure is more than 40 mmHg from that of the altitude, more than weather makes: hPa or mmHg, reduced to the sea, the right altitude?", NoSource CommonPractice;
    LevelAssumed "level_assumed" Caution "The eye does not lie where the machine reckons with it: the pressure at the eye is not the one that is set.", Identity Two;

    // Illustrations, tubes
    Illustration "illustration" Caution "An illustration for teaching, from the numbers entered: no living eye behaves so, and no machine is described.", Here Chosen;
    ChamberCollapsed "chamber_collapsed" Caution "Chamber collapsed, the model ends: no pressure is left in it.", Identity Two;
    FlowNotReached "flow_not_reached" Caution "The vacuum that would follow is above the one that is set: the pump draws less than this flow, and the numbers are of the vacuum set.", Identity Two;
    LeakTooLarge "leak_too_large" Caution "With this leak no pressure is left in the chamber: nothing is reckoned.", Identity Two;
    LeakUnknown "leak_unknown" Note "No leak was entered. In 105 patients 67 +/- 11 % of the irrigation leaked.", Leak2009 Read;
    ReadingsRise "readings_rise" Caution "The pressure does not fall from the smaller to the larger flow: these readings give no resistance.", Identity Two;
    ReadingsApart "readings_apart" Caution "At no flow these readings come to more than 5 mmHg beside the column: another datum, a leak, or a reading under way.", Here Chosen;
    StepLong "step_long" Refuse "No surge: the step entered is longer than a quarter of the shortest time constant.", Here Chosen;
    VolumeBeyond "volume_beyond" Caution "More volume than an anterior chamber holds (139.8 +/- 38.2 uL): no eye gives that much.", ChamberVolume Read;
    SurgeOpen "surge_open" Caution "Not at rest after 2,000 steps: no least pressure is given, since what comes later is not known.", Here Chosen;
    ComplianceEntered "compliance_entered" Note "The compliance of the eye is an entry, never a law: laws of dead eyes overpredict living ones 1.4 to 4 times.", DeadEyes Read;
    BoreNominal "bore_nominal" Caution "Calculated for the nominal bore: a gauge does not fix the bore. 27 G lines of several makers lost 16 to 50 mmHg at one flow.", NeedleLines Read;
    Jet "jet" Caution "A jet at or behind the capsule can tear it: bench figures only; aim away from the capsule.", NoSource CommonPractice;
    ZeroShear "zero_shear" Refuse "A viscosity at rest says nothing of a needle: viscoelastics thin enormously. With a flow entered its shear at the wall is shown: enter the viscosity there.", Poiseuille Two;
    BoreEntered "bore_entered" Note "The bore entered is used, not the nominal one of the gauge.", Here Chosen;
    Turbulent "turbulent" Caution "Reynolds number above 2300: the flow is not laminar, and more pressure is lost than calculated.", NoSource CommonPractice;
    TubeShort "tube_short" Caution "The flow is still developing over half of the tube or more: the loss is rough.", NoSource CommonPractice;

    // End of the case, risks
    ViscoelasticLeft "viscoelastic_left" Note "Viscoelastic left behind raised pressure by 4.6 and 8.6 mmHg at 6 h (two kinds): 30 mmHg or more in 2 and 9 of 40.", Viscoelastic2001 Read;
    HapticsHorizontal "haptics_horizontal" Note "Haptics at 0-180: negative dysphotopsia in 9 of 110 against 18 of 110 (p 0.072): suggestive, not proved; a toric axis overrides it.", Haptics2020 Read;
    RisksUnanswered "risks_unanswered" Note "No risk was asked about in this case: floppy iris, pseudoexfoliation, zonule, posterior polar, vitrectomy, guttata, pupil, allergies.", Here Chosen;
    FloppyIris "floppy_iris" Caution "Floppy iris: plan for a small, unstable pupil.", NoSource CommonPractice;
    Pseudoexfoliation "pseudoexfoliation" Caution "Pseudoexfoliation: expect a small pupil and a weak zonule.", NoSource CommonPractice;
    WeakZonule "weak_zonule" Caution "Weak zonule: have support for the capsule ready.", NoSource CommonPractice;
    PosteriorPolar "posterior_polar" Caution "Posterior polar cataract: NO HYDRODISSECTION.", NoSource CommonPractice;
    LongOrVitrectomised "retropulsion" Caution "Long or vitrectomised eye: the column can push the lens-iris diaphragm back; lower the bottle before entering, lift the iris to break the block.", Retropulsion2017 Read;
    Guttata "guttata" Caution "Guttata: spare the endothelium.", NoSource CommonPractice;
    SmallPupil "small_pupil" Caution "Small pupil: have a way to widen it ready.", NoSource CommonPractice;
    IodineAllergy "iodine_allergy" Caution "ALLERGY TO IODINE.", NoSource CommonPractice;
    AntibioticAllergy "antibiotic_allergy" Caution "ALLERGY TO THE ANTIBIOTIC.", NoSource CommonPractice;

    // Always there
    Unused "unused" Note "Entries that were made are used for nothing on this card; explain tells what a number starts from.", Here Chosen;
    NotADevice "not_a_device" Note "Not a medical device: teaching and independent arithmetic check only. The surgeon, the label, the pharmacy and local rules decide.", Here Chosen;
}
