//! What was measured, and whether it can be believed.

use super::entries;
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

pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Eye);
    entries(case, sink, MEASURED);
    let cornea = &case.biometry.cornea;
    sink.item(Item::one(What::MeanRadius, cornea.radius().mm()));
    sink.item(Item::one(What::MeanK, cornea.k()));
    sink.item(Item::one(What::Astigmatism, cornea.astigmatism()));
    if let Some(axis) = cornea.steep_axis().filter(|_| cornea.astigmatism() > 0.0) {
        sink.item(Item::one(What::SteepAxis, axis.deg()));
    }
    checks::check(case, &mut |caution| sink.caution(caution));
}
