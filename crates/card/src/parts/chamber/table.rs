//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::id::PartId;
use crate::part::{PartRows, Stands};
use ocellus_core::fluids::{chamber, readings};
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(17);

pub(crate) const KEY: &str = "chamber";
pub(crate) const HEADING: &str = "Chamber under flow: an illustration";

entries! {
    ["flow"]
    PUMP_KIND "pump_kind" "pumpkind" (PumpKind) "what is set on the pump";
    ASPIRATION "aspiration_ml_min" "aspiration" (Aspiration 1) "aspiration flow";
    INFUSION_RESISTANCE "infusion_resistance_mmhg_min_ml" "rin" (Resistance 3) "resistance of the infusion line";
    ASPIRATION_RESISTANCE "aspiration_resistance_mmhg_min_ml" "rasp" (Resistance 3) "resistance of tip and tubing";
    LEAK "leak_ml_min" "leak" (Aspiration 1) = 0 "leak while nothing is aspirated";
    READING_FLOW_1 "reading_1_flow_ml_min" "flow1" (Aspiration 1) "reading 1, aspiration flow";
    READING_PRESSURE_1 "reading_1_pressure_mmhg" "pressure1" (GasPressure 1) "reading 1, pressure in the chamber";
    READING_FLOW_2 "reading_2_flow_ml_min" "flow2" (Aspiration 1) "reading 2, aspiration flow";
    READING_PRESSURE_2 "reading_2_pressure_mmhg" "pressure2" (GasPressure 1) "reading 2, pressure in the chamber";
    TIP_BORE "tip_bore_mm" "tip" (TipBore 2) "inner bore of the tip";
}

items! {
    FOUND_RESISTANCE "infusion_resistance_found" "mmHg min/mL" 3 plain "illustration: infusion, as read", Here Chosen;
    FOUND_STILL "still_pressure_found_mmhg" "mmHg" 1 plain "illustration: no flow, as read", Here Chosen;
    FOUND_LESS "still_less_column_mmhg" "mmHg" 1 signed "illustration: that less the column", Here Chosen;
    LEAK_RATE "leak_conductance" "mL/min/mmHg" 4 plain "illustration: leak for each mmHg", Here Chosen;
    CHAMBER_STILL "chamber_still_mmhg" "mmHg" 1 plain "illustration: chamber, no aspiration", Here Chosen;
    CHAMBER "chamber_mmhg" "mmHg" 1 plain "illustration: chamber under flow", Here Chosen;
    CHAMBER_FLOW "chamber_aspiration_ml_min" "mL/min" 1 plain "illustration: aspiration flow", Here Chosen;
    CHAMBER_LEAK "chamber_leak_ml_min" "mL/min" 1 plain "illustration: leak under flow", Here Chosen;
    VACUUM_FOLLOWS "vacuum_follows_mmhg" "mmHg" 1 plain "illustration: vacuum that follows", Here Chosen;
    HOLD_BARE "hold_bare_mn" "mN" 1 plain "hold at the tip, no eye pressure", Identity Two;
    HOLD "hold_mn" "mN" 1 plain "hold at the tip, with the column", Identity Two;
}

cautions! {
    ILLUSTRATION "illustration" Caution "For teaching only, an illustration from the numbers entered: no living eye behaves so, and no machine is described.", Here Chosen;
    CHAMBER_COLLAPSED "chamber_collapsed" Caution "Chamber collapsed, the model ends: no pressure is left in it.", Identity Two;
    FLOW_NOT_REACHED "flow_not_reached" Caution "Read the numbers as those of the vacuum set: the pump draws less than this flow, since the vacuum that would follow is above the one that is set.", Identity Two;
    LEAK_TOO_LARGE "leak_too_large" Caution "Check the leak: it leaves no pressure in the chamber, and nothing is computed.", Identity Two;
    LEAK_UNKNOWN "leak_unknown" Note "Enter the leak if you know it: none was entered. In 105 patients 67 +/- 11 % of the irrigation leaked.", Leak2009 Read;
    READINGS_RISE "readings_rise" Caution "Take both readings again: the pressure does not fall from the smaller to the larger flow, so they give no resistance.", Identity Two;
    READINGS_APART "readings_apart" Caution "Take both readings again: at no flow they come to more than 5 mmHg from the column. Another datum, a leak, or a pressure that was not yet steady?", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    stands: Stands::Alone,
    first: &[cautions::ILLUSTRATION],
    tables: &[readings::Working::table(), chamber::Working::table()],
    prose: &[readings::Working::prose(), chamber::Working::prose()],
    subjects: &[("chamber", "Chamber under flow: an illustration")],
    ends: &[cautions::CHAMBER_COLLAPSED, cautions::LEAK_TOO_LARGE],
    swept: &[(items::CHAMBER, text!("chamber"))],
    ..part_rows!()
};
