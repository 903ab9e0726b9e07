//! The incision.

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::sink::Sink;
use crate::table_side::wound::squareness;

pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Wound);
    entries(case, sink, &[Field::IncisionSite, Field::Seat, Field::WoundWidth, Field::TunnelLength]);
    let Some((tunnel, width)) = case.incision.tunnel.zip(case.incision.width) else { return };
    let ratio = squareness(tunnel, width);
    sink.item(Item::one(What::Squareness, ratio));
    if ratio < 1.0 {
        sink.caution(Caution::about(Code::TunnelShort, Field::TunnelLength));
    }
}
