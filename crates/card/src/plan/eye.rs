//! What was measured, and whether it can be believed.

use super::entries;
use crate::astigmatism::on_dial;
use crate::case::Case;
use crate::eye::checks;
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::sink::Sink;

const MEASURED: &[Field] = &[
    Field::AxialLength,
    Field::AlMethod,
    Field::K1,
    Field::K1Axis,
    Field::K2,
    Field::K2Axis,
    Field::R1,
    Field::R2,
    Field::Index,
    Field::KKind,
    Field::Acd,
    Field::AcdFrom,
    Field::LensThickness,
    Field::WhiteToWhite,
    Field::CornealThickness,
    Field::EyeState,
    Field::PreviousSurgery,
    Field::BiometryDate,
    Field::Quality,
    Field::ContactLens,
    Field::AlScatter,
    Field::KScatter,
    Field::AcdScatter,
    Field::OldSphere,
    Field::OldCylinder,
    Field::OldAxis,
    Field::FellowAxialLength,
    Field::FellowK1,
    Field::FellowK2,
    Field::FellowRefraction,
    Field::FellowState,
];

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Eye);
    entries(case.draft(), sink, MEASURED);
    let cornea = &case.cornea;
    let one = Item::one;
    sink.item(one(What::MeanRadius, cornea.radius().mm()));
    sink.item(one(What::MeanK, cornea.k()));
    // which is flat and which is steep, whichever was typed first
    let meridians = [
        (What::FlatK, cornea.flat_k(), What::FlatAxis, cornea.flat_axis()),
        (What::SteepK, cornea.steep_k(), What::SteepAxis, cornea.steep_axis()),
    ];
    for (power, k, place, axis) in meridians {
        sink.item(one(power, k));
        if let Some(axis) = axis.filter(|_| cornea.astigmatism() > 0.0) {
            sink.item(one(place, on_dial(axis)));
        }
    }
    sink.item(one(What::Astigmatism, cornea.astigmatism()));
    checks::check(case, &mut |caution| sink.caution(caution));
}
