//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(24);

pub(crate) const KEY: &str = "end_of_case";
pub(crate) const HEADING: &str = "End of the case";

entries! {
    ["lens"]
    HAPTIC_AXIS "haptic_axis_deg" "haptics" (Axis 0) "meridian for the haptics";
}

items! {
    VISCOELASTIC_KPA "viscoelastic_kpa" "kPa" 2 plain "the same", Sp811 Two;
    VISCOELASTIC_CMH2O "viscoelastic_cmh2o" "cmH2O" 1 plain "the same", Sp811 Two;
    ORIENTATION "orientation_deg" "deg" 0 plain "meridian of the lens at the end", Here Chosen;
}

cautions! {
    VISCOELASTIC_LEFT "viscoelastic_left" Note "Remove all viscoelastic: what was left behind raised pressure by 4.6 and 8.6 mmHg at 6 h (two kinds), to 30 mmHg or more in 2 and 9 of 40.", Viscoelastic2001 Read;
    HAPTICS_HORIZONTAL "haptics_horizontal" Note "A toric axis overrides this: haptics at 0-180 had negative dysphotopsia in 9 of 110 against 18 of 110 (p 0.072), suggestive, not proved.", Haptics2020 Read;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows { short_items: &[items::ORIENTATION], ..part_rows!() };
