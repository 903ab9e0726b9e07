//! The lens itself: do its surfaces make its label, and which plane of it is a lens position?

pub mod table;

use crate::caution::Caution;
use crate::id::EntryId;
use crate::item::Item;
use crate::parts::eye::Eye;
use crate::parts::general::show;
use crate::parts::lens::Lens;
use crate::parts::lens::table::entries::LENS_POWER;
use crate::rule::Rule;
use crate::sink::Sink;
use ocellus_core::lens::label::tolerance;
use ocellus_core::optics::surfaces::{GULLSTRAND, LE_GRAND, system};
use ocellus_core::optics::thick::{Working, working};
use ocellus_core::quantity::LensPower;
use table::entries::*;
use table::{cautions, items};

const SURFACES: [EntryId; 4] = [FRONT_RADIUS.id(), BACK_RADIUS.id(), LENS_CENTRE.id(), LENS_INDEX.id()];

pub(crate) const RULES: &[Rule] = &[Rule::Together(&SURFACES, &SURFACES)];

/// The lens of the case by its surfaces, where it has any.
fn known(eye: &Eye) -> Option<Working> {
    let (front, back) = (eye.get(FRONT_RADIUS)?, eye.get(BACK_RADIUS)?);
    working(front, back, eye.get(LENS_CENTRE)?, eye.get(LENS_INDEX)?).ok()
}

#[inline(never)]
pub(crate) fn plan(lens: &Lens, sink: &mut dyn Sink) {
    let eye = lens.eye;
    show(eye.entered(), sink, &SURFACES);
    let Some(thick) = known(eye) else { return };
    sink.item(Item::one(items::THICK_POWER, thick.power));
    sink.item(Item::one(items::THICK_FRONT, thick.front));
    sink.item(Item::one(items::THICK_BACK, thick.back));
    if eye.get(LENS_POWER).is_some_and(|label| (label.d() - thick.power).abs() > tolerance(label)) {
        sink.caution(Caution::about(cautions::SURFACES_DISAGREE, FRONT_RADIUS));
    }
    let Ok(power) = LensPower::from_d(thick.power) else { return };
    let mut any = false;
    for answer in lens.compared() {
        let Some(thin) = answer.optics.thin_eye() else { continue };
        let Ok(left) = thin.refraction(power, eye.vertex()) else { continue };
        for (what, before) in [(items::AS_FRONT, 0.0), (items::AS_CENTRE, thick.t / 2.0), (items::AS_BACK, thick.t)] {
            if let Ok(placed) = thick.placed(thin, thin.elp - before).refraction(power, eye.vertex()) {
                sink.item(Item::of(what, answer.method, placed.rx - left.rx));
                any = true;
            }
        }
    }
    if any {
        sink.caution(Caution::about(cautions::POSITION_PLANE, LENS_CENTRE));
    }
}

#[inline(never)]
pub(crate) fn explain(subject: u8, lens: &Lens, sink: &mut dyn Sink) -> bool {
    match subject {
        0 => {
            lens.eye.get(LENS_POWER);
            known(lens.eye).inspect(|w| w.show(sink)).is_some()
        }
        _ => schematic(sink),
    }
}

/// Two schematic eyes, each as one lens in air: of no case.
fn schematic(sink: &mut dyn Sink) -> bool {
    let eyes = (system(1.0, GULLSTRAND), system(1.0, LE_GRAND));
    if let Ok(w) = &eyes.0 {
        w.show(sink);
    }
    if let Ok(w) = &eyes.1 {
        w.show_le_grand(sink);
    }
    eyes.0.is_ok() || eyes.1.is_ok()
}
