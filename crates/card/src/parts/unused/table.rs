//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;

/// The number of this part.
pub(crate) const PART: PartId = PartId(25);

pub(crate) const KEY: &str = "unused";
pub(crate) const HEADING: &str = "Entered, and used for nothing here";

entries! {}

items! {}

cautions! {
    UNUSED "unused" Note "Check these entries: they are used for nothing on this card. explain shows what a number starts from.", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = part_rows!();
