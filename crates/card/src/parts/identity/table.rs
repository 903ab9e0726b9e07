//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::{PartRows, Stands};
use ocellus_core::astigmatism::site::Side;

/// The number of this part.
pub(crate) const PART: PartId = PartId(2);

pub(crate) const KEY: &str = "identity";
pub(crate) const HEADING: &str = "Eye to be operated";

entries! {
    [""]
    ID "id" "id" (name) "label of the case";
    SIDE "eye" "eye" (Side) "eye", Capitals;
    SURGERY_DATE "surgery_date" "date" (date) "date of the operation";
}

items! {}

cautions! {}

sign_offs! {
    PATIENT "patient" "The correct patient: two identifiers asked, and read on the wristband";
    SIDE "side" "The correct side: consent, mark on the skin, this card and the patient agree";
    PRINTOUT "printout" "The biometry printout is this patient's, this eye's, and the one this card was typed from";
}

pub(crate) const ROWS: PartRows =
    PartRows { stands: Stands::Beside, short_entries: &[entries::ID.id(), entries::SIDE.id()], ..part_rows!() };
