//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(4);

pub(crate) const KEY: &str = "target";
pub(crate) const HEADING: &str = "";

entries! {
    ["target"]
    TARGET "target_d" "target" (Refraction 2) "agreed target, spherical equivalent", Spoken;
    TARGET_FOR "target_for" "purpose" (TargetFor) "what that target is for";
    VERTEX "vertex_mm" "vertex" (Vertex 1) = 12 "vertex distance";
    ["second"]
    SECOND_FOR "second_for" "secondfor" (SecondFor) "lens by refraction, for";
    SECOND_PLACE "second_place" "secondplace" (SecondPlace) "where that lens would go";
}

items! {}

cautions! {}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows { short_entries: &[entries::TARGET.id()], ..part_rows!() };
