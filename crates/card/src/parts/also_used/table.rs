//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;

/// The number of this part.
pub(crate) const PART: PartId = PartId(28);

pub(crate) const KEY: &str = "also_used";
pub(crate) const HEADING: &str = "Entered, and used above without being shown there";

entries! {}

items! {}

cautions! {}

sign_offs! {}

pub(crate) const ROWS: PartRows = part_rows!();
