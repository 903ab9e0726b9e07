//! What goes in, what comes out, what to know first.

use crate::entry::{GoesOn, misread};
use crate::id::PartId;
use crate::layout::ByMethod;
use crate::part::PartRows;
use ocellus_core::astigmatism::change;
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(21);

pub(crate) const KEY: &str = "after";
pub(crate) const HEADING: &str = "After the operation";

entries! {
    ["after"]
    AFTER_K1 "after_k1_d" "ak1" (CornealPower 2) "postoperative corneal power 1";
    AFTER_K1_AXIS "after_k1_axis_deg" "ak1axis" (Axis 0) "postoperative, axis of meridian 1";
    AFTER_K2 "after_k2_d" "ak2" (CornealPower 2) "postoperative corneal power 2";
    AFTER_K2_AXIS "after_k2_axis_deg" "ak2axis" (Axis 0) "postoperative, axis of meridian 2";
    AFTER_SPHERE "after_sphere_d" "asph" (Refraction 2) "postoperative sphere";
    AFTER_CYLINDER "after_cylinder_d" "acyl" (Cylinder 2) "postoperative cylinder, either sign";
    AFTER_AXIS "after_axis_deg" "aaxis" (Axis 0) "postoperative axis of that cylinder";
}

items! {
    FOUND_ERROR "found_error_d" "D" 2 signed "found less predicted", Identity Two;
    INCISION_FOUND "incision_sia_d" "D" 2 plain "change of the cornea alone", Identity Two;
    INCISION_FOUND_AXIS "incision_sia_axis_deg" "deg" 0 plain "meridian it steepened", Identity Two;
    INCISION_FLATTENED "incision_flattened_d" "D" 2 signed "flattened at the incision by", Naeser1990 Memory;
    INCISION_TORQUE "incision_torque_d" "D" 2 signed "torque there, counter-clockwise plus", Naeser1990 Memory;
    TARGET "tia_d" "D" 2 plain "change wanted of the eye (TIA)", Alpins2001 Memory;
    TARGET_AXIS "tia_axis_deg" "deg" 0 plain "axis of TIA", Alpins2001 Memory;
    SURGICAL "sia_d" "D" 2 plain "change made of the eye (SIA)", Alpins2001 Memory;
    SURGICAL_AXIS "sia_axis_deg" "deg" 0 plain "axis of SIA", Alpins2001 Memory;
    DIFFERENCE "dv_d" "D" 2 plain "difference vector (DV)", Alpins2001 Memory;
    DIFFERENCE_AXIS "dv_axis_deg" "deg" 0 plain "axis of DV", Alpins2001 Memory;
    MAGNITUDE_ERROR "magnitude_error_d" "D" 2 signed "magnitude of error (ME)", Alpins2001 Memory;
    ANGLE_ERROR "angle_error_deg" "deg" 0 signed "angle of error (AE)", Alpins2001 Memory;
    CORRECTION_INDEX "correction_index" "1" 2 plain "correction index (CI)", Alpins2001 Read;
    SUCCESS_INDEX "success_index" "1" 2 plain "index of success (IOS)", Alpins2001 Read;
    FLATTENING_EFFECT "flattening_effect_d" "D" 2 signed "flattening effect (FE)", Alpins2001 Memory;
    TORQUE "torque_d" "D" 2 signed "torque", Alpins2001 Memory;
}

cautions! {
    SMALL_TARGET "small_target" Caution "Do not rely on the ratios: the change wanted is below 1 D. Ratios to it are unsteady, and the correction index is biased upward, so that even perfect corrections average above 1.", Indices2001 Read;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    by_method: &[ByMethod::of(columns! { items::FOUND_ERROR => "found less" "predicted"; })],
    goes_on: &[
        GoesOn { first: entries::AFTER_K1.id(), mark: b'@', next: entries::AFTER_K1_AXIS.id() },
        GoesOn { first: entries::AFTER_K2.id(), mark: b'@', next: entries::AFTER_K2_AXIS.id() },
        GoesOn { first: entries::AFTER_SPHERE.id(), mark: b'/', next: entries::AFTER_CYLINDER.id() },
        GoesOn { first: entries::AFTER_CYLINDER.id(), mark: b'@', next: entries::AFTER_AXIS.id() },
    ],
    misreads: &[misread(
        entries::AFTER_AXIS.id(),
        180.1,
        360.0,
        text!("a place on the limbus; as a meridian it is 180 less"),
    )],
    tables: &[change::Indices::table()],
    prose: &[change::Indices::prose()],
    subjects: &[("after", "Change wanted and change made")],
    ..part_rows!()
};
