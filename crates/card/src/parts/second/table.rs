//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::layout::ByMethod;
use crate::part::PartRows;
use crate::parts::lens::choices::LensStyle;
use ocellus_core::lens::second;
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(11);

pub(crate) const KEY: &str = "second";
pub(crate) const HEADING: &str = "Lens by the refraction today";

entries! {
    ["second"]
    REFRACTION_NOW "refraction_now_d" "rxnow" (Refraction 2) "spherical equivalent today";
    LENS_IN_EYE "lens_in_eye_d" "iolnow" (LensPower 2) "power of the lens in the eye";
    SECOND_POSITION "second_position_mm" "secondpos" (LensPosition 2) "its position behind the cornea";
    SECOND_STYLE "second_style" "secondstyle" (LensStyle) "how that lens is made";
    SECOND_POWER "second_power_d" "iol2" (LensPower 2) "its power chosen, on its label", Spoken;
}

items! {
    SECOND_AT "second_at_mm" "mm" 2 plain "lens position taken", Holladay1993 Memory;
    SECOND_EXACT "second_exact_d" "D" 2 signed "exact power for target", Holladay1993 Memory;
    SECOND_LEFT "second_refraction_d" "D" 2 signed "refraction, lens chosen", Holladay1993 Memory;
}

cautions! {
    SECOND_VERGENCE "second_vergence" Note "Computed from refraction, cornea and lens position, without axial length. The larger the change, the more the position matters.", Holladay1993 Memory;
    SECOND_LASER "second_laser" Caution "Enter an estimate of K after, if there is one: after laser this lens is computed with it, else with today's keratometry. The smaller the change of refraction, the less it matters.", Holladay1993 Memory;
    SECOND_APART "second_apart" Caution "Check signs and entries: by the refraction a power is asked for that is more than 2 D from that of the methods. If all are right, look for the cause of the surprise.", Here Chosen;
    TWO_LENSES "two_lenses" Caution "Decide which lens goes into this eye: a power was chosen for a first lens, and one for the lens by refraction.", WrongLens Chosen;
    ADDED_IN_BAG "added_in_bag" Caution "Check the place: is the sulcus meant? The second lens would go into the bag with the first.", NoSource CommonPractice;
    SECOND_STATE "second_state" Caution "Check both entries: what was in the eye when it was measured does not go with what this lens is for.", Here Chosen;
    SECOND_NEEDS_POSITION "second_needs_position" Refuse "Enter a position for this lens (second_position_mm): no method gives one. That would take an axial length and the constants of the new lens.", Here Chosen;
    SECOND_NEEDS_LENS "second_needs_lens" Refuse "Enter the power of the lens that is in the eye: an exchange needs it.", Identity Two;
    NO_SECOND_POWER "no_second_power" Caution "Choose a power for this lens and enter it as on its label: none was entered.", Here Chosen;
    SECOND_FAR "second_far" Caution "Check the power chosen: is it the lens that was meant? It leaves more than 0.5 D from the target.", WrongLens Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    by_method: &[ByMethod::of(columns! {
        items::SECOND_AT => "lens" "position";
        items::SECOND_EXACT => "power for" "target";
        items::SECOND_LEFT => "refraction," "lens chosen";
    })],
    short_entries: &[entries::SECOND_POWER.id()],
    short_items: &[items::SECOND_EXACT, items::SECOND_LEFT],
    tables: &[second::Working::table()],
    prose: &[second::Working::prose()],
    subjects: &[("second", "Lens by the refraction today")],
    ..part_rows!()
};
