//! The incision.

pub mod limits;
pub mod table;

use crate::parts::cornea::table::entries::INCISION_SITE;
use crate::parts::cornea::{SITE, incision_site};
use crate::parts::eye::Eye;

use crate::out::Out;
use limits::{SEAT_SUPERIOR, SEAT_TEMPORAL};
use ocellus_core::astigmatism::site::{Seat, from_temporal};
use ocellus_core::table_side::wound::squareness;
use table::entries::*;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    out.show(&SITE);
    out.tell(const { &[SEAT.id(), WOUND_WIDTH.id()] });
    out.show(const { &[TUNNEL_LENGTH.id()] });
    if elsewhere(eye) {
        let said = SITE.iter().copied().find(|entry| eye.entered().has(*entry)).unwrap_or(INCISION_SITE.id());
        out.about(cautions::SEAT_ELSEWHERE, said);
    }
    let Some((tunnel, width)) = eye.get(TUNNEL_LENGTH).zip(eye.get(WOUND_WIDTH)) else { return };
    let ratio = squareness(tunnel, width);
    out.item(items::SQUARENESS, ratio);
    if ratio < 1.0 {
        out.about(cautions::TUNNEL_SHORT, TUNNEL_LENGTH);
    }
}

/// Whether the incision lies away from the surgeon: the cheapest sign of a swapped side.
fn elsewhere(eye: &Eye) -> bool {
    let (Some(seat), Some(site)) = (eye.get(SEAT), incision_site(eye)) else { return false };
    let (at, limit) = match seat {
        Seat::Temporal => (0.0, SEAT_TEMPORAL.get()),
        Seat::Superior => (90.0, SEAT_SUPERIOR.get()),
    };
    let apart = (from_temporal(site.deg(), eye.side()) - at).abs();
    apart.min(360.0 - apart) > limit
}
