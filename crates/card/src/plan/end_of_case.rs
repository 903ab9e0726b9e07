//! Before the eye is closed: viscoelastic out, the lens where it belongs.

use super::entries;
use crate::astigmatism::on_dial;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::pressure::unit::{Unit, convert};
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::EndOfCase);
    if let Some(vacuum) = case.vacuum_viscoelastic() {
        entries(case.draft(), sink, &[Field::VacuumViscoelastic]);
        sink.item(Item::one(What::ViscoelasticKpa, convert(vacuum.mmhg(), Unit::MmHg, Unit::KPa)));
        sink.item(Item::one(What::ViscoelasticCmh2o, convert(vacuum.mmhg(), Unit::MmHg, Unit::CmH2O)));
    }
    sink.caution(Caution::general(Code::ViscoelasticLeft));
    // a toric axis overrides any other wish
    let toric_axis = case.toric().and_then(|t| t.chosen).map(|(_, axis)| axis);
    // a lens that was found elsewhere has its meridian where its turn is told
    if let Some(axis) = toric_axis.or(case.haptic_axis()).filter(|_| case.mark_found().is_none()) {
        sink.item(Item::one(What::Orientation, on_dial(axis)));
    }
    if toric_axis.is_none() {
        sink.caution(Caution::about(Code::HapticsHorizontal, Field::HapticAxis));
    }
}
