//! The lens itself: do its surfaces make its label, and which plane of it is a lens position?

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::answer::{NONE, answer_shown};
use crate::lens::label::tolerance;
use crate::lens::thick::{Working, working};
use crate::quantity::LensPower;
use crate::sink::Sink;

/// The lens of the case by its surfaces, where it has any.
pub(crate) fn known(case: &Case) -> Option<Working> {
    let (front, back, centre, index) = case.surfaces()?;
    working(front, back, centre, index).ok()
}

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Thick);
    entries(case.draft(), sink, &[Field::FrontRadius, Field::BackRadius, Field::LensCentre, Field::LensIndex]);
    let Some(lens) = known(case) else { return };
    sink.item(Item::one(What::ThickPower, lens.power));
    sink.item(Item::one(What::ThickFront, lens.front));
    sink.item(Item::one(What::ThickBack, lens.back));
    if case.lens_power().is_some_and(|label| (label.d() - lens.power).abs() > tolerance(label)) {
        sink.caution(Caution::about(Code::SurfacesDisagree, Field::FrontRadius));
    }
    let Ok(power) = LensPower::from_d(lens.power) else { return };
    let mut answers = NONE;
    answer_shown(case, &mut |_| {}, &mut answers);
    let mut any = false;
    for answer in answers.iter().flatten().filter(|answer| answer.compared) {
        let Some(eye) = answer.optics.thin_eye() else { continue };
        let Ok(thin) = eye.refraction(power, case.vertex) else { continue };
        for (what, before) in [(What::AsFront, 0.0), (What::AsCentre, lens.t / 2.0), (What::AsBack, lens.t)] {
            if let Ok(left) = lens.placed(eye, eye.elp - before).refraction(power, case.vertex) {
                sink.item(Item::of(what, answer.method, left.rx - thin.rx));
                any = true;
            }
        }
    }
    if any {
        sink.caution(Caution::about(Code::PositionPlane, Field::LensCentre));
    }
}
