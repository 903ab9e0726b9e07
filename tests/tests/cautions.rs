//! Every caution there is: the entry that brings it onto the card, and that it was not there before.

use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::cautions::*;
use ocellus_card::draft::Draft;
use ocellus_card::id::{CautionId, EntryId};
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::working::Steps;

/// A case of which nothing is said that need not be said of every case.
const QUIET: &str = "eye right; surgery_date 2026-12-01; axial_length_mm 23.50; k1_d 43.00; k1_axis_deg 180; k2_d 44.00; \
    k2_axis_deg 90; keratometric_index 1.3375; k_kind keratometric; acd_mm 3.20; acd_from epithelium; al_method optical; \
    eye_state phakic; previous_surgery none; biometry_date 2026-11-01; target_d -0.25; vertex_mm 12.0; lens_model Demo; \
    a_constant 118.90; surgeon_factor 1.760; pacd_mm 5.520; haigis_a0 -0.780; haigis_a1 0.220; haigis_a2 0.210; \
    iol_power_d 21.00; lens_step_d 0.50; backup_a_constant 118.20; backup_style three_piece; \
    backup_place sulcus; sulcus_shift_mm 0.75; backup_power_d 19.00; incision_site_deg 180; incision_flattening_d 0.20; \
    seat temporal; guttata no; constants_from optimised; axial_length_sd_mm 0.015; k_sd_d 0.20; \
    acd_sd_mm 0.020; lens_position_sd_mm 0.25; refraction_sd_d 0.30";

/// Entries to make (or, with a leading `-`, to leave out), and the cautions that follow.
const CAUSES: &[(&str, &[CautionId])] = &[
    ("axial_length_mm 21.00", &[AL_UNUSUAL, SHORT_EYE]),
    ("axial_length_mm 27.00", &[LONG_EYE, LONG_OR_VITRECTOMISED, FAR_FROM_TARGET]),
    ("pacd_mm 6.500", &[SPREAD_WIDE]),
    ("k1_d 40.00; k2_d 41.00", &[K_UNUSUAL]),
    ("k1_d 42.00; k2_d 45.00", &[ASTIGMATISM_LARGE]),
    ("white_to_white_mm 10.50", &[WTW_UNUSUAL]),
    ("fellow_axial_length_mm 24.50", &[AL_BETWEEN_EYES]),
    ("fellow_axial_length_mm 24.00", &[AL_BETWEEN_EYES_OLDER]),
    ("fellow_k1_d 44.50; fellow_k2_d 45.50", &[K_BETWEEN_EYES]),
    ("axial_length_sd_mm 0.060", &[AL_SCATTER]),
    ("k_sd_d 0.60", &[K_SCATTER]),
    ("acd_sd_mm 0.080", &[ACD_SCATTER]),
    ("fellow_axial_length_mm 23.50; fellow_k1_d 44.00; fellow_k2_d 43.00", &[FELLOW_IDENTICAL]),
    ("k2_axis_deg 80", &[AXES_NOT_SQUARE]),
    ("k2_axis_deg 178", &[AXES_SAME]),
    ("k2_d 44.50; old_sphere_d 0.50; old_cylinder_d -1.50; old_axis_deg 90", &[AXES_CROSSED]),
    ("-k1_axis_deg; -k2_axis_deg", &[AXES_UNKNOWN]),
    ("k2_d 43.00", &[NO_ASTIGMATISM]),
    ("keratometric_index 1.3360", &[INDEX_UNUSUAL]),
    ("old_sphere_d -6.00", &[SPECTACLES_DISAGREE]),
    (
        "old_sphere_d 0.00; fellow_axial_length_mm 23.60; fellow_k1_d 43.10; fellow_k2_d 43.90; fellow_refraction_d -4.00",
        &[FELLOW_DISAGREES, ANISOMETROPIA],
    ),
    ("biometry_date 2026-01-01", &[BIOMETRY_OLD]),
    ("-biometry_date", &[BIOMETRY_UNDATED]),
    ("biometry_quality reduced", &[QUALITY_REDUCED]),
    ("contact_lens worn", &[CONTACT_LENS_WORN]),
    ("al_method contact", &[AL_CONTACT]),
    ("al_method immersion", &[AL_IMMERSION]),
    ("eye_state pseudophakic", &[NOT_PHAKIC, NOT_MEASURED_PHAKIC]),
    (
        "previous_surgery hyperopic_laser; -a_constant; -surgeon_factor; -pacd_mm; -haigis_a0; -haigis_a1; -haigis_a2",
        &[PREVIOUS_SURGERY],
    ),
    ("LASER", &[AFTER_LASER, NO_BUDGET]),
    ("previous_surgery hyperopic_laser", &[NOT_THIS_EYE, NEEDS_K_BEFORE, AFTER_LASER]),
    ("LASER; TORIC", &[TORIC_AFTER_LASER]),
    ("LASER; -k_after_d; -k_after_from", &[NEEDS_K_AFTER]),
    ("LASER; k_after_from keratometer", &[RAW_K_AFTER]),
    ("LASER; k_after_from history", &[K_FROM_HISTORY]),
    ("LASER; k_after_from both_surfaces", &[K_BOTH_SURFACES]),
    ("LASER; k_after_d 36.00", &[K_AFTER_DIFFERS]),
    ("axial_length_mm 27.00; long_eye_adjustment set_2018", &[LENGTH_ADJUSTED]),
    ("axial_length_mm 27.00; long_eye_adjustment compared", &[LONG_EYE, SETS_COMPARED]),
    ("axial_length_mm 19.50", &[VERY_SHORT]),
    ("surgeon_factor 3.000", &[CONSTANTS_APART]),
    ("constants_from maker", &[CONSTANTS_OF_MAKER, NO_INTERVAL]),
    ("fellow_refraction_d 1.00; fellow_predicted_d -0.25", &[FIRST_EYE_NO_LENS]),
    ("LASER; previous_surgery hyperopic_laser", &[LASER_KIND]),
    ("LASER; k_after_d 41.50", &[K_AFTER_TODAY]),
    ("LASER; SECOND", &[SECOND_LASER]),
    ("axial_length_mm 14.00; k1_d 36.00; k2_d 36.50", &[NO_SUCH_LENS]),
    ("SECOND; second_for exchange; lens_in_eye_d 20.00", &[FIRST_LENS_BAG]),
    ("label_rule nearest; TORIC; label_power flattest_meridian", &[RULE_NEEDS_CYLINDER]),
    ("al_method immersion; -axial_length_sd_mm", &[SD_NEEDED]),
    ("label_rule nearest", &[RULE_USED]),
    ("label_rule first_myopic; lens_most_d 15.00", &[RULE_NONE]),
    ("-k_sd_d", &[SD_USUAL]),
    ("-refraction_sd_d", &[SD_MEMORY]),
    ("axial_length_sd_mm 0.200", &[REPEAT_AL]),
    ("acd_sd_mm 2.000", &[REPEAT_ACD]),
    ("fellow_refraction_d 1.00; fellow_predicted_d -0.25; fellow_state pseudophakic", &[HALF_OF_FIRST, FIRST_EYE_FAR]),
    ("SECOND", &[SECOND_VERGENCE, FIRST_LENS_HIDDEN, SECOND_STATE, NO_SECOND_POWER]),
    ("SECOND; second_power_d 9.00", &[SECOND_FAR, TWO_LENSES]),
    ("SECOND; second_for aphakic; refraction_now_d -12.00", &[SECOND_APART]),
    (
        "SECOND; -second_position_mm; -a_constant; -surgeon_factor; -pacd_mm; -haigis_a0; -haigis_a1; -haigis_a2",
        &[SECOND_NEEDS_POSITION],
    ),
    ("SECOND; second_for exchange", &[SECOND_NEEDS_LENS]),
    ("SECOND; second_place bag", &[ADDED_IN_BAG]),
    ("SECOND; second_for aphakic; -axial_length_mm; -al_method", &[NEEDS_LENGTH]),
    (
        "lens_front_radius_mm 12.00; lens_back_radius_mm -12.00; lens_centre_mm 0.90; lens_index 1.470",
        &[SURFACES_DISAGREE, POSITION_PLANE],
    ),
    ("previous_surgery graft", &[CORNEA_UNFIT]),
    ("previous_surgery unknown", &[CORNEA_UNFIT]),
    ("k_kind total", &[TOTAL_K]),
    ("eye_state silicone_oil", &[SILICONE_OIL]),
    ("-a_constant", &[NEEDS_CONSTANT]),
    ("-acd_mm; -acd_from", &[NEEDS_ACD]),
    ("acd_from endothelium", &[NEEDS_CCT]),
    ("axial_length_mm 12.00; haigis_a0 13.000; haigis_a1 0.000; haigis_a2 0.000", &[NO_SOLUTION, CLAMPED]),
    ("-a_constant; -surgeon_factor; -pacd_mm; -haigis_a0; -haigis_a1; -haigis_a2", &[NO_METHOD]),
    ("-surgeon_factor; -pacd_mm", &[CONVERTED]),
    ("-haigis_a0; -haigis_a1; -haigis_a2", &[UNOPTIMISED]),
    ("-haigis_a1; -haigis_a2", &[USUAL_SLOPES]),
    ("axial_length_mm 26.60; k1_d 48.00; k2_d 48.50", &[RADICAND]),
    ("axial_length_mm 24.40; k1_d 47.90; k2_d 48.70", &[DEPARTS_FROM_T2]),
    ("axial_length_mm 36.50", &[RETINA_TURNED, LCOR_TURNED, CLAMPED]),
    ("show_srk2 yes", &[SUPERSEDED]),
    ("-a_constant; -surgeon_factor; -haigis_a0; -haigis_a1; -haigis_a2", &[NOTHING_TO_COMPARE]),
    ("-iol_power_d", &[NO_LENS_CHOSEN]),
    ("iol_power_d -21.00", &[MINUS_POWER]),
    ("backup_power_d -19.00", &[MINUS_POWER, BACKUP_FAR]),
    ("iol_power_d 21.25", &[OFF_LABEL]),
    ("lens_most_d 20.00", &[OUT_OF_RANGE]),
    ("lens_least_d 25.00; lens_most_d 30.00", &[MODEL_FALLS_SHORT, OUT_OF_RANGE]),
    ("target_d 0.50", &[TARGET_UNUSUAL]),
    ("fluid_temperature_c 37.0", &[UNUSED]),
    ("-vertex_mm", &[DEFAULT_USED]),
    ("-lens_model", &[LENS_MODEL_MISSING]),
    ("-backup_a_constant; -backup_style; -backup_place; -backup_power_d", &[NO_BACKUP]),
    ("-backup_power_d", &[NO_BACKUP_POWER]),
    ("backup_style one_piece", &[ONE_PIECE_SULCUS]),
    ("-backup_style", &[BACKUP_STYLE_UNKNOWN]),
    ("backup_place captured", &[CAPTURED_OPTIC]),
    ("-k1_axis_deg; -k2_axis_deg; TORIC", &[TORIC_NEEDS_AXES]),
    ("-incision_flattening_d; TORIC", &[TORIC_NEEDS_INCISION]),
    ("-iol_power_d; TORIC", &[TORIC_NEEDS_POWER]),
    ("TORIC; cylinder_plane cornea", &[CORNEA_PLANE_LABEL]),
    ("TORIC; label_power flattest_meridian", &[LABEL_NEEDS_CYLINDER, LABEL_WEAKER]),
    ("TORIC", &[POSTERIOR_IGNORED, RESIDUAL_NOMINAL]),
    ("TORIC; iol_cylinder_d 6.00; iol_axis_deg 90", &[RESIDUAL_LARGE]),
    ("TORIC; cylinder_1_d 6.00", &[TORIC_NOT_NEEDED, OVER_CORRECTS]),
    ("TORIC; axis_marked lying", &[MARKED_LYING]),
    ("TORIC", &[MARKED_UNKNOWN]),
    ("posterior_from eom_2015", &[BACK_CORRECTED]),
    ("posterior_from eom_2015; k1_axis_deg 152; k2_axis_deg 62", &[CLASS_EDGE]),
    ("posterior_from goggin_2015; TORIC; k2_d 47.00", &[GOGGIN_BEYOND]),
    ("posterior_from measured; BACK", &[BACK_MEASURED]),
    ("TURNED; mark_found_deg 102", &[TURN_SENSE, TURN_LEAVES]),
    ("TURNED; mark_found_deg 102; after_cylinder_d 0.75", &[TURN_AWAY]),
    ("TURNED; mark_found_deg 12", &[MARK_ACROSS]),
    ("TURNED; mark_found_deg 102; after_cylinder_d -0.75; after_axis_deg 12", &[TURN_LITTLE]),
    ("TURNED; mark_found_deg 102; after_cylinder_d -5.00; after_axis_deg 60", &[TURN_NOT_ENOUGH, TURN_DISAGREES]),
    ("TORIC; iol_cylinder_d 1.50; iol_axis_deg 10", &[AXIS_ACROSS]),
    ("-incision_flattening_d; sia_centroid_d 0.20; sia_centroid_axis_deg 5", &[CENTROID_ALONG]),
    ("posterior_from measured; BACK; posterior_r1_axis_deg 90; posterior_r2_axis_deg 0", &[BACK_FAR]),
    ("TURNED; mark_found_deg 90; after_cylinder_d -0.25", &[TURN_WITHIN_NOISE]),
    ("TORIC; iol_cylinder_d 1.50; iol_axis_deg 90; mark_found_deg 95", &[TURN_NEEDS]),
    ("k2_d 43.75; after_sphere_d 0.00; after_cylinder_d -0.50; after_axis_deg 90", &[SMALL_TARGET]),
    ("TORIC; cylinder_1_d 0.50", &[BEYOND_LABELS]),
    ("TORIC; iol_cylinder_d 1.50; iol_axis_deg 97", &[OFF_AXIS_CHOSEN]),
    ("eye left", &[SEAT_ELSEWHERE]),
    ("incision_width_mm 2.40; tunnel_length_mm 1.80", &[TUNNEL_SHORT]),
    ("rhexis_cut_mm 2.90; optic_mm 6.00; rhexis_decentration_mm 0.30", &[RHEXIS_UNCOVERED, RHEXIS_BAND]),
    ("open_level_cm 130.0; eye_level_cm 0.0", &[HEAD_HIGH, HEAD_STATIC]),
    ("open_level_cm 0.0; eye_level_cm 10.0", &[HEAD_NEGATIVE]),
    ("altitude_m 100; station_pressure_hpa 1000.0", &[STATION_BEATS_ALTITUDE, CEILING_IDEAL]),
    ("altitude_m 1600; station_pressure_hpa 626.0", &[STATION_FAR]),
    ("altitude_m 3600; vacuum_viscoelastic_mmhg 500", &[VACUUM_UNREACHABLE]),
    ("set_pressure_mmhg 60.0; assumed_eye_level_cm 0.0; eye_level_cm -10.0", &[LEVEL_ASSUMED]),
    ("FLOW", &[ILLUSTRATION, LEAK_UNKNOWN]),
    ("FLOW; infusion_resistance_mmhg_min_ml 3.000", &[CHAMBER_COLLAPSED]),
    (
        "FLOW; aspiration_resistance_mmhg_min_ml 20.000; vacuum_nucleus_mmhg 300; aspiration_ml_min 40.0",
        &[FLOW_NOT_REACHED],
    ),
    ("FLOW; leak_ml_min 150.0; infusion_resistance_mmhg_min_ml 0.500", &[LEAK_TOO_LARGE]),
    ("READINGS; reading_2_pressure_mmhg 63.0", &[READINGS_RISE]),
    ("READINGS; open_level_cm 70.0; eye_level_cm 0.0", &[READINGS_APART]),
    ("SURGE", &[COMPLIANCE_ENTERED]),
    (
        "SURGE; eye_compliance_ul_mmhg 12.000; infusion_resistance_mmhg_min_ml 0.300; aspiration_ml_min 60.0",
        &[VOLUME_BEYOND],
    ),
    // with the steady chamber at 54 mmHg: it is the surge that empties it
    (
        "SURGE; infusion_resistance_mmhg_min_ml 0.400; aspiration_resistance_mmhg_min_ml 1.000; \
            tubing_compliance_ul_mmhg 0.500",
        &[CHAMBER_COLLAPSED],
    ),
    ("SURGE; surge_step_ms 4.000", &[STEP_LONG]),
    ("SURGE; surge_step_ms 0.005", &[SURGE_OPEN]),
    ("NEEDLE", &[BORE_NOMINAL, JET]),
    ("NEEDLE; bore_mm 0.200", &[BORE_ENTERED, JET]),
    ("NEEDLE; viscosity_from zero_shear; viscosity_mpa_s 50000", &[ZERO_SHEAR]),
    ("bore_mm 0.210; tube_length_mm 500.0; tube_flow_ml_min 30.00", &[TURBULENT]),
    ("bore_mm 0.210; tube_length_mm 13.0; tube_flow_ml_min 10.00", &[TUBE_SHORT]),
    ("-guttata", &[RISKS_UNANSWERED]),
    ("floppy_iris_drug yes", &[FLOPPY_IRIS]),
    ("pseudoexfoliation yes", &[PSEUDOEXFOLIATION]),
    ("weak_zonule yes", &[WEAK_ZONULE]),
    ("posterior_polar yes", &[POSTERIOR_POLAR]),
    ("vitrectomised yes", &[LONG_OR_VITRECTOMISED]),
    ("guttata yes", &[GUTTATA]),
    ("small_pupil yes", &[SMALL_PUPIL]),
    ("iodine_allergy yes", &[IODINE_ALLERGY]),
    ("antibiotic_allergy yes", &[ANTIBIOTIC_ALLERGY]),
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
const ALWAYS: &[CautionId] = &[
    SIA_IS_VECTOR,
    AGREEMENT,
    BACKUP_METHODS,
    INTERVAL_IF,
    REPEAT_K,
    SULCUS_THUMB,
    NO_AIR,
    VISCOELASTIC_LEFT,
    HAPTICS_HORIZONTAL,
    NOT_A_DEVICE,
];

#[derive(Default)]
struct Said(Vec<CautionId>);

impl Steps for Said {}

impl Sink for Said {
    fn item(&mut self, item: Item) {
        assert!(item.value.is_finite(), "{item:?}");
    }

    fn caution(&mut self, caution: Caution) {
        self.0.push(caution.code);
    }
}

fn said(entries: &str) -> Vec<CautionId> {
    let mut draft = Draft::default();
    let mut entries = entries.to_owned();
    for (name, text) in NAMED {
        entries = entries.replace(name, text);
    }
    for entry in QUIET.split(';').chain(entries.split(';')).map(str::trim).filter(|entry| !entry.is_empty()) {
        let named = |key: &str| EntryId::of_key(key).unwrap_or_else(|| panic!("no entry {key}"));
        match (entry.strip_prefix('-'), entry.split_once(' ')) {
            (Some(key), _) => draft.clear(named(key)),
            (None, Some((key, text))) => draft.enter(named(key), text).unwrap(),
            (None, None) => panic!("{entry}"),
        }
    }
    let mut card = Said::default();
    Case::try_from(&draft).unwrap_or_else(|error| panic!("{entries}: {error:?}")).plan(&mut card);
    card.0
}

#[test]
fn the_quiet_case_says_only_what_is_always_said() {
    let mut quiet = said("");
    // a method says it each for itself
    quiet.retain(|code| *code != REPEAT_K);
    quiet.push(REPEAT_K);
    quiet.sort();
    let mut always = ALWAYS.to_vec();
    always.sort();
    assert_eq!(quiet, always);
}

#[test]
fn each_cause_brings_its_cautions() {
    let mut silent: Vec<(&str, String)> = Vec::new();
    for (cause, codes) in CAUSES {
        let card = said(cause);
        silent.extend(codes.iter().filter(|code| !card.contains(code)).map(|code| (*cause, code.word().to_string())));
    }
    assert!(silent.is_empty(), "{silent:#?}");
}

/// A caution that nothing makes appear does not belong in the table.
#[test]
fn every_caution_has_a_cause() {
    let caused = |code: &CautionId| ALWAYS.contains(code) || CAUSES.iter().any(|(_, codes)| codes.contains(code));
    let idle: Vec<String> = CautionId::all().filter(|code| !caused(code)).map(|code| code.word().to_string()).collect();
    assert!(idle.is_empty(), "{idle:?}");
}
