//! Everything that comes out: one table, named once.

use crate::caution::Code;
use crate::lens::Method;
use crate::source::{Mark, Source};

/// A computed number on its way to a sink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// What it is.
    pub what: What,
    /// The method it comes from, where there is more than one.
    pub method: Option<Method>,
    /// Its row, where it stands in a table; else 0.
    pub row: u8,
    /// The value, unrounded.
    pub value: f64,
}

impl Item {
    /// A single number.
    pub(crate) fn one(what: What, value: f64) -> Item {
        Item { what, method: None, row: 0, value }
    }

    /// A number of one method.
    pub(crate) fn of(what: What, method: Method, value: f64) -> Item {
        Item { what, method: Some(method), row: 0, value }
    }

    /// The same, in a row of its table.
    pub(crate) fn in_row(self, row: usize) -> Item {
        Item { row: row as u8, ..self }
    }
}

impl Part {
    /// What must be known before a number of this part is read: told at its head, and with the other cautions too.
    ///
    /// ```
    /// use ocellus_core::{caution::Code, item::Part};
    /// assert!(Part::Turn.first().contains(&Code::TurnAway));
    /// ```
    pub const fn first(self) -> &'static [Code] {
        match self {
            Part::Lens => &[Code::LabelWeaker],
            Part::Axis => &[Code::PosteriorIgnored],
            Part::Chamber | Part::Surge => &[Code::Illustration],
            Part::Tube => &[Code::BoreNominal, Code::Jet],
            Part::Turn => &[
                Code::TurnAway,
                Code::TurnDisagrees,
                Code::MarkAcross,
                Code::TurnLittle,
                Code::TurnWithinNoise,
                Code::TurnNotEnough,
            ],
            _ => &[],
        }
    }
}

/// A table whose rows are no methods: what leads a row, and what stands in it.
#[derive(Debug)]
pub struct Rows {
    /// What leads a row.
    pub leader: What,
    /// What the table tells.
    pub heading: &'static str,
    /// What the leaders are, for the first column.
    pub of: &'static str,
    /// What stands in a row, each with the heading of its column; a number of each method is a column a method.
    pub cells: &'static [(What, &'static str)],
}

impl Rows {
    /// Every such table.
    pub const ALL: &[Rows] = &[
        Rows {
            leader: What::LadderPower,
            heading: "Refraction at the spectacles with each label power, D:",
            of: "label",
            cells: &[(What::LadderRefraction, ""), (What::LadderSpread, "spread")],
        },
        Rows {
            leader: What::BackSource,
            heading: "The cornea after the incisions, with its back from each source, D and deg:",
            of: "back from",
            cells: &[(What::BackAstigmatism, "astigmatism"), (What::BackAxis, "steep at")],
        },
        Rows {
            leader: What::OffBy,
            heading: "Cylinder left at the cornea, D, turned from the meridian chosen (+ is counter-clockwise):",
            of: "turned",
            cells: &[(What::OffResidual, "")],
        },
        Rows {
            leader: What::TurnBy,
            heading: "Cylinder left at the cornea, D, after a turn from where it lies (+ is counter-clockwise):",
            of: "turned",
            cells: &[(What::TurnResidual, "")],
        },
        Rows {
            leader: What::Bottle,
            heading: "Pressure at the eye, mmHg, nothing flowing, with the column open at other levels:",
            of: "open at",
            cells: &[
                (What::BottleHead, "eye as entered"),
                (What::BottleHigher, "eye 5 cm higher"),
                (What::BottleLower, "eye 5 cm lower"),
            ],
        },
        Rows {
            leader: What::VacuumSet,
            heading: "Each vacuum set, in other units, and what of it is reached, mmHg, nothing flowing:",
            of: "set",
            cells: &[
                (What::SetKpa, "kPa"),
                (What::SetCmh2o, "cmH2O"),
                (What::ReachedPump, "at the pump"),
                (What::ReachedTip, "at the tip"),
            ],
        },
        Rows {
            leader: What::NeedleGauge,
            heading: "Needle tubing, mm: outer and nominal bore; least bore of a regular and of a thin wall (ISO 9626); \
                      mmHg lost by a needle of this length at that flow in the nominal and in the least bore, where laminar:",
            of: "gauge",
            cells: &[
                (What::NeedleOuter, "outer"),
                (What::NeedleBore, "nominal"),
                (What::NeedleLeast, "least"),
                (What::NeedleThin, "thin"),
                (What::NeedleDrop, "lost"),
                (What::NeedleDropLeast, "in least"),
            ],
        },
    ];

    /// The table that a number leads or stands in.
    ///
    /// ```
    /// use ocellus_core::item::{Rows, What};
    /// assert_eq!(Rows::with(What::LadderSpread).unwrap().leader, What::LadderPower);
    /// assert!(Rows::with(What::Head).is_none());
    /// ```
    pub fn with(what: What) -> Option<&'static Rows> {
        Self::ALL.iter().find(|rows| rows.leader == what || rows.cells.iter().any(|(cell, _)| *cell == what))
    }
}

macro_rules! parts {
    ($($id:ident $key:literal $heading:literal;)*) => {
        /// The parts of the card, in its order.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Part { $(#[doc = $heading] $id,)* }

        impl Part {
            /// Every part, in order.
            pub const ALL: &[Part] = &[$(Part::$id),*];

            /// Its stable name.
            ///
            /// ```
            /// assert_eq!(ocellus_core::item::Part::EndOfCase.key(), "end_of_case");
            /// ```
            pub const fn key(self) -> &'static str { match self { $(Part::$id => $key,)* } }

            /// Its heading on the card.
            ///
            /// ```
            /// assert_eq!(ocellus_core::item::Part::Wound.heading(), "Wound");
            /// ```
            pub const fn heading(self) -> &'static str { match self { $(Part::$id => $heading,)* } }
        }
    };
}

parts! {
    Identity "identity" "Eye to be operated";
    SetUp "set_up" "Set-up of fluids";
    Lens "lens" "Lens";
    Certainty "certainty" "How sure";
    SecondEye "second_eye" "What the first eye teaches";
    Second "second" "Lens by the refraction today";
    Thick "thick" "The lens itself";
    Backup "backup" "Backup lens, if the capsule tears";
    Cornea "cornea" "Astigmatism of the cornea";
    Axis "axis" "Toric lens";
    Turn "turn" "Turning the lens";
    Wound "wound" "Wound";
    Rhexis "rhexis" "Rhexis";
    Pressure "pressure" "Pressure and vacuum";
    Chamber "chamber" "Chamber under flow: an illustration";
    Surge "surge" "Surge: an illustration";
    Tube "tube" "Tubes, needles, openings";
    EndOfCase "end_of_case" "End of the case";
    After "after" "After the operation";
    Risks "risks" "Risks that change the day";
    Eye "eye" "Measurements";
    Unused "unused" "Entered, and used for nothing here";
    SignOff "sign_off" "Before the first cut";
}

macro_rules! items {
    ($($id:ident $key:literal $unit:literal $places:literal $signed:ident $name:literal, $source:ident $mark:ident;)*) => {
        /// What an item is.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum What { $(#[doc = $name] $id,)* }

        impl What {
            /// Every kind of item, in the order of its number.
            pub const ALL: &[What] = &[$(What::$id),*];

            /// Its stable name.
            ///
            /// ```
            /// assert_eq!(ocellus_core::item::What::Head.key(), "head_mmhg");
            /// ```
            pub const fn key(self) -> &'static str { packed!(self, $($key),*) }

            /// What it is, for a person.
            ///
            /// ```
            /// assert_eq!(ocellus_core::item::What::Head.name(), "pressure at the eye, no flow");
            /// ```
            pub const fn name(self) -> &'static str { packed!(self, $($name),*) }

            /// Its unit; "1" for a pure number.
            ///
            /// ```
            /// assert_eq!(ocellus_core::item::What::Head.unit(), "mmHg");
            /// ```
            pub const fn unit(self) -> &'static str { packed!(self, $($unit),*) }

            /// The decimals it is printed with.
            ///
            /// ```
            /// assert_eq!(ocellus_core::item::What::Head.places(), 1);
            /// ```
            pub const fn places(self) -> u8 { match self { $(What::$id => $places,)* } }

            /// Whether its sign is always printed.
            ///
            /// ```
            /// assert!(ocellus_core::item::What::ExactPower.signed());
            /// ```
            pub const fn signed(self) -> bool { match self { $(What::$id => $signed,)* } }

            /// Where the equation comes from, for what is not a method's own.
            ///
            /// ```
            /// use ocellus_core::{item::What, source::Source};
            /// assert_eq!(What::Ceiling.source(), Source::Iso2533);
            /// ```
            pub const fn source(self) -> Source { match self { $(What::$id => Source::$source,)* } }

            /// How sure that is.
            ///
            /// ```
            /// use ocellus_core::{item::What, source::Mark};
            /// assert_eq!(What::Head.mark(), Mark::Two);
            /// ```
            pub const fn mark(self) -> Mark { match self { $(What::$id => Mark::$mark,)* } }
        }
    };
}

items! {
    MeanRadius "mean_radius_mm" "mm" 3 false "radius of the mean corneal power", Identity Two;
    MeanK "mean_k_d" "D" 2 false "mean corneal power at 1.3375", Identity Two;
    FlatK "flat_k_d" "D" 2 false "flat meridian at 1.3375", Identity Two;
    FlatAxis "flat_axis_deg" "deg" 0 false "its axis", Identity Two;
    SteepK "steep_k_d" "D" 2 false "steep meridian at 1.3375", Identity Two;
    SteepAxis "steep_axis_deg" "deg" 0 false "its axis", Identity Two;
    Astigmatism "corneal_astigmatism_d" "D" 2 false "corneal astigmatism at 1.3375", Identity Two;

    ExactPower "power_d" "D" 2 true "exact power for target", Identity Memory;
    LensPosition "lens_position_mm" "mm" 2 false "lens position", Identity Memory;
    Refraction "refraction_d" "D" 2 true "refraction, lens chosen", Identity Memory;
    Guided "guided" "1" 0 false "named by NICE NG77", Ng77 Memory;
    Compared "compared" "1" 0 false "counts in the spread", Here Chosen;
    LadderPower "ladder_power_d" "D" 2 true "label power", Here Chosen;
    LadderRefraction "ladder_refraction_d" "D" 2 true "refraction with this lens", Identity Memory;
    LadderSpread "ladder_spread_d" "D" 2 false "spread between the methods compared", Here Chosen;
    PowerSpread "power_spread_d" "D" 2 false "spread of the powers compared", Here Chosen;
    KHistory "k_after_history_d" "D" 2 false "K after the laser, by its history", Aramberri2003 Memory;
    AdjustedLength "adjusted_length_mm" "mm" 2 false "axial length, adjusted", WangKoch Memory;
    AdjustedStep "adjustment_step_mm" "mm" 3 true "step where that begins", Identity Two;
    FirstSet "first_2011_power_d" "D" 2 true "power, first set of 2011", Wang2011 Memory;
    FirstStep "first_2011_step_mm" "mm" 3 true "step where it begins", Wang2011 Memory;
    SecondSet "second_2011_power_d" "D" 2 true "power, second set of 2011", Wang2011 Memory;
    SecondStep "second_2011_step_mm" "mm" 3 true "step where it begins", Wang2011 Memory;
    Set2018 "set_2018_power_d" "D" 2 true "power, set of 2018", Wang2018 Memory;
    Step2018 "set_2018_step_mm" "mm" 3 true "step where it begins", Wang2018 Memory;
    AOfFactor "a_of_surgeon_factor" "1" 2 false "A-constant, by the surgeon factor", Holladay2003 Two;
    AOfPacd "a_of_pacd" "1" 2 false "A-constant, by pACD", Holladay2003 Two;
    AOfA0 "a_of_haigis_a0" "1" 2 false "A-constant, by Haigis a0", Haigis2004 Two;
    RulePower "rule_power_d" "D" 2 true "label by the rule", Here Chosen;
    RuleRefraction "rule_refraction_d" "D" 2 true "refraction with it", Identity Memory;
    LabelTolerance "label_tolerance_d" "D" 2 false "label may be off by", Iso11979 Read;

    ErrorAl "error_al_d" "D" 2 true "AL typed 0.1 mm too long", Identity Two;
    ErrorK "error_k_d" "D" 2 true "K typed 0.5 D too steep", Identity Two;
    ErrorAcd "error_acd_d" "D" 2 true "ACD typed 0.1 mm too deep", Identity Two;
    ErrorPosition "error_position_d" "D" 2 true "lens 0.5 mm too far back", Identity Two;
    ErrorConstant "error_constant_d" "D" 2 true "own constant 0.1 too high", Identity Two;
    SdAl "sd_al_mm" "mm" 4 false "usual SD of the axial length", Repeat2025 Read;
    SdK "sd_k_d" "D" 2 false "usual SD of the corneal power", Repeat2025 Read;
    SdAcd "sd_acd_mm" "mm" 4 false "usual SD of the chamber depth", Repeat2025 Read;
    ShareAl "share_al" "%" 1 false "share of the axial length", Norrby2008 Two;
    ShareK "share_k" "%" 1 false "share of K", Norrby2008 Two;
    ShareAcd "share_acd" "%" 1 false "share of the chamber depth", Norrby2008 Two;
    SharePosition "share_position" "%" 1 false "share of lens position", Norrby2008 Two;
    ShareLabel "share_label" "%" 1 false "share of the label", Norrby2008 Two;
    ShareRefraction "share_refraction" "%" 1 false "share of refraction after", Norrby2008 Two;
    TotalSd "total_sd_d" "D" 2 false "SD of all together", Norrby2008 Two;
    Low50 "low_50_d" "D" 2 true "half of eyes from", Identity Two;
    High50 "high_50_d" "D" 2 true "to", Identity Two;
    Low95 "low_95_d" "D" 2 true "95 of 100 eyes from", Identity Two;
    High95 "high_95_d" "D" 2 true "to", Identity Two;
    Chance05 "chance_05" "%" 0 false "chance, 0.5 D of target", Identity Two;
    Chance10 "chance_10" "%" 0 false "chance, 1.0 D of target", Identity Two;

    FirstError "first_eye_error_d" "D" 2 true "first eye, error", Identity Two;
    HalfError "first_eye_half_d" "D" 2 true "half of it, expected of this eye", Covert2010 Memory;
    AllowedPower "allowed_power_d" "D" 2 true "power, half allowed for", Covert2010 Memory;
    AllowedRefraction "allowed_refraction_d" "D" 2 true "lens chosen, half added", Covert2010 Memory;

    SecondAt "second_at_mm" "mm" 2 false "lens position taken", Holladay1993 Memory;
    SecondExact "second_exact_d" "D" 2 true "exact power for target", Holladay1993 Memory;
    SecondLeft "second_refraction_d" "D" 2 true "refraction, lens chosen", Holladay1993 Memory;

    ThickPower "thick_power_d" "D" 2 true "power of the lens, by its surfaces", Identity Two;
    ThickFront "thick_front_mm" "mm" 3 true "front principal plane, from vertex", Identity Two;
    ThickBack "thick_back_mm" "mm" 3 true "back principal plane, from vertex", Identity Two;
    AsFront "position_as_front_d" "D" 2 true "if position is front vertex", Identity Two;
    AsCentre "position_as_centre_d" "D" 2 true "if it is the centre", Identity Two;
    AsBack "position_as_back_d" "D" 2 true "if it is the back vertex", Identity Two;

    BackupBag "backup_bag_d" "D" 2 true "exact power in the bag", Identity Memory;
    BackupExact "backup_power_d" "D" 2 true "exact power in its place", Holladay1993 Memory;
    BackupStep "backup_change_d" "D" 2 true "change for its place", Identity Memory;
    ThumbLess "backup_thumb_less_d" "D" 2 true "rule of thumb, 0.5 D less", NoSource CommonPractice;
    ThumbMuch "backup_thumb_much_d" "D" 2 true "rule of thumb, 1.0 D less", NoSource CommonPractice;

    SiteDegrees "incision_site_at_deg" "deg" 0 false "that site, from the front", Iso8429 Two;
    PlannedAstigmatism "planned_astigmatism_d" "D" 2 false "cornea after the incisions", Thibos1997 Two;
    PlannedAxis "planned_axis_deg" "deg" 0 false "steep meridian after them", Thibos1997 Two;
    PlannedFlat "planned_flat_k_d" "D" 2 false "flat K after them, by keratometry", Identity Two;
    PlannedSteep "planned_steep_k_d" "D" 2 false "steep K after them, by keratometry", Identity Two;
    BackSource "posterior_source" "1" 0 false "back of the cornea", Entered Entered;
    BackAstigmatism "posterior_astigmatism_d" "D" 2 false "astigmatism", Identity Two;
    BackAxis "posterior_axis_deg" "deg" 0 false "steep meridian", Identity Two;
    EdgeDistance "class_edge_deg" "deg" 1 false "steep meridian from a class's edge", Eom2015 Read;
    EdgeStep "class_step_d" "D" 2 false "step of the correction there", Identity Two;
    AlignmentSd "alignment_sd_taken_deg" "deg" 1 false "SD of the lens's angle, taken", Marking2011 Chosen;
    NeededCylinder "needed_cylinder_d" "D" 2 true "cylinder needed at lens", Identity Memory;
    CylinderRatio "cylinder_ratio" "1" 3 false "lens over corneal cylinder", Identity Memory;
    LabelCylinder "label_cylinder_d" "D" 2 true "label cylinder", Entered Entered;
    LensPlaneCylinder "lens_plane_cylinder_d" "D" 2 true "the same at the lens", Identity Memory;
    Beyond "beyond_need_d" "D" 2 true "over- or under-correction", Identity Two;
    Residual "residual_d" "D" 2 true "left at cornea", Identity Memory;
    ResidualAxis "residual_axis_deg" "deg" 0 false "its plus-cylinder axis", Identity Memory;
    Expected "expected_d" "D" 2 false "expected, with scatter", Here Chosen;
    ResidualOff5 "residual_5_d" "D" 2 true "left, turned 5 deg", OffAxis2001 Memory;
    ResidualOff10 "residual_10_d" "D" 2 true "left, turned 10 deg", OffAxis2001 Memory;
    ChosenResidual "chosen_residual_d" "D" 2 true "left by lens chosen", Identity Memory;
    ChosenResidualAxis "chosen_residual_axis_deg" "deg" 0 false "its plus-cylinder axis", Identity Memory;
    ChosenCorneaSphere "chosen_cornea_sphere_d" "D" 2 true "sphere with it", Identity Memory;
    ChosenExpected "chosen_expected_d" "D" 2 false "expected, with scatter", Here Chosen;
    ChosenSphere "chosen_sphere_d" "D" 2 true "in spectacles, sphere", Identity Memory;
    ChosenCylinder "chosen_cylinder_d" "D" 2 true "minus cylinder", Identity Memory;
    ChosenAxis "chosen_axis_deg" "deg" 0 false "its axis", Identity Memory;
    SphereEffect "cylinder_per_sphere_d" "D" 3 true "cylinder per +1 D sphere", Identity Two;
    OffBy "off_by_deg" "deg" 0 true "turned by", Here Chosen;
    OffResidual "off_residual_d" "D" 2 false "cylinder left, at the cornea", OffAxis2001 Two;
    MarkAxis "mark_axis_deg" "deg" 0 false "meridian for the mark on the lens", Identity Two;

    NowCylinder "now_cylinder_d" "D" 2 true "plus cylinder now, at the cornea", Identity Two;
    NowAxis "now_axis_deg" "deg" 0 false "its axis", Identity Two;
    TurnTo "turn_to_deg" "deg" 0 false "best meridian for the mark", Identity Two;
    TurnClock "turn_clockwise_deg" "deg" 0 false "clockwise by", Identity Two;
    TurnCounter "turn_counter_clockwise_deg" "deg" 0 false "or counter-clockwise by", Identity Two;
    TurnLeft "turn_left_d" "D" 2 true "cylinder left, at cornea", Identity Two;
    TurnedSphere "turned_sphere_d" "D" 2 true "in spectacles, sphere", Identity Two;
    TurnedCylinder "turned_cylinder_d" "D" 2 true "minus cylinder", Identity Two;
    TurnedAxis "turned_axis_deg" "deg" 0 false "its axis", Identity Two;
    TurnBy "turn_by_deg" "deg" 0 true "turned by", Here Chosen;
    TurnResidual "turn_residual_d" "D" 2 false "cylinder left, at the cornea", Identity Two;

    FoundError "found_error_d" "D" 2 true "found less predicted", Identity Two;
    IncisionFound "incision_sia_d" "D" 2 false "change of the cornea alone", Identity Two;
    IncisionFoundAxis "incision_sia_axis_deg" "deg" 0 false "meridian it steepened", Identity Two;
    IncisionFlattened "incision_flattened_d" "D" 2 true "flattened at the incision by", Naeser1990 Memory;
    IncisionTorque "incision_torque_d" "D" 2 true "torque there, counter-clockwise plus", Naeser1990 Memory;
    Target "tia_d" "D" 2 false "change wanted of the eye (TIA)", Alpins2001 Memory;
    TargetAxis "tia_axis_deg" "deg" 0 false "axis of TIA", Alpins2001 Memory;
    Surgical "sia_d" "D" 2 false "change made of the eye (SIA)", Alpins2001 Memory;
    SurgicalAxis "sia_axis_deg" "deg" 0 false "axis of SIA", Alpins2001 Memory;
    Difference "dv_d" "D" 2 false "difference vector (DV)", Alpins2001 Memory;
    DifferenceAxis "dv_axis_deg" "deg" 0 false "axis of DV", Alpins2001 Memory;
    MagnitudeError "magnitude_error_d" "D" 2 true "magnitude of error (ME)", Alpins2001 Memory;
    AngleError "angle_error_deg" "deg" 0 true "angle of error (AE)", Alpins2001 Memory;
    CorrectionIndex "correction_index" "1" 2 false "correction index (CI)", Alpins2001 Read;
    SuccessIndex "success_index" "1" 2 false "index of success (IOS)", Alpins2001 Read;
    FlatteningEffect "flattening_effect_d" "D" 2 true "flattening effect (FE)", Alpins2001 Memory;
    Torque "torque_d" "D" 2 true "torque", Alpins2001 Memory;

    Squareness "tunnel_squareness" "1" 2 false "tunnel length over width", WoundLength1994 Read;

    RhexisTrue "rhexis_true_mm" "mm" 2 false "diameter, if the cut is true", NoSource CommonPractice;
    RhexisEdge "rhexis_edge_mm" "mm" 1 false "circumference", Identity Two;
    RhexisGrasps "rhexis_grasps" "1" 0 false "grasps", NoSource CommonPractice;
    CutSeen "cut_seen_as_mm" "mm" 2 false "cut, if it only looks that long", RhexisSeen Read;
    RhexisSeen "rhexis_seen_mm" "mm" 2 false "diameter, if it only looks that long", RhexisSeen Read;
    RhexisSeenLeast "rhexis_seen_least_mm" "mm" 2 false "the same in a deep, steep eye", RhexisSeen Read;
    RhexisSeenMost "rhexis_seen_most_mm" "mm" 2 false "the same in a shallow, flat eye", RhexisSeen Read;
    ParaxialFactor "paraxial_magnification" "1" 3 false "magnification, paraxial, this depth", Identity Two;
    OverlapWorst "overlap_worst_mm" "mm" 2 true "least overlap on the optic", Identity Two;
    OverlapBest "overlap_best_mm" "mm" 2 true "most overlap on the optic", Identity Two;
    OverlapWorstSeen "overlap_worst_seen_mm" "mm" 2 true "least overlap, if it only looks so", Identity Two;
    OverlapBestSeen "overlap_best_seen_mm" "mm" 2 true "most overlap, if it only looks so", Identity Two;

    Head "head_mmhg" "mmHg" 1 false "pressure at the eye, no flow", Identity Two;
    HeadKpa "head_kpa" "kPa" 2 false "the same", Sp811 Two;
    HeadCmh2o "head_cmh2o" "cmH2O" 1 false "the same", Sp811 Two;
    PerCm "head_per_cm_mmhg" "mmHg" 2 false "1 cm of wrong eye level makes", Identity Two;
    Air "air_pressure_mmhg" "mmHg" 1 false "pressure of the air", Iso2533 Two;
    StationAir "station_air_mmhg" "mmHg" 1 false "pressure of the air, measured", Entered Entered;
    Vapour "vapour_pressure_mmhg" "mmHg" 1 false "pressure at which the fluid boils", Iapws97 Two;
    Ceiling "vacuum_ceiling_mmhg" "mmHg" 1 false "ceiling on vacuum", Iso2533 Two;
    CeilingKpa "vacuum_ceiling_kpa" "kPa" 2 false "the same", Sp811 Two;
    MarginNucleus "nucleus_margin_mmhg" "mmHg" 1 true "margin below the ceiling", Identity Two;
    MarginCortex "cortex_margin_mmhg" "mmHg" 1 true "margin below the ceiling", Identity Two;
    MarginViscoelastic "viscoelastic_margin_mmhg" "mmHg" 1 true "margin below the ceiling", Identity Two;
    DensityUsed "density_used_kg_m3" "kg/m3" 2 false "density of water there", Tanaka2001 Two;
    SetColumn "set_column_cm" "cm" 1 false "open column of the same pressure", Identity Two;
    LevelWanted "open_level_wanted_cm" "cm" 1 false "open level for the pressure wanted", Identity Two;
    SettingWanted "setting_wanted_mmhg" "mmHg" 1 false "setting for the pressure wanted", Identity Two;
    Bottle "bottle_cm" "cm" 1 false "open level", Here Chosen;
    BottleHead "bottle_head_mmhg" "mmHg" 1 false "pressure at the eye", Identity Two;
    BottleHigher "bottle_eye_higher_mmhg" "mmHg" 1 false "with the eye 5 cm higher", Here Chosen;
    BottleLower "bottle_eye_lower_mmhg" "mmHg" 1 false "with the eye 5 cm lower", Here Chosen;
    AirHeight "air_height_m" "m" 0 false "map height with such air", Iso2533 Two;
    StationLess "station_less_mmhg" "mmHg" 1 true "measured less that of the altitude", Identity Two;
    Magnus "vapour_magnus_mmhg" "mmHg" 1 false "the same by Magnus' formula", Wmo8 Two;
    MagnusLess "vapour_magnus_less_mmhg" "mmHg" 3 true "Magnus less IAPWS", Identity Two;
    CeilingCmh2o "vacuum_ceiling_cmh2o" "cmH2O" 1 false "the same", Sp811 Two;
    Siphon "siphon_mmhg" "mmHg" 1 true "added at the tip by the level", Identity Two;
    VacuumSet "vacuum_set_mmhg" "mmHg" 0 false "vacuum set", Entered Entered;
    SetKpa "vacuum_set_kpa" "kPa" 2 false "the same", Sp811 Two;
    SetCmh2o "vacuum_set_cmh2o" "cmH2O" 1 false "the same", Sp811 Two;
    ReachedPump "vacuum_at_pump_mmhg" "mmHg" 1 false "reached at the pump", Identity Two;
    ReachedTip "vacuum_at_tip_mmhg" "mmHg" 1 false "reached at the tip", Identity Two;

    FoundResistance "infusion_resistance_found" "mmHg min/mL" 3 false "illustration: infusion, as read", Here Chosen;
    FoundStill "still_pressure_found_mmhg" "mmHg" 1 false "illustration: no flow, as read", Here Chosen;
    FoundLess "still_less_column_mmhg" "mmHg" 1 true "illustration: that less the column", Here Chosen;
    LeakRate "leak_conductance" "mL/min/mmHg" 4 false "illustration: leak for each mmHg", Here Chosen;
    ChamberStill "chamber_still_mmhg" "mmHg" 1 false "illustration: chamber, no aspiration", Here Chosen;
    Chamber "chamber_mmhg" "mmHg" 1 false "illustration: chamber under flow", Here Chosen;
    ChamberFlow "chamber_aspiration_ml_min" "mL/min" 1 false "illustration: aspiration flow", Here Chosen;
    ChamberLeak "chamber_leak_ml_min" "mL/min" 1 false "illustration: leak under flow", Here Chosen;
    VacuumFollows "vacuum_follows_mmhg" "mmHg" 1 false "illustration: vacuum that follows", Here Chosen;
    HoldBare "hold_bare_mn" "mN" 1 false "hold at the tip, no eye pressure", Identity Two;
    Hold "hold_mn" "mN" 1 false "hold at the tip, with the column", Identity Two;

    SurgeStart "surge_start_mmhg" "mmHg" 1 false "illustration: chamber at the break", Here Chosen;
    SurgeTrough "surge_trough_mmhg" "mmHg" 1 false "illustration: least pressure", Here Chosen;
    SurgeTroughTime "surge_trough_ms" "ms" 1 false "illustration: time of it", Here Chosen;
    SurgeRecovered "surge_recovered_ms" "ms" 1 false "illustration: time to recover", Here Chosen;
    SurgeCollapsed "surge_collapsed_ms" "ms" 1 false "illustration: chamber collapsed at", Here Chosen;
    SurgeSteady "surge_steady_mmhg" "mmHg" 1 false "illustration: where it comes to rest", Here Chosen;
    SurgeVolume "surge_volume_ul" "uL" 1 false "illustration: volume chamber lost", Here Chosen;
    SurgeRoom "surge_room_ul" "uL" 1 false "illustration: room in the line", Here Chosen;
    SurgeConstant "surge_shortest_ms" "ms" 2 false "illustration: shortest time constant", Here Chosen;
    SurgeStep "surge_step_taken_ms" "ms" 3 false "illustration: step", Here Chosen;
    SurgeVolumeLeft "surge_volume_left_ul" "uL" 4 true "illustration: volume left over", Here Chosen;
    SurgeEnergyLeft "surge_energy_left_uj" "uJ" 4 true "illustration: energy left over", Here Chosen;

    BoreUsed "bore_used_mm" "mm" 3 false "nominal bore of this gauge", Birmingham Two;
    ViscosityUsed "viscosity_used_mpa_s" "mPa s" 4 false "viscosity of water there", IapwsViscosity Memory;
    FlowDriven "flow_driven_ml_min" "mL/min" 2 false "flow that this pressure drives", Here Chosen;
    Velocity "tube_velocity_m_s" "m/s" 2 false "mean velocity", Identity Two;
    Reynolds "tube_reynolds" "1" 0 false "Reynolds number", Identity Two;
    WallShear "tube_wall_shear" "1/s" 0 false "shear at the wall", Poiseuille Two;
    DropLaminar "tube_laminar_mmhg" "mmHg" 1 false "lost along it", Poiseuille Two;
    DropKinetic "tube_kinetic_mmhg" "mmHg" 1 false "lost in entrance and jet", Here Chosen;
    DropSecond "tube_second_mmhg" "mmHg" 1 false "lost in the tube in series", Here Chosen;
    Drop "tube_drop_mmhg" "mmHg" 1 false "pressure lost, calculated", Here Chosen;
    DropKpa "tube_drop_kpa" "kPa" 2 false "the same", Sp811 Two;
    VolumeTime "volume_time_s" "s" 1 false "time for the volume", Identity Two;
    PlungerFluid "plunger_fluid_n" "N" 2 false "force for the fluid", Here Chosen;
    Plunger "plunger_n" "N" 2 false "force on the plunger, with friction", Here Chosen;
    OpeningFlow "opening_flow_ml_min" "mL/min" 1 false "flow through the opening", NoSource Memory;
    NeedleFlow "needle_table_ml_min" "mL/min" 2 false "flow in the table of needles", Identity Two;
    NeedleGauge "needle_gauge_row" "G" 0 false "gauge", Birmingham Two;
    NeedleOuter "needle_outer_mm" "mm" 3 false "outer diameter, nominal", Birmingham Two;
    NeedleBore "needle_bore_mm" "mm" 3 false "bore, nominal", Birmingham Two;
    NeedleLeast "needle_least_mm" "mm" 3 false "least bore, regular wall", Iso9626 Memory;
    NeedleThin "needle_least_thin_mm" "mm" 3 false "least bore, thin wall", Iso9626 Memory;
    NeedleDrop "needle_drop_mmhg" "mmHg" 0 false "lost, nominal bore", Here Chosen;
    NeedleDropLeast "needle_drop_least_mmhg" "mmHg" 0 false "lost, least bore", Here Chosen;

    ViscoelasticKpa "viscoelastic_kpa" "kPa" 2 false "the same", Sp811 Two;
    ViscoelasticCmh2o "viscoelastic_cmh2o" "cmH2O" 1 false "the same", Sp811 Two;
    Orientation "orientation_deg" "deg" 0 false "meridian of the lens at the end", Here Chosen;
}
