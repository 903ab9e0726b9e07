//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;

/// The number of this part.
pub(crate) const PART: PartId = PartId(1);

pub(crate) const KEY: &str = "general";
pub(crate) const HEADING: &str = "";

entries! {}

items! {}

cautions! {
    DEFAULT_USED "default_used" Note "Not entered; the usual value is used.", Here Chosen;
    NOT_A_DEVICE "not_a_device" Note "Not a medical device: teaching and independent arithmetic check only. The surgeon, the label, the pharmacy and local rules decide.", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = part_rows!();
