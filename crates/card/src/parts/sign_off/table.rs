//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;

/// The number of this part.
pub(crate) const PART: PartId = PartId(26);

pub(crate) const KEY: &str = "sign_off";
pub(crate) const HEADING: &str = "Before the first cut";

entries! {}

items! {}

cautions! {}

sign_offs! {
    READ_BACK "read_back" "Read-back: a second person typed from the printout and has the same code";
}

pub(crate) const ROWS: PartRows = part_rows!();
