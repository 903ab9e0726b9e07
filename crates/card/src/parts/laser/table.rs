//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::entry::misread;
use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(5);

pub(crate) const KEY: &str = "laser";
pub(crate) const HEADING: &str = "";

entries! {
    ["laser"]
    K_BEFORE "k_before_d" "kbefore" (CornealPower 2) "mean K before the laser, at 1.3375";
    REFRACTION_BEFORE "refraction_before_d" "rxbefore" (Refraction 2) "spherical equivalent before laser";
    REFRACTION_AFTER "refraction_after_d" "rxafter" (Refraction 2) "spherical equivalent after, stable";
    K_AFTER "k_after_d" "kafter" (CornealPower 2) "K after the laser, estimated, 1.3375";
    K_AFTER_FROM "k_after_from" "kafterfrom" (KAfterFrom) "where that estimate comes from";
}

items! {
    K_HISTORY "k_after_history_d" "D" 2 plain "K after the laser, by its history", Aramberri2003 Memory;
}

cautions! {
    K_BOTH_SURFACES "k_both_surfaces" Caution "Give K after from both surfaces as the keratometric power that means the same: a net power is more than 1 D less.", Identity Two;
    K_AFTER_DIFFERS "k_after_differs" Caution "Look for the wrong one: the estimate of K after and the history differ by more than 1 D.", Here Chosen;
    LASER_KIND "laser_kind" Caution "Check the kind of laser: what the laser did disagrees with it. Laser for short sight flattens the cornea and makes the refraction less minus, laser for long sight the other way.", Identity Two;
    K_AFTER_TODAY "k_after_today" Caution "Look for the wrong one: the K after and today's keratometry differ by more than 2 D.", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    misreads: &[
        misread(entries::K_BEFORE.id(), 5.0, 14.0, text!("a corneal radius in mm; this entry is a power")),
        misread(entries::K_AFTER.id(), 5.0, 14.0, text!("a corneal radius in mm; this entry is a power")),
    ],
    ..part_rows!()
};
