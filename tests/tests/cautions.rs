//! Every caution there is: the entry that brings it onto the card, and that it was not there before.

use ocellus_core::case::Case;
use ocellus_core::caution::{Caution, Code};
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::Item;
use ocellus_core::plan::plan;
use ocellus_core::sink::Sink;

/// A case of which nothing is said that need not be said of every case.
const QUIET: &str = "eye right; surgery_date 2026-12-01; axial_length_mm 23.50; k1_d 43.00; k1_axis_deg 180; k2_d 44.00; \
    k2_axis_deg 90; keratometric_index 1.3375; k_kind keratometric; acd_mm 3.20; acd_from epithelium; al_method optical; \
    eye_state phakic; previous_surgery none; biometry_date 2026-11-01; target_d -0.25; vertex_mm 12.0; lens_model Demo; \
    a_constant 118.90; surgeon_factor 1.760; pacd_mm 5.520; haigis_a0 -0.780; haigis_a1 0.220; haigis_a2 0.210; \
    iol_power_d 21.00; lens_step_d 0.50; optic_mm 6.00; backup_a_constant 118.20; backup_style three_piece; \
    backup_place sulcus; sulcus_shift_mm 0.75; backup_power_d 19.00; incision_site_deg 180; incision_flattening_d 0.20; \
    seat temporal; rhexis_decentration_mm 0.30; guttata no; constants_from optimised; axial_length_sd_mm 0.015; k_sd_d 0.20; \
    acd_sd_mm 0.020; lens_position_sd_mm 0.25; refraction_sd_d 0.30";

/// Entries to make (or, with a leading `-`, to leave out), and the cautions that follow.
const CAUSES: &[(&str, &[Code])] = &[
    ("axial_length_mm 21.00", &[Code::AlUnusual, Code::ShortEye]),
    ("axial_length_mm 27.00", &[Code::LongEye, Code::LongOrVitrectomised, Code::FarFromTarget]),
    ("pacd_mm 6.500", &[Code::SpreadWide]),
    ("k1_d 40.00; k2_d 41.00", &[Code::KUnusual]),
    ("k1_d 42.00; k2_d 45.00", &[Code::AstigmatismLarge]),
    ("white_to_white_mm 10.50", &[Code::WtwUnusual]),
    ("fellow_axial_length_mm 24.50", &[Code::AlBetweenEyes]),
    ("fellow_axial_length_mm 24.00", &[Code::AlBetweenEyesOlder]),
    ("fellow_k1_d 44.50; fellow_k2_d 45.50", &[Code::KBetweenEyes]),
    ("axial_length_sd_mm 0.060", &[Code::AlScatter]),
    ("k_sd_d 0.60", &[Code::KScatter]),
    ("acd_sd_mm 0.080", &[Code::AcdScatter]),
    ("fellow_axial_length_mm 23.50; fellow_k1_d 44.00; fellow_k2_d 43.00", &[Code::FellowIdentical]),
    ("k2_axis_deg 80", &[Code::AxesNotSquare]),
    ("k2_axis_deg 178", &[Code::AxesSame]),
    ("k2_d 44.50; old_sphere_d 0.50; old_cylinder_d -1.50; old_axis_deg 90", &[Code::AxesCrossed]),
    ("-k1_axis_deg; -k2_axis_deg", &[Code::AxesUnknown]),
    ("k2_d 43.00", &[Code::NoAstigmatism]),
    ("keratometric_index 1.3360", &[Code::IndexUnusual]),
    ("old_sphere_d -6.00", &[Code::SpectaclesDisagree]),
    (
        "old_sphere_d 0.00; fellow_axial_length_mm 23.60; fellow_k1_d 43.10; fellow_k2_d 43.90; fellow_refraction_d -4.00",
        &[Code::FellowDisagrees, Code::Anisometropia],
    ),
    ("biometry_date 2026-01-01", &[Code::BiometryOld]),
    ("-biometry_date", &[Code::BiometryUndated]),
    ("biometry_quality reduced", &[Code::QualityReduced]),
    ("contact_lens worn", &[Code::ContactLensWorn]),
    ("al_method contact", &[Code::AlContact]),
    ("al_method immersion", &[Code::AlImmersion]),
    ("eye_state pseudophakic", &[Code::NotPhakic, Code::NotMeasuredPhakic]),
    (
        "previous_surgery hyperopic_laser; -a_constant; -surgeon_factor; -pacd_mm; -haigis_a0; -haigis_a1; -haigis_a2",
        &[Code::PreviousSurgery],
    ),
    ("LASER", &[Code::AfterLaser, Code::NoBudget]),
    ("previous_surgery hyperopic_laser", &[Code::NotThisEye, Code::NeedsKBefore, Code::AfterLaser]),
    ("LASER; TORIC", &[Code::ToricAfterLaser]),
    ("LASER; -k_after_d; -k_after_from", &[Code::NeedsKAfter]),
    ("LASER; k_after_from keratometer", &[Code::RawKAfter]),
    ("LASER; k_after_from history", &[Code::KFromHistory]),
    ("LASER; k_after_from both_surfaces", &[Code::KBothSurfaces]),
    ("LASER; k_after_d 36.00", &[Code::KAfterDiffers]),
    ("axial_length_mm 27.00; long_eye_adjustment set_2018", &[Code::LengthAdjusted]),
    ("axial_length_mm 27.00; long_eye_adjustment compared", &[Code::LongEye, Code::SetsCompared]),
    ("axial_length_mm 19.50", &[Code::VeryShort]),
    ("surgeon_factor 3.000", &[Code::ConstantsApart]),
    ("constants_from maker", &[Code::ConstantsOfMaker, Code::NoInterval]),
    ("fellow_refraction_d 1.00; fellow_predicted_d -0.25", &[Code::FirstEyeNoLens]),
    ("LASER; previous_surgery hyperopic_laser", &[Code::LaserKind]),
    ("LASER; k_after_d 41.50", &[Code::KAfterToday]),
    ("LASER; SECOND", &[Code::SecondLaser]),
    ("axial_length_mm 14.00; k1_d 36.00; k2_d 36.50", &[Code::NoSuchLens]),
    ("SECOND; second_for exchange; lens_in_eye_d 20.00", &[Code::FirstLensBag]),
    ("label_rule nearest; TORIC; label_power flattest_meridian", &[Code::RuleNeedsCylinder]),
    ("al_method immersion; -axial_length_sd_mm", &[Code::SdNeeded]),
    ("label_rule nearest", &[Code::RuleUsed]),
    ("label_rule first_myopic; lens_most_d 15.00", &[Code::RuleNone]),
    ("-k_sd_d", &[Code::SdUsual]),
    ("-refraction_sd_d", &[Code::SdMemory]),
    ("axial_length_sd_mm 0.200", &[Code::RepeatAl]),
    ("acd_sd_mm 2.000", &[Code::RepeatAcd]),
    (
        "fellow_refraction_d 1.00; fellow_predicted_d -0.25; fellow_state pseudophakic",
        &[Code::HalfOfFirst, Code::FirstEyeFar],
    ),
    ("SECOND", &[Code::SecondVergence, Code::FirstLensHidden, Code::SecondState, Code::NoSecondPower]),
    ("SECOND; second_power_d 9.00", &[Code::SecondFar, Code::TwoLenses]),
    ("SECOND; second_for aphakic; refraction_now_d -12.00", &[Code::SecondApart]),
    (
        "SECOND; -second_position_mm; -a_constant; -surgeon_factor; -pacd_mm; -haigis_a0; -haigis_a1; -haigis_a2",
        &[Code::SecondNeedsPosition],
    ),
    ("SECOND; second_for exchange", &[Code::SecondNeedsLens]),
    ("SECOND; second_place bag", &[Code::AddedInBag]),
    ("SECOND; second_for aphakic; -axial_length_mm; -al_method", &[Code::NeedsLength]),
    (
        "lens_front_radius_mm 12.00; lens_back_radius_mm -12.00; lens_centre_mm 0.90; lens_index 1.470",
        &[Code::SurfacesDisagree, Code::PositionPlane],
    ),
    ("previous_surgery graft", &[Code::CorneaUnfit]),
    ("previous_surgery unknown", &[Code::CorneaUnfit]),
    ("k_kind total", &[Code::TotalK]),
    ("eye_state silicone_oil", &[Code::SiliconeOil]),
    ("-a_constant", &[Code::NeedsConstant]),
    ("-acd_mm; -acd_from", &[Code::NeedsAcd]),
    ("acd_from endothelium", &[Code::NeedsCct]),
    ("axial_length_mm 12.00; haigis_a0 13.000; haigis_a1 0.000; haigis_a2 0.000", &[Code::NoSolution, Code::Clamped]),
    ("-a_constant; -surgeon_factor; -pacd_mm; -haigis_a0; -haigis_a1; -haigis_a2", &[Code::NoMethod]),
    ("-surgeon_factor; -pacd_mm", &[Code::Converted]),
    ("-haigis_a0; -haigis_a1; -haigis_a2", &[Code::Unoptimised]),
    ("-haigis_a1; -haigis_a2", &[Code::UsualSlopes]),
    ("axial_length_mm 26.60; k1_d 48.00; k2_d 48.50", &[Code::Radicand]),
    ("axial_length_mm 24.40; k1_d 47.90; k2_d 48.70", &[Code::DepartsFromT2]),
    ("axial_length_mm 36.50", &[Code::RetinaTurned, Code::LcorTurned, Code::Clamped]),
    ("show_srk2 yes", &[Code::Superseded]),
    ("-a_constant; -surgeon_factor; -haigis_a0; -haigis_a1; -haigis_a2", &[Code::NothingToCompare]),
    ("-iol_power_d", &[Code::NoLensChosen]),
    ("iol_power_d -21.00", &[Code::MinusPower]),
    ("backup_power_d -19.00", &[Code::MinusPower, Code::BackupFar]),
    ("iol_power_d 21.25", &[Code::OffLabel]),
    ("lens_most_d 20.00", &[Code::OutOfRange]),
    ("lens_least_d 25.00; lens_most_d 30.00", &[Code::ModelFallsShort, Code::OutOfRange]),
    ("target_d 0.50", &[Code::TargetUnusual]),
    ("fluid_temperature_c 37.0", &[Code::Unused]),
    ("-vertex_mm", &[Code::DefaultUsed]),
    ("-lens_model", &[Code::LensModelMissing]),
    ("-backup_a_constant; -backup_style; -backup_place; -backup_power_d", &[Code::NoBackup]),
    ("-backup_power_d", &[Code::NoBackupPower]),
    ("backup_style one_piece", &[Code::OnePieceSulcus]),
    ("-backup_style", &[Code::BackupStyleUnknown]),
    ("backup_place captured", &[Code::CapturedOptic]),
    ("-k1_axis_deg; -k2_axis_deg; TORIC", &[Code::ToricNeedsAxes]),
    ("-incision_flattening_d; TORIC", &[Code::ToricNeedsIncision]),
    ("-iol_power_d; TORIC", &[Code::ToricNeedsPower]),
    ("TORIC; cylinder_plane cornea", &[Code::CorneaPlaneLabel]),
    ("TORIC; label_power flattest_meridian", &[Code::LabelNeedsCylinder, Code::LabelWeaker]),
    ("TORIC", &[Code::PosteriorIgnored, Code::ResidualNominal]),
    ("TORIC; iol_cylinder_d 6.00; iol_axis_deg 90", &[Code::ResidualLarge]),
    ("TORIC; cylinder_1_d 6.00", &[Code::ToricNotNeeded, Code::OverCorrects]),
    ("TORIC; axis_marked lying", &[Code::MarkedLying]),
    ("TORIC", &[Code::MarkedUnknown]),
    ("posterior_from eom_2015", &[Code::BackCorrected]),
    ("posterior_from eom_2015; k1_axis_deg 152; k2_axis_deg 62", &[Code::ClassEdge]),
    ("posterior_from goggin_2015; TORIC; k2_d 47.00", &[Code::GogginBeyond]),
    ("posterior_from measured; BACK", &[Code::BackMeasured]),
    ("TURNED; mark_found_deg 102", &[Code::TurnSense, Code::TurnLeaves]),
    ("TURNED; mark_found_deg 102; after_cylinder_d 0.75", &[Code::TurnAway]),
    ("TURNED; mark_found_deg 12", &[Code::MarkAcross]),
    ("TURNED; mark_found_deg 102; after_cylinder_d -0.75; after_axis_deg 12", &[Code::TurnLittle]),
    (
        "TURNED; mark_found_deg 102; after_cylinder_d -5.00; after_axis_deg 60",
        &[Code::TurnNotEnough, Code::TurnDisagrees],
    ),
    ("TORIC; iol_cylinder_d 1.50; iol_axis_deg 10", &[Code::AxisAcross]),
    ("-incision_flattening_d; sia_centroid_d 0.20; sia_centroid_axis_deg 5", &[Code::CentroidAlong]),
    ("posterior_from measured; BACK; posterior_r1_axis_deg 90; posterior_r2_axis_deg 0", &[Code::BackFar]),
    ("TURNED; mark_found_deg 90; after_cylinder_d -0.25", &[Code::TurnWithinNoise]),
    ("TORIC; iol_cylinder_d 1.50; iol_axis_deg 90; mark_found_deg 95", &[Code::TurnNeeds]),
    ("k2_d 43.75; after_sphere_d 0.00; after_cylinder_d -0.50; after_axis_deg 90", &[Code::SmallTarget]),
    ("TORIC; cylinder_1_d 0.50", &[Code::BeyondLabels]),
    ("TORIC; iol_cylinder_d 1.50; iol_axis_deg 97", &[Code::OffAxisChosen]),
    ("eye left", &[Code::SeatElsewhere]),
    ("incision_width_mm 2.40; tunnel_length_mm 1.80", &[Code::TunnelShort]),
    ("rhexis_cut_mm 2.90", &[Code::RhexisUncovered, Code::RhexisBand]),
    ("open_level_cm 130.0; eye_level_cm 0.0", &[Code::HeadHigh, Code::HeadStatic]),
    ("open_level_cm 0.0; eye_level_cm 10.0", &[Code::HeadNegative]),
    ("altitude_m 100; station_pressure_hpa 1000.0", &[Code::StationBeatsAltitude, Code::CeilingIdeal]),
    ("altitude_m 1600; station_pressure_hpa 626.0", &[Code::StationFar]),
    ("altitude_m 3600; vacuum_viscoelastic_mmhg 500", &[Code::VacuumUnreachable]),
    ("set_pressure_mmhg 60.0; assumed_eye_level_cm 0.0; eye_level_cm -10.0", &[Code::LevelAssumed]),
    ("FLOW", &[Code::Illustration, Code::LeakUnknown]),
    ("FLOW; infusion_resistance_mmhg_min_ml 3.000", &[Code::ChamberCollapsed]),
    (
        "FLOW; aspiration_resistance_mmhg_min_ml 20.000; vacuum_nucleus_mmhg 300; aspiration_ml_min 40.0",
        &[Code::FlowNotReached],
    ),
    ("FLOW; leak_ml_min 150.0; infusion_resistance_mmhg_min_ml 0.500", &[Code::LeakTooLarge]),
    ("READINGS; reading_2_pressure_mmhg 63.0", &[Code::ReadingsRise]),
    ("READINGS; open_level_cm 70.0; eye_level_cm 0.0", &[Code::ReadingsApart]),
    ("SURGE", &[Code::ComplianceEntered]),
    (
        "SURGE; eye_compliance_ul_mmhg 12.000; infusion_resistance_mmhg_min_ml 0.300; aspiration_ml_min 60.0",
        &[Code::VolumeBeyond],
    ),
    // with the steady chamber at 54 mmHg: it is the surge that empties it
    (
        "SURGE; infusion_resistance_mmhg_min_ml 0.400; aspiration_resistance_mmhg_min_ml 1.000; \
            tubing_compliance_ul_mmhg 0.500",
        &[Code::ChamberCollapsed],
    ),
    ("SURGE; surge_step_ms 4.000", &[Code::StepLong]),
    ("SURGE; surge_step_ms 0.005", &[Code::SurgeOpen]),
    ("NEEDLE", &[Code::BoreNominal, Code::Jet]),
    ("NEEDLE; bore_mm 0.200", &[Code::BoreEntered, Code::Jet]),
    ("NEEDLE; viscosity_from zero_shear; viscosity_mpa_s 50000", &[Code::ZeroShear]),
    ("bore_mm 0.210; tube_length_mm 500.0; tube_flow_ml_min 30.00", &[Code::Turbulent]),
    ("bore_mm 0.210; tube_length_mm 13.0; tube_flow_ml_min 10.00", &[Code::TubeShort]),
    ("-guttata", &[Code::RisksUnanswered]),
    ("floppy_iris_drug yes", &[Code::FloppyIris]),
    ("pseudoexfoliation yes", &[Code::Pseudoexfoliation]),
    ("weak_zonule yes", &[Code::WeakZonule]),
    ("posterior_polar yes", &[Code::PosteriorPolar]),
    ("vitrectomised yes", &[Code::LongOrVitrectomised]),
    ("guttata yes", &[Code::Guttata]),
    ("small_pupil yes", &[Code::SmallPupil]),
    ("iodine_allergy yes", &[Code::IodineAllergy]),
    ("antibiotic_allergy yes", &[Code::AntibioticAllergy]),
];

const LASER: &str = "previous_surgery myopic_laser; k_before_d 44.00; refraction_before_d -6.00; refraction_after_d 0.00; \
    k_after_d 38.50; k_after_from contact_lens; k1_d 38.60; k2_d 39.20";

const SECOND: &str = "second_for added; refraction_now_d 2.50; second_place sulcus; second_style three_piece; \
    second_position_mm 4.00";

const TORIC: &str = "label_power spherical_equivalent; cylinder_plane lens; cylinder_1_d 1.50";

const BACK: &str = "posterior_r1_mm 6.60; posterior_r1_axis_deg 0; posterior_r2_mm 6.20; posterior_r2_axis_deg 90; \
    corneal_thickness_um 540";

const TURNED: &str = "label_power spherical_equivalent; cylinder_plane lens; iol_cylinder_d 1.50; iol_axis_deg 90; \
    after_sphere_d 0.25; after_cylinder_d -0.75; after_axis_deg 140";

const READINGS: &str = "reading_1_flow_ml_min 20.0; reading_1_pressure_mmhg 62.0; reading_2_flow_ml_min 40.0; \
    reading_2_pressure_mmhg 58.0";

const FLOW: &str = "open_level_cm 90.0; eye_level_cm 0.0; infusion_resistance_mmhg_min_ml 0.200; pump_kind flow; \
    aspiration_ml_min 30.0";

const SURGE: &str = "FLOW; aspiration_resistance_mmhg_min_ml 6.000; vacuum_nucleus_mmhg 400; \
    eye_compliance_ul_mmhg 1.000; tubing_compliance_ul_mmhg 0.090";

const NEEDLE: &str = "needle_gauge 27; tube_length_mm 13.0";

/// Names for entries; one with another in it stands before that other.
const NAMED: [(&str, &str); 9] = [
    ("TORIC", TORIC),
    ("LASER", LASER),
    ("SECOND", SECOND),
    ("BACK", BACK),
    ("TURNED", TURNED),
    ("SURGE", SURGE),
    ("FLOW", FLOW),
    ("READINGS", READINGS),
    ("NEEDLE", NEEDLE),
];

/// What the quiet case says too.
const ALWAYS: &[Code] = &[
    Code::SiaIsVector,
    Code::Agreement,
    Code::BackupMethods,
    Code::IntervalIf,
    Code::RepeatK,
    Code::SulcusThumb,
    Code::NoAir,
    Code::ViscoelasticLeft,
    Code::HapticsHorizontal,
    Code::NotADevice,
];

#[derive(Default)]
struct Said(Vec<Code>);

impl Sink for Said {
    fn item(&mut self, item: Item) {
        assert!(item.value.is_finite(), "{item:?}");
    }

    fn caution(&mut self, caution: Caution) {
        self.0.push(caution.code);
    }
}

fn said(entries: &str) -> Vec<Code> {
    let mut draft = Draft::default();
    let mut entries = entries.to_owned();
    for (name, text) in NAMED {
        entries = entries.replace(name, text);
    }
    for entry in QUIET.split(';').chain(entries.split(';')).map(str::trim).filter(|entry| !entry.is_empty()) {
        let field = |key: &str| Field::from_key(key).unwrap_or_else(|| panic!("no entry {key}"));
        match (entry.strip_prefix('-'), entry.split_once(' ')) {
            (Some(key), _) => draft.clear(field(key)),
            (None, Some((key, text))) => draft.enter(field(key), text).unwrap(),
            (None, None) => panic!("{entry}"),
        }
    }
    let mut card = Said::default();
    plan(&Case::try_from(&draft).unwrap_or_else(|error| panic!("{entries}: {error:?}")), &mut card);
    card.0
}

#[test]
fn the_quiet_case_says_only_what_is_always_said() {
    let mut quiet = said("");
    // a method says it each for itself
    quiet.retain(|code| *code != Code::RepeatK);
    quiet.push(Code::RepeatK);
    quiet.sort_by_key(|code| code.word());
    let mut always = ALWAYS.to_vec();
    always.sort_by_key(|code| code.word());
    assert_eq!(quiet, always);
}

#[test]
fn each_cause_brings_its_cautions() {
    let mut silent = Vec::new();
    for (cause, codes) in CAUSES {
        let card = said(cause);
        silent.extend(codes.iter().filter(|code| !card.contains(code)).map(|code| (*cause, code.word())));
    }
    assert!(silent.is_empty(), "{silent:#?}");
}

/// A caution that nothing brings about has no business in the table.
#[test]
fn every_caution_has_a_cause() {
    let caused = |code: &Code| ALWAYS.contains(code) || CAUSES.iter().any(|(_, codes)| codes.contains(code));
    let idle: Vec<&str> = Code::ALL.iter().filter(|code| !caused(code)).map(|code| code.word()).collect();
    assert!(idle.is_empty(), "{idle:?}");
}
