//! Everything that goes in: one table, named once.
//!
//! A field's key is its name in a case file and its column in a table of cases. Readers know nothing else: they fill a
//! [`crate::draft::Draft`] through this table, and the only door from there is [`crate::case::Case`].

use crate::bounds::{self, Bounds};
use crate::choice;
use crate::date::Date;
use crate::error::{Code, Error};
use crate::eye::misread;

/// A typed value that a draft keeps as a number.
pub(crate) trait Quantity: Sized {
    /// From a number that the door has let in as a field of this kind.
    fn admitted(value: f64) -> Option<Self>;

    /// Whether it is what a field of this kind takes.
    #[cfg(test)]
    fn is(kind: Kind) -> bool;
}

/// What kind of entry a field takes.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A decimal number with at most this many decimals, in these bounds.
    Number(u8, &'static Bounds),
    /// One of these words.
    Choice(&'static [&'static str]),
    /// A date, YYYY-MM-DD.
    Date,
    /// A short name.
    Name,
}

/// The tables of a case file, in the order of the fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// Keys before the first table.
    Case,
    /// `[biometry]`
    Biometry,
    /// `[posterior]`
    Posterior,
    /// `[spectacles]`
    Spectacles,
    /// `[laser]`
    Laser,
    /// `[fellow]`
    Fellow,
    /// `[target]`
    Target,
    /// `[lens]`
    Lens,
    /// `[toric]`
    Toric,
    /// `[backup]`
    Backup,
    /// `[second]`
    Second,
    /// `[incision]`
    Incision,
    /// `[capsule]`
    Capsule,
    /// `[pressure]`
    Pressure,
    /// `[flow]`
    Flow,
    /// `[tube]`
    Tube,
    /// `[certainty]`
    Certainty,
    /// `[after]`
    After,
    /// `[risks]`
    Risks,
}

impl Section {
    /// Every table, in the order of the fields.
    pub const ALL: &[Section] = &[
        Section::Case,
        Section::Biometry,
        Section::Posterior,
        Section::Spectacles,
        Section::Laser,
        Section::Fellow,
        Section::Target,
        Section::Lens,
        Section::Toric,
        Section::Backup,
        Section::Second,
        Section::Incision,
        Section::Capsule,
        Section::Pressure,
        Section::Flow,
        Section::Tube,
        Section::Certainty,
        Section::After,
        Section::Risks,
    ];

    /// Those that have a heading in a case file.
    ///
    /// ```
    /// assert!(ocellus_core::field::Section::tables().all(|table| !table.word().is_empty()));
    /// ```
    pub fn tables() -> impl Iterator<Item = Section> {
        Self::ALL.iter().copied().filter(|section| *section != Section::Case)
    }

    /// The name of the table in a case file; empty for keys before the first table.
    ///
    /// ```
    /// assert_eq!(ocellus_core::field::Section::Biometry.word(), "biometry");
    /// ```
    pub const fn word(self) -> &'static str {
        match self {
            Section::Case => "",
            Section::Biometry => "biometry",
            Section::Posterior => "posterior",
            Section::Spectacles => "spectacles",
            Section::Laser => "laser",
            Section::Fellow => "fellow",
            Section::Target => "target",
            Section::Lens => "lens",
            Section::Toric => "toric",
            Section::Backup => "backup",
            Section::Second => "second",
            Section::Incision => "incision",
            Section::Capsule => "capsule",
            Section::Pressure => "pressure",
            Section::Flow => "flow",
            Section::Tube => "tube",
            Section::Certainty => "certainty",
            Section::After => "after",
            Section::Risks => "risks",
        }
    }
}

macro_rules! kind {
    (number $places:literal $bounds:ident) => {
        Kind::Number($places, &bounds::$bounds)
    };
    (choice $name:ident) => {
        Kind::Choice(choice::$name::WORDS)
    };
    (date) => {
        Kind::Date
    };
    (name) => {
        Kind::Name
    };
}

macro_rules! default {
    () => {
        None
    };
    ($value:literal) => {
        Some($value as f64)
    };
}

macro_rules! fields {
    ($($section:ident { $($id:ident $key:literal $word:literal ($($kind:tt)+) $(= $default:literal)? $what:literal;)+ })+) => {
        /// An entry of a case, in canonical order.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        #[repr(u8)]
        pub enum Field { $($(#[doc = $what] $id,)+)+ }

        impl Field {
            /// Every field, in canonical order.
            pub const ALL: &[Field] = &[$($(Field::$id,)+)+];
            /// How many fields there are.
            pub const COUNT: usize = Self::ALL.len();

            /// Its name in a case file and in a table's header.
            ///
            /// ```
            /// assert_eq!(ocellus_core::field::Field::AxialLength.key(), "axial_length_mm");
            /// ```
            pub const fn key(self) -> &'static str { packed!(self, $($($key),+),+) }

            /// The short word by which it is typed, the trade's own where there is one.
            ///
            /// ```
            /// assert_eq!(ocellus_core::field::Field::AxialLength.word(), "al");
            /// ```
            pub const fn word(self) -> &'static str { packed!(self, $($($word),+),+) }

            /// What it is, for a person.
            ///
            /// ```
            /// assert_eq!(ocellus_core::field::Field::AxialLength.what(), "axial length");
            /// ```
            pub const fn what(self) -> &'static str { packed!(self, $($($what),+),+) }

            /// The table it stands in.
            ///
            /// ```
            /// use ocellus_core::field::{Field, Section};
            /// assert_eq!(Field::AxialLength.section(), Section::Biometry);
            /// ```
            pub const fn section(self) -> Section { match self { $($(Field::$id)|+ => Section::$section,)+ } }

            /// The kind of entry it takes.
            ///
            /// ```
            /// use ocellus_core::field::{Field, Kind};
            /// assert!(matches!(Field::AxialLength.kind(), Kind::Number(2, bounds) if bounds.max == 40.0));
            /// ```
            pub const fn kind(self) -> Kind { match self { $($(Field::$id => kind!($($kind)+),)+)+ } }

            /// The value used when it is not entered, always said on the card.
            ///
            /// ```
            /// assert_eq!(ocellus_core::field::Field::Density.default(), Some(1000.0));
            /// ```
            pub const fn default(self) -> Option<f64> { match self { $($(Field::$id => default!($($default)?),)+)+ } }
        }
    };
}

fields! {
    Case {
        Id "id" "id" (name) "label of the case";
        Side "eye" "eye" (choice Eye) "eye";
        SurgeryDate "surgery_date" "date" (date) "date of the operation";
    }
    Biometry {
        AxialLength "axial_length_mm" "al" (number 2 AXIAL_LENGTH) "axial length";
        K1 "k1_d" "k1" (number 2 CORNEAL_POWER) "corneal power 1";
        K1Axis "k1_axis_deg" "k1axis" (number 0 AXIS) "axis of meridian 1";
        K2 "k2_d" "k2" (number 2 CORNEAL_POWER) "corneal power 2";
        K2Axis "k2_axis_deg" "k2axis" (number 0 AXIS) "axis of meridian 2";
        R1 "r1_mm" "r1" (number 2 CORNEAL_RADIUS) "corneal radius 1";
        R2 "r2_mm" "r2" (number 2 CORNEAL_RADIUS) "corneal radius 2";
        Index "keratometric_index" "index" (number 4 KERATOMETRIC_INDEX) = 1.3375 "keratometric index";
        KKind "k_kind" "kkind" (choice KKind) "kind of keratometry";
        Acd "acd_mm" "acd" (number 2 CHAMBER_DEPTH) "anterior chamber depth";
        AcdFrom "acd_from" "acdfrom" (choice AcdFrom) "where the chamber depth starts";
        LensThickness "lens_thickness_mm" "lt" (number 2 LENS_THICKNESS) "thickness of the natural lens";
        WhiteToWhite "white_to_white_mm" "wtw" (number 2 WHITE_TO_WHITE) "corneal diameter, white to white";
        CornealThickness "corneal_thickness_um" "cct" (number 0 CORNEAL_THICKNESS) "central corneal thickness";
        AlMethod "al_method" "almethod" (choice AlMethod) "how the axial length was measured";
        EyeState "eye_state" "state" (choice EyeState) "what was in the eye when measured";
        PreviousSurgery "previous_surgery" "surgery" (choice PreviousSurgery) "previous corneal surgery";
        BiometryDate "biometry_date" "biometry" (date) "date of the biometry";
        Quality "biometry_quality" "quality" (choice Quality) "quality of the biometry";
        ContactLens "contact_lens" "contacts" (choice ContactLens) "contact lenses before biometry";
        AlScatter "axial_length_sd_mm" "alsd" (number 3 SCATTER_LENGTH) "SD of repeated axial lengths";
        KScatter "k_sd_d" "ksd" (number 2 SCATTER_POWER) "SD of repeated corneal powers";
        AcdScatter "acd_sd_mm" "acdsd" (number 3 SCATTER_LENGTH) "SD of repeated chamber depths";
    }
    Posterior {
        BackFrom "posterior_from" "back" (choice BackFrom) = 0 "back of the cornea taken from";
        BackR1 "posterior_r1_mm" "br1" (number 2 BACK_RADIUS) "back of the cornea, radius 1";
        BackR1Axis "posterior_r1_axis_deg" "br1axis" (number 0 AXIS) "back of the cornea, axis 1";
        BackR2 "posterior_r2_mm" "br2" (number 2 BACK_RADIUS) "back of the cornea, radius 2";
        BackR2Axis "posterior_r2_axis_deg" "br2axis" (number 0 AXIS) "back of the cornea, axis 2";
    }
    Spectacles {
        OldSphere "old_sphere_d" "oldsphere" (number 2 REFRACTION) "sphere of the old spectacles";
        OldCylinder "old_cylinder_d" "oldcyl" (number 2 CYLINDER) "cylinder of the old spectacles";
        OldAxis "old_axis_deg" "oldaxis" (number 0 AXIS) "axis of the old spectacles";
    }
    Laser {
        KBefore "k_before_d" "kbefore" (number 2 CORNEAL_POWER) "mean K before the laser, at 1.3375";
        RefractionBefore "refraction_before_d" "rxbefore" (number 2 REFRACTION) "spherical equivalent before laser";
        RefractionAfter "refraction_after_d" "rxafter" (number 2 REFRACTION) "spherical equivalent after, stable";
        KAfter "k_after_d" "kafter" (number 2 CORNEAL_POWER) "K after the laser, estimated, 1.3375";
        KAfterFrom "k_after_from" "kafterfrom" (choice KAfterFrom) "where that estimate comes from";
    }
    Fellow {
        FellowAxialLength "fellow_axial_length_mm" "fal" (number 2 AXIAL_LENGTH) "fellow eye, axial length";
        FellowK1 "fellow_k1_d" "fk1" (number 2 CORNEAL_POWER) "fellow eye, corneal power 1";
        FellowK2 "fellow_k2_d" "fk2" (number 2 CORNEAL_POWER) "fellow eye, corneal power 2";
        FellowRefraction "fellow_refraction_d" "frx" (number 2 REFRACTION) "fellow eye, refraction today";
        FellowState "fellow_state" "fstate" (choice EyeState) "fellow eye, what is in it";
        FellowPredicted "fellow_predicted_d" "fpredicted" (number 2 REFRACTION) "fellow eye, spherical eq. predicted";
    }
    Target {
        Target "target_d" "target" (number 2 REFRACTION) "agreed target, spherical equivalent";
        TargetFor "target_for" "purpose" (choice TargetFor) "what that target is for";
        Vertex "vertex_mm" "vertex" (number 1 VERTEX) = 12 "vertex distance";
    }
    Lens {
        LensModel "lens_model" "model" (name) "lens model";
        AConstant "a_constant" "a" (number 2 A_CONSTANT) "A-constant";
        SurgeonFactor "surgeon_factor" "sf" (number 3 SURGEON_FACTOR) "surgeon factor";
        Pacd "pacd_mm" "pacd" (number 3 PACD) "pACD";
        HaigisA0 "haigis_a0" "a0" (number 3 HAIGIS_A0) "Haigis a0";
        HaigisA1 "haigis_a1" "a1" (number 3 HAIGIS_SLOPE) "Haigis a1";
        HaigisA2 "haigis_a2" "a2" (number 3 HAIGIS_SLOPE) "Haigis a2";
        ConstantsFrom "constants_from" "constfrom" (choice ConstantsFrom) "where these constants come from";
        LongEye "long_eye_adjustment" "longeye" (choice LongEye) "adjustment for a long eye";
        LabelRule "label_rule" "rule" (choice LabelRule) "label to point out";
        LensPower "iol_power_d" "iol" (number 2 LENS_POWER) "lens power chosen, on its label";
        LensStep "lens_step_d" "step" (number 2 LABEL_STEP) = 0.5 "step between label powers";
        LensLeast "lens_least_d" "least" (number 2 LENS_POWER) "weakest power of this model";
        LensMost "lens_most_d" "most" (number 2 LENS_POWER) "strongest power of this model";
        LensStyle "lens_style" "style" (choice LensStyle) "how the lens is made";
        Optic "optic_mm" "optic" (number 2 OPTIC) "optic diameter";
        LensLength "lens_length_mm" "lenslength" (number 2 LENS_LENGTH) "overall length of the lens";
        FrontRadius "lens_front_radius_mm" "lr1" (number 2 LENS_RADIUS) "front lens radius, convex is plus";
        BackRadius "lens_back_radius_mm" "lr2" (number 2 LENS_RADIUS) "back lens radius, convex is minus";
        LensCentre "lens_centre_mm" "lct" (number 2 LENS_CENTRE) "thickness of the lens at its centre";
        LensIndex "lens_index" "lindex" (number 3 LENS_INDEX) "refractive index of the lens";
        HapticAxis "haptic_axis_deg" "haptics" (number 0 AXIS) "meridian for the haptics";
        ShowSrk2 "show_srk2" "srk2" (choice YesNo) "show the superseded SRK II too";
    }
    Toric {
        LabelPower "label_power" "labelpower" (choice LabelPower) "power on the toric label means";
        CylinderPlane "cylinder_plane" "cylplane" (choice CylinderPlane) "cylinder on the label is at";
        Cylinder1 "cylinder_1_d" "cyl1" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder2 "cylinder_2_d" "cyl2" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder3 "cylinder_3_d" "cyl3" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder4 "cylinder_4_d" "cyl4" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder5 "cylinder_5_d" "cyl5" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder6 "cylinder_6_d" "cyl6" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder7 "cylinder_7_d" "cyl7" (number 2 LENS_CYLINDER) "label cylinder";
        Cylinder8 "cylinder_8_d" "cyl8" (number 2 LENS_CYLINDER) "label cylinder";
        LensCylinder "iol_cylinder_d" "iolcyl" (number 2 LENS_CYLINDER) "lens cylinder chosen, on its label";
        LensAxis "iol_axis_deg" "iolaxis" (number 0 AXIS) "meridian chosen for the lens mark";
        Marked "axis_marked" "marked" (choice Marked) "patient, when the axis was marked";
    }
    Backup {
        BackupModel "backup_model" "bmodel" (name) "backup lens model";
        BackupAConstant "backup_a_constant" "ba" (number 2 A_CONSTANT) "A-constant of the backup lens";
        BackupStyle "backup_style" "bstyle" (choice LensStyle) "how the backup lens is made";
        BackupPlace "backup_place" "bplace" (choice BackupPlace) "where the backup lens would go";
        SulcusShift "sulcus_shift_mm" "sulcus" (number 2 SULCUS_SHIFT) = 0.75 "sulcus lies before the bag by";
        BackupPower "backup_power_d" "biol" (number 2 LENS_POWER) "backup power chosen, on its label";
    }
    Second {
        SecondFor "second_for" "secondfor" (choice SecondFor) "lens by refraction, for";
        RefractionNow "refraction_now_d" "rxnow" (number 2 REFRACTION) "spherical equivalent today";
        LensInEye "lens_in_eye_d" "iolnow" (number 2 LENS_POWER) "power of the lens in the eye";
        SecondPlace "second_place" "secondplace" (choice SecondPlace) "where that lens would go";
        SecondPosition "second_position_mm" "secondpos" (number 2 LENS_POSITION) "its position behind the cornea";
        SecondStyle "second_style" "secondstyle" (choice LensStyle) "how that lens is made";
        SecondPower "second_power_d" "iol2" (number 2 LENS_POWER) "its power chosen, on its label";
    }
    Incision {
        IncisionSite "incision_site_deg" "site" (number 0 SITE) "incision site, from the front";
        SiteWord "incision_site_word" "siteword" (choice SiteWord) "incision site, in words";
        ClockHour "incision_clock_h" "clock" (number 1 CLOCK_HOUR) "incision site, clock hour";
        ClockSeen "clock_seen_from" "clockseen" (choice ClockSeen) "from where that clock is read";
        Flattening "incision_flattening_d" "sia" (number 2 FLATTENING) "surgeon's own flattening (SIA)";
        Centroid "sia_centroid_d" "centroid" (number 2 FLATTENING) "surgeon's own centroid, size";
        CentroidAxis "sia_centroid_axis_deg" "centroidaxis" (number 0 AXIS) "meridian the centroid steepens";
        PairedFlattening "paired_flattening_d" "pairsia" (number 2 FLATTENING) "flattening, paired cut opposite";
        OtherSite "other_site_deg" "site2" (number 0 SITE) "another cut's site, from the front";
        OtherFlattening "other_flattening_d" "sia2" (number 2 FLATTENING) "flattening by that cut";
        WoundWidth "incision_width_mm" "width" (number 2 WOUND) "width of the incision";
        TunnelLength "tunnel_length_mm" "tunnel" (number 2 WOUND) "length of the tunnel";
        Seat "seat" "seat" (choice Seat) "where the surgeon sits";
    }
    Capsule {
        Cut "rhexis_cut_mm" "cut" (number 2 CUT) "radial first cut of the rhexis";
        Grasp "grasp_mm" "grasp" (number 2 GRASP) "edge torn between grasps";
        Decentration "rhexis_decentration_mm" "decentred" (number 2 DECENTRATION) "rhexis decentred on the optic by";
        CapsuleDepth "capsule_depth_mm" "depth" (number 2 CAPSULE_DEPTH) "depth of the capsule today";
    }
    Pressure {
        OpenLevel "open_level_cm" "open" (number 1 LEVEL) "drip chamber or vent level";
        EyeLevel "eye_level_cm" "eyelevel" (number 1 LEVEL) "level of the eye, same datum";
        GasPressure "gas_pressure_mmhg" "gas" (number 1 GAS_PRESSURE) = 0 "gas pressure over the fluid";
        SetPressure "set_pressure_mmhg" "setpressure" (number 1 GAS_PRESSURE) "irrigating pressure set on a machine";
        AssumedLevel "assumed_eye_level_cm" "assumed" (number 1 LEVEL) "eye level that machine reckons with";
        WantedPressure "wanted_pressure_mmhg" "wanted" (number 1 GAS_PRESSURE) "pressure wanted at the eye, no flow";
        DensityFrom "density_from" "densityfrom" (choice FluidFrom) = 0 "density of the fluid taken from";
        Density "density_kg_m3" "density" (number 1 DENSITY) = 1000 "density of the irrigating fluid";
        Altitude "altitude_m" "altitude" (number 0 ALTITUDE) "map height of the theatre";
        StationPressure "station_pressure_hpa" "station" (number 1 STATION_PRESSURE) "air pressure measured in the theatre";
        Temperature "fluid_temperature_c" "temp" (number 1 TEMPERATURE) = 20 "temperature of the fluid";
        PumpLevel "pump_level_cm" "pump" (number 1 LEVEL) "level of the pump, same datum";
        VacuumNucleus "vacuum_nucleus_mmhg" "nucleus" (number 0 VACUUM) "vacuum for the nucleus";
        VacuumCortex "vacuum_cortex_mmhg" "cortex" (number 0 VACUUM) "vacuum for the cortex";
        VacuumViscoelastic "vacuum_viscoelastic_mmhg" "ovd" (number 0 VACUUM) "vacuum for removing viscoelastic";
    }
    Flow {
        PumpKind "pump_kind" "pumpkind" (choice PumpKind) "what is set on the pump";
        Aspiration "aspiration_ml_min" "aspiration" (number 1 ASPIRATION) "aspiration flow";
        InfusionResistance "infusion_resistance_mmhg_min_ml" "rin" (number 3 RESISTANCE) "resistance of the infusion line";
        AspirationResistance "aspiration_resistance_mmhg_min_ml" "rasp" (number 3 RESISTANCE) "resistance of tip and tubing";
        Leak "leak_ml_min" "leak" (number 1 ASPIRATION) = 0 "leak while nothing is aspirated";
        ReadingFlow1 "reading_1_flow_ml_min" "flow1" (number 1 ASPIRATION) "reading 1, aspiration flow";
        ReadingPressure1 "reading_1_pressure_mmhg" "pressure1" (number 1 GAS_PRESSURE) "reading 1, pressure in the chamber";
        ReadingFlow2 "reading_2_flow_ml_min" "flow2" (number 1 ASPIRATION) "reading 2, aspiration flow";
        ReadingPressure2 "reading_2_pressure_mmhg" "pressure2" (number 1 GAS_PRESSURE) "reading 2, pressure in the chamber";
        TipBore "tip_bore_mm" "tip" (number 2 TIP_BORE) "inner bore of the tip";
        EyeCompliance "eye_compliance_ul_mmhg" "ceye" (number 3 COMPLIANCE) "compliance of the eye";
        TubingCompliance "tubing_compliance_ul_mmhg" "ctube" (number 3 COMPLIANCE) "compliance of the aspiration line";
        SurgeStep "surge_step_ms" "surgestep" (number 3 SURGE_STEP) "step of the integration";
    }
    Tube {
        Gauge "needle_gauge" "gauge" (number 0 GAUGE) "gauge of the needle";
        Bore "bore_mm" "bore" (number 3 BORE) "inner bore of the tube";
        TubeLength "tube_length_mm" "tubelength" (number 1 TUBE_LENGTH) "length of the tube";
        SideBySide "tubes_side_by_side" "sidebyside" (number 0 TUBES) = 1 "such tubes side by side";
        Bore2 "bore_2_mm" "bore2" (number 3 BORE) "inner bore of a tube in series";
        TubeLength2 "tube_length_2_mm" "tubelength2" (number 1 TUBE_LENGTH) "length of that tube";
        TubeFlow "tube_flow_ml_min" "flow" (number 2 TUBE_FLOW) "flow through all of it";
        Drive "driving_pressure_mmhg" "drive" (number 1 DRIVE) "pressure that drives the flow";
        Volume "volume_ml" "volume" (number 2 VOLUME) "volume to go through";
        ViscosityFrom "viscosity_from" "viscfrom" (choice ViscosityFrom) = 0 "viscosity of the fluid taken from";
        Viscosity "viscosity_mpa_s" "viscosity" (number 3 VISCOSITY) "viscosity of the fluid";
        SyringeBore "syringe_bore_mm" "syringe" (number 2 SYRINGE_BORE) "inner bore of the syringe";
        Friction "plunger_friction_n" "friction" (number 2 FRICTION) = 0 "friction of its plunger";
        Opening "opening_mm" "opening" (number 2 OPENING) "diameter of an opening";
        Discharge "discharge_coefficient" "cd" (number 2 DISCHARGE) = 0.62 "discharge coefficient of that opening";
    }
    Certainty {
        PositionSd "lens_position_sd_mm" "elpsd" (number 2 SCATTER_LENGTH) = 0.25 "SD of the lens position";
        RefractionSd "refraction_sd_d" "rxsd" (number 2 SCATTER_POWER) = 0.3 "SD of a refraction after surgery";
        AstigmatismSd "astigmatism_sd_d" "cylsd" (number 2 SCATTER_POWER) = 0.2 "SD, corneal astigmatism, component";
        IncisionSd "incision_sd_d" "siasd" (number 2 SCATTER_POWER) = 0.2 "SD, incision's effect, component";
        AlignmentSd "alignment_sd_deg" "alignsd" (number 1 ALIGNMENT_SCATTER) "SD of the lens's angle, by placing";
    }
    After {
        AfterK1 "after_k1_d" "ak1" (number 2 CORNEAL_POWER) "postoperative corneal power 1";
        AfterK1Axis "after_k1_axis_deg" "ak1axis" (number 0 AXIS) "postoperative, axis of meridian 1";
        AfterK2 "after_k2_d" "ak2" (number 2 CORNEAL_POWER) "postoperative corneal power 2";
        AfterK2Axis "after_k2_axis_deg" "ak2axis" (number 0 AXIS) "postoperative, axis of meridian 2";
        AfterSphere "after_sphere_d" "asph" (number 2 REFRACTION) "postoperative sphere";
        AfterCylinder "after_cylinder_d" "acyl" (number 2 CYLINDER) "postoperative cylinder, either sign";
        AfterAxis "after_axis_deg" "aaxis" (number 0 AXIS) "postoperative axis of that cylinder";
        MarkFound "mark_found_deg" "markfound" (number 0 AXIS) "meridian where the lens mark lies";
    }
    Risks {
        FloppyIris "floppy_iris_drug" "floppy" (choice YesNo) "drug that makes the iris floppy";
        Pseudoexfoliation "pseudoexfoliation" "pxf" (choice YesNo) "pseudoexfoliation";
        WeakZonule "weak_zonule" "zonule" (choice YesNo) "weak zonule";
        PosteriorPolar "posterior_polar" "polar" (choice YesNo) "posterior polar cataract";
        Vitrectomised "vitrectomised" "vitrectomy" (choice YesNo) "vitreous removed";
        Guttata "guttata" "guttata" (choice YesNo) "corneal guttata";
        SmallPupil "small_pupil" "pupil" (choice YesNo) "small pupil";
        IodineAllergy "iodine_allergy" "iodine" (choice YesNo) "allergy to iodine";
        AntibioticAllergy "antibiotic_allergy" "antibiotic" (choice YesNo) "allergy to the antibiotic";
    }
}

/// Some of the fields, a bit each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct FieldSet([u8; Field::COUNT.div_ceil(8)]);

impl FieldSet {
    pub(crate) const NONE: FieldSet = FieldSet([0; Field::COUNT.div_ceil(8)]);

    pub(crate) fn has(&self, field: Field) -> bool {
        self.0.get(field as usize / 8).is_some_and(|byte| byte & bit(field) != 0)
    }

    pub(crate) fn put(&mut self, field: Field, is_in: bool) {
        if let Some(byte) = self.0.get_mut(field as usize / 8) {
            *byte = if is_in { *byte | bit(field) } else { *byte & !bit(field) };
        }
    }
}

const fn bit(field: Field) -> u8 {
    1 << (field as u8 % 8)
}

impl Field {
    /// The field with this key.
    ///
    /// ```
    /// use ocellus_core::field::Field;
    /// assert_eq!(Field::from_key("axial_length_mm"), Some(Field::AxialLength));
    /// assert_eq!(Field::from_key("axial_length"), None);
    /// ```
    pub fn from_key(key: &str) -> Option<Field> {
        Field::ALL.iter().copied().find(|f| f.key() == key)
    }

    /// Whether a value is of its kind: a number in its range, a word of its list, a date of the calendar.
    ///
    /// # Errors
    /// [`Code::OutOfRange`], or [`Code::WrongUnit`] where it looks like another quantity; [`Code::NotANumber`],
    /// [`Code::NotAWord`], [`Code::NotADate`].
    ///
    /// ```
    /// use ocellus_core::{error::Code, field::Field};
    /// assert_eq!(Field::K1.check(43.25), Ok(()));
    /// assert_eq!(Field::K1.check(7.8).unwrap_err().code, Code::WrongUnit);
    /// ```
    pub fn check(self, value: f64) -> Result<(), Error> {
        let refused = |code| Error { value: value.is_finite().then_some(value), ..Error::of(code, self) };
        match self.kind() {
            Kind::Number(_, bounds) => bounds.check(value).map(drop).map_err(|error| misread::named(error.at(self))),
            Kind::Choice(words) if (0..words.len()).any(|code| code as f64 == value) => Ok(()),
            Kind::Choice(_) => Err(refused(Code::NotAWord)),
            Kind::Date => Date::from_number(value).map(drop).map_err(refused),
            Kind::Name => Ok(()),
        }
    }

    /// The unit that is printed after its value; empty where there is none.
    ///
    /// ```
    /// assert_eq!(ocellus_core::field::Field::AxialLength.unit(), "mm");
    /// ```
    pub fn unit(self) -> &'static str {
        match self.kind() {
            Kind::Number(_, bounds) if bounds.unit != "1" => bounds.unit,
            _ => "",
        }
    }

    /// Whether its value is also written in words: the powers and the target that are read out at the table.
    ///
    /// ```
    /// use ocellus_core::field::Field;
    /// assert!(Field::LensPower.spoken() && !Field::OldSphere.spoken());
    /// ```
    pub fn spoken(self) -> bool {
        matches!(self, Field::LensPower | Field::Target | Field::BackupPower | Field::SecondPower)
    }

    /// Whether it is printed with its sign always: every power and refraction, where a lost sign is a wrong lens.
    ///
    /// ```
    /// use ocellus_core::field::Field;
    /// assert!(Field::Target.signed() && !Field::K1.signed());
    /// ```
    pub fn signed(self) -> bool {
        // a lens cylinder is never minus, and is read out with its plus all the same
        let cylinder = |bounds| core::ptr::eq(bounds, &bounds::LENS_CYLINDER);
        matches!(self.kind(), Kind::Number(_, bounds) if bounds.unit == "D" && (bounds.min < 0.0 || cylinder(bounds)))
    }
}
