//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::astigmatism::site::Seat;
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(14);

pub(crate) const KEY: &str = "wound";
pub(crate) const HEADING: &str = "Wound";

entries! {
    ["incision"]
    WOUND_WIDTH "incision_width_mm" "width" (WoundLength 2) "width of the incision";
    TUNNEL_LENGTH "tunnel_length_mm" "tunnel" (WoundLength 2) "length of the tunnel";
    SEAT "seat" "seat" (Seat) "where the surgeon sits";
}

items! {
    SQUARENESS "tunnel_squareness" "1" 2 plain "tunnel length over width", WoundLength1994 Read;
}

cautions! {
    SEAT_ELSEWHERE "seat_elsewhere" Caution "Check the eye and the site: are they the ones that were meant? The incision does not lie where the surgeon sits.", WrongLens Chosen;
    TUNNEL_SHORT "tunnel_short" Note "Look at the tunnel again: it is shorter than wide. Square tunnels (3.2 by 3.2 mm) held where 3.2 by 2.0 mm leaked; others (1996;22:721-725) found 2.0 mm enough for 3.0 to 3.5 mm wide.", WoundLength1994 Read;
}

sign_offs! {}

pub(crate) const ROWS: PartRows =
    PartRows { short_entries: &[entries::SEAT.id(), entries::WOUND_WIDTH.id()], ..part_rows!() };
