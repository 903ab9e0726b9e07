//! The incision.

pub mod limits;
pub mod table;

use crate::caution::Caution;
use crate::item::Item;
use crate::parts::cornea::table::entries::INCISION_SITE;
use crate::parts::cornea::{SITE, incision_site};
use crate::parts::eye::Eye;
use crate::parts::general::{show, tell};
use crate::sink::Sink;
use limits::{SEAT_SUPERIOR, SEAT_TEMPORAL};
use ocellus_core::astigmatism::site::{Seat, from_temporal};
use ocellus_core::table_side::wound::squareness;
use table::entries::*;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(eye: &Eye, sink: &mut dyn Sink) {
    show(eye.entered(), sink, &SITE);
    tell(eye.entered(), sink, &[SEAT.id(), WOUND_WIDTH.id()]);
    show(eye.entered(), sink, &[TUNNEL_LENGTH.id()]);
    if elsewhere(eye) {
        let said = SITE.iter().copied().find(|entry| eye.entered().has(*entry)).unwrap_or(INCISION_SITE.id());
        sink.caution(Caution::about(cautions::SEAT_ELSEWHERE, said));
    }
    let Some((tunnel, width)) = eye.get(TUNNEL_LENGTH).zip(eye.get(WOUND_WIDTH)) else { return };
    let ratio = squareness(tunnel, width);
    sink.item(Item::one(items::SQUARENESS, ratio));
    if ratio < 1.0 {
        sink.caution(Caution::about(cautions::TUNNEL_SHORT, TUNNEL_LENGTH));
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
