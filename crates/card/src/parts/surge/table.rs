//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::{PartRows, Stands};
use crate::parts::chamber::table::cautions::ILLUSTRATION;
use ocellus_core::fluids::surge;
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(18);

pub(crate) const KEY: &str = "surge";
pub(crate) const HEADING: &str = "Surge: an illustration";

entries! {
    ["flow"]
    EYE_COMPLIANCE "eye_compliance_ul_mmhg" "ceye" (Compliance 3) "compliance of the eye";
    TUBING_COMPLIANCE "tubing_compliance_ul_mmhg" "ctube" (Compliance 3) "compliance of the aspiration line";
    SURGE_STEP "surge_step_ms" "surgestep" (SurgeStep 3) "step of the integration";
}

items! {
    SURGE_START "surge_start_mmhg" "mmHg" 1 plain "illustration: chamber at the break", Here Chosen;
    SURGE_TROUGH "surge_trough_mmhg" "mmHg" 1 plain "illustration: least pressure", Here Chosen;
    SURGE_TROUGH_TIME "surge_trough_ms" "ms" 1 plain "illustration: time of it", Here Chosen;
    SURGE_RECOVERED "surge_recovered_ms" "ms" 1 plain "illustration: time to recover", Here Chosen;
    SURGE_COLLAPSED "surge_collapsed_ms" "ms" 1 plain "illustration: chamber collapsed at", Here Chosen;
    SURGE_STEADY "surge_steady_mmhg" "mmHg" 1 plain "illustration: where it comes to rest", Here Chosen;
    SURGE_VOLUME "surge_volume_ul" "uL" 1 plain "illustration: volume chamber lost", Here Chosen;
    SURGE_ROOM "surge_room_ul" "uL" 1 plain "illustration: room in the line", Here Chosen;
    SURGE_CONSTANT "surge_shortest_ms" "ms" 2 plain "illustration: shortest time constant", Here Chosen;
    SURGE_STEP "surge_step_taken_ms" "ms" 3 plain "illustration: step", Here Chosen;
    SURGE_VOLUME_LEFT "surge_volume_left_ul" "uL" 4 signed "illustration: volume left over", Here Chosen;
    SURGE_ENERGY_LEFT "surge_energy_left_uj" "uJ" 4 signed "illustration: energy left over", Here Chosen;
}

cautions! {
    STEP_LONG "step_long" Refuse "Enter a shorter step: no surge is computed, since this one is longer than a quarter of the shortest time constant.", Here Chosen;
    VOLUME_BEYOND "volume_beyond" Caution "Check the entries: no eye gives that much. It is more volume than an anterior chamber holds (139.8 +/- 38.2 uL).", ChamberVolume Read;
    SURGE_OPEN "surge_open" Caution "No least pressure is given: the chamber is not at rest after 2,000 steps, and what comes later is not known.", Here Chosen;
    COMPLIANCE_ENTERED "compliance_entered" Note "Do not take this compliance from a law: laws of dead eyes overpredict living ones 1.4 to 4 times.", DeadEyes Read;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    stands: Stands::Alone,
    first: &[ILLUSTRATION],
    tables: &[surge::Working::table()],
    prose: &[surge::Working::prose()],
    subjects: &[("surge", "Surge: an illustration")],
    ends: &[cautions::SURGE_OPEN],
    swept: &[
        (items::SURGE_TROUGH, text!("least")),
        (items::SURGE_RECOVERED, text!("recovers")),
        (items::SURGE_VOLUME, text!("loses")),
    ],
    ..part_rows!()
};
