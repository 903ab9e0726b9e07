//! The incision.

use super::entries;
use crate::astigmatism::site::from_temporal;
use crate::case::Case;
use crate::case::SITE;
use crate::caution::{Caution, Code};
use crate::choice::Seat;
use crate::constant::eye::{SEAT_SUPERIOR, SEAT_TEMPORAL};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::sink::Sink;
use crate::table_side::wound::squareness;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Wound);
    entries(case.draft(), sink, &SITE);
    entries(case.draft(), sink, &[Field::Seat, Field::WoundWidth, Field::TunnelLength]);
    if elsewhere(case) {
        let said = SITE.iter().copied().find(|field| case.draft().has(*field)).unwrap_or(Field::IncisionSite);
        sink.caution(Caution::about(Code::SeatElsewhere, said));
    }
    let Some((tunnel, width)) = case.tunnel_length().zip(case.wound_width()) else { return };
    let ratio = squareness(tunnel, width);
    sink.item(Item::one(What::Squareness, ratio));
    if ratio < 1.0 {
        sink.caution(Caution::about(Code::TunnelShort, Field::TunnelLength));
    }
}

/// Whether the incision lies away from the surgeon: the cheapest sign of a swapped side.
fn elsewhere(case: &Case) -> bool {
    let (Some(site), Some(seat)) = (case.incision_site(), case.seat()) else { return false };
    let (at, limit) = match seat {
        Seat::Temporal => (0.0, SEAT_TEMPORAL.get()),
        Seat::Superior => (90.0, SEAT_SUPERIOR.get()),
    };
    let apart = (from_temporal(site.deg(), case.side) - at).abs();
    apart.min(360.0 - apart) > limit
}
