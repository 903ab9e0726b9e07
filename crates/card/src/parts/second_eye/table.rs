//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::layout::ByMethod;
use crate::part::PartRows;
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(12);

pub(crate) const KEY: &str = "second_eye";
pub(crate) const HEADING: &str = "What the first eye shows";

entries! {
    ["fellow"]
    FELLOW_PREDICTED "fellow_predicted_d" "fpredicted" (Refraction 2) "fellow eye, spherical eq. predicted";
}

items! {
    FIRST_ERROR "first_eye_error_d" "D" 2 signed "first eye, error", Identity Two;
    HALF_ERROR "first_eye_half_d" "D" 2 signed "half of it, expected of this eye", Covert2010 Memory;
    ALLOWED_POWER "allowed_power_d" "D" 2 signed "power, half allowed for", Covert2010 Memory;
    ALLOWED_REFRACTION "allowed_refraction_d" "D" 2 signed "lens chosen, half added", Covert2010 Memory;
}

cautions! {
    HALF_OF_FIRST "half_of_first" Note "Allow for it or not: half of the first eye's error is expected of the second, shown beside, applied nowhere. It holds for the method and the lens model of the first prediction.", Covert2010 Memory;
    FIRST_EYE_FAR "first_eye_far" Caution "Look for the reason before the second eye is planned: the first ended more than 1 D from its prediction.", Here Chosen;
    FIRST_EYE_NO_LENS "first_eye_no_lens" Refuse "Enter what is in the fellow eye: without an artificial lens its refraction is the result of no operation, and says nothing about one.", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    by_method: &[ByMethod::of(columns! {
        items::ALLOWED_POWER => "power, half" "allowed for";
        items::ALLOWED_REFRACTION => "lens chosen," "half added";
    })],
    ..part_rows!()
};
