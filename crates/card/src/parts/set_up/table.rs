//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;

/// The number of this part.
pub(crate) const PART: PartId = PartId(27);

pub(crate) const KEY: &str = "set_up";
pub(crate) const HEADING: &str = "Set-up of fluids";

entries! {}

items! {}

cautions! {}

sign_offs! {}

pub(crate) const ROWS: PartRows = part_rows!();
