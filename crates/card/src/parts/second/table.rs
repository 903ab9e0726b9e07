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
    SECOND_VERGENCE "second_vergence" Note "From refraction, cornea and lens position; no axial length. The larger the change, the more the position matters.", Holladay1993 Memory;
    SECOND_LASER "second_laser" Caution "After laser this lens is computed with the K after, where an estimate was entered, else with today's keratometry. The smaller the change of refraction, the less it matters.", Holladay1993 Memory;
    SECOND_APART "second_apart" Caution "By the refraction another power is asked for than by the methods, by more than 2 D: a sign or another entry may be wrong, or the surprise has a cause to look for.", Here Chosen;
    TWO_LENSES "two_lenses" Caution "A power was chosen for a first lens and one for the lens by refraction: which of them goes into this eye?", WrongLens Chosen;
    ADDED_IN_BAG "added_in_bag" Caution "A second lens in the bag with the first: is the sulcus meant?", NoSource CommonPractice;
    SECOND_STATE "second_state" Caution "What was in the eye when it was measured does not go with what this lens is for.", Here Chosen;
    SECOND_NEEDS_POSITION "second_needs_position" Refuse "No position was entered for this lens (second_position_mm), and no method gives one: that would take an axial length and the constants of the new lens.", Here Chosen;
    SECOND_NEEDS_LENS "second_needs_lens" Refuse "An exchange needs the power of the lens that is in the eye.", Identity Two;
    NO_SECOND_POWER "no_second_power" Caution "No power was entered for this lens: choose one and enter it as on its label.", Here Chosen;
    SECOND_FAR "second_far" Caution "The power chosen leaves more than 0.5 D from the target: is it the lens that was meant?", WrongLens Chosen;
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
