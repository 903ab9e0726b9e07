//! What goes in, what comes out, what to know first.

use crate::entry::{GoesOn, misread};
use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::astigmatism::toric::{CylinderPlane, LabelPower};
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(8);

pub(crate) const KEY: &str = "toric";
pub(crate) const HEADING: &str = "";

entries! {
    ["toric"]
    LABEL_POWER "label_power" "labelpower" (LabelPower) "power on the toric label means";
    CYLINDER_PLANE "cylinder_plane" "cylplane" (CylinderPlane) "cylinder on the label is at";
    CYLINDER_1 "cylinder_1_d" "cyl1" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_2 "cylinder_2_d" "cyl2" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_3 "cylinder_3_d" "cyl3" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_4 "cylinder_4_d" "cyl4" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_5 "cylinder_5_d" "cyl5" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_6 "cylinder_6_d" "cyl6" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_7 "cylinder_7_d" "cyl7" (LensCylinder 2) "label cylinder", Together;
    CYLINDER_8 "cylinder_8_d" "cyl8" (LensCylinder 2) "label cylinder", Together;
    LENS_CYLINDER "iol_cylinder_d" "iolcyl" (LensCylinder 2) "lens cylinder chosen, on its label";
    LENS_AXIS "iol_axis_deg" "iolaxis" (Axis 0) "meridian chosen for the lens mark";
    ["after"]
    MARK_FOUND "mark_found_deg" "markfound" (Axis 0) "meridian where the lens mark lies";
}

items! {}

cautions! {}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    short_entries: &[entries::LENS_CYLINDER.id(), entries::LENS_AXIS.id()],
    goes_on: &[GoesOn { first: entries::LENS_CYLINDER.id(), mark: b'@', next: entries::LENS_AXIS.id() }],
    misreads: &[
        misread(
            entries::LENS_CYLINDER.id(),
            -20.0,
            -0.01,
            text!("a minus cylinder; that of a lens is entered plus, its mark the weak meridian"),
        ),
        misread(entries::LENS_AXIS.id(), 180.1, 360.0, text!("a place on the limbus; as a meridian it is 180 less")),
        misread(entries::MARK_FOUND.id(), 180.1, 360.0, text!("a place on the limbus; as a meridian it is 180 less")),
    ],
    ..part_rows!()
};
