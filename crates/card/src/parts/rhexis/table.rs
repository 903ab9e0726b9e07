//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::quantity::*;
use ocellus_core::table_side::rhexis;

/// The number of this part.
pub(crate) const PART: PartId = PartId(15);

pub(crate) const KEY: &str = "rhexis";
pub(crate) const HEADING: &str = "Rhexis";

entries! {
    ["lens"]
    OPTIC "optic_mm" "optic" (OpticDiameter 2) "optic diameter";
    LENS_LENGTH "lens_length_mm" "lenslength" (LensLength 2) "overall length of the lens";
    ["capsule"]
    CUT "rhexis_cut_mm" "cut" (Cut 2) "radial first cut of the rhexis";
    GRASP "grasp_mm" "grasp" (Grasp 2) "edge torn between grasps";
    DECENTRATION "rhexis_decentration_mm" "decentred" (Decentration 2) "rhexis decentred on the optic by";
    CAPSULE_DEPTH "capsule_depth_mm" "depth" (CapsuleDepth 2) "depth of the capsule today";
}

items! {
    RHEXIS_TRUE "rhexis_true_mm" "mm" 2 plain "diameter, if the cut is true", NoSource CommonPractice;
    RHEXIS_EDGE "rhexis_edge_mm" "mm" 1 plain "circumference", Identity Two;
    RHEXIS_GRASPS "rhexis_grasps" "1" 0 plain "grasps", NoSource CommonPractice;
    CUT_SEEN "cut_seen_as_mm" "mm" 2 plain "cut, if it only looks that long", RhexisSeen Read;
    RHEXIS_SEEN "rhexis_seen_mm" "mm" 2 plain "diameter, if it only looks that long", RhexisSeen Read;
    RHEXIS_SEEN_LEAST "rhexis_seen_least_mm" "mm" 2 plain "the same in a deep, steep eye", RhexisSeen Read;
    RHEXIS_SEEN_MOST "rhexis_seen_most_mm" "mm" 2 plain "the same in a shallow, flat eye", RhexisSeen Read;
    PARAXIAL_FACTOR "paraxial_magnification" "1" 3 plain "magnification, paraxial, this depth", Identity Two;
    OVERLAP_WORST "overlap_worst_mm" "mm" 2 signed "least overlap on the optic", Identity Two;
    OVERLAP_BEST "overlap_best_mm" "mm" 2 signed "most overlap on the optic", Identity Two;
    OVERLAP_WORST_SEEN "overlap_worst_seen_mm" "mm" 2 signed "least overlap, if it only looks so", Identity Two;
    OVERLAP_BEST_SEEN "overlap_best_seen_mm" "mm" 2 signed "most overlap, if it only looks so", Identity Two;
}

cautions! {
    RHEXIS_UNCOVERED "rhexis_uncovered" Caution "Check the rhexis: its edge would come off the optic on one side.", Identity Two;
    RHEXIS_BAND "rhexis_band" Note "Seen over true was 115.9 +/- 3.1 % in 40 eyes, 110 to 120 %; paraxial optics gives less.", RhexisSeen Read;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    short_entries: &[entries::CUT.id()],
    short_items: &[items::RHEXIS_TRUE, items::RHEXIS_SEEN, items::OVERLAP_WORST],
    tables: &[rhexis::Working::table()],
    prose: &[rhexis::Working::prose()],
    subjects: &[("rhexis", "Size of the rhexis")],
    ..part_rows!()
};
