//! The lens itself: do its surfaces make its label, and which plane of it is a lens position?

pub mod table;

use crate::id::EntryId;
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::lens::Lens;
use crate::parts::lens::table::entries::LENS_POWER;
use crate::rule::Rule;
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
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    out.show(&SURFACES);
    let Some(thick) = known(eye) else { return };
    out.item(items::THICK_POWER, thick.power);
    out.item(items::THICK_FRONT, thick.front);
    out.item(items::THICK_BACK, thick.back);
    if eye.get(LENS_POWER).is_some_and(|label| (label.d() - thick.power).abs() > tolerance(label)) {
        out.about(cautions::SURFACES_DISAGREE, FRONT_RADIUS);
    }
    let Ok(power) = LensPower::from_d(thick.power) else { return };
    let mut any = false;
    for answer in lens.compared() {
        let Some(thin) = answer.optics.thin_eye() else { continue };
        let Ok(left) = thin.refraction(power, eye.vertex()) else { continue };
        for (what, before) in [(items::AS_FRONT, 0.0), (items::AS_CENTRE, thick.t / 2.0), (items::AS_BACK, thick.t)] {
            if let Ok(placed) = thick.placed(thin, thin.elp - before).refraction(power, eye.vertex()) {
                out.of(what, placed.rx - left.rx, answer.method);
                any = true;
            }
        }
    }
    if any {
        out.about(cautions::POSITION_PLANE, LENS_CENTRE);
    }
}

#[inline(never)]
pub(crate) fn explain(subject: u8, lens: &Lens, out: &mut Out) -> bool {
    match subject {
        0 => {
            lens.eye.get(LENS_POWER);
            known(lens.eye).inspect(|w| w.show(out)).is_some()
        }
        _ => schematic(out),
    }
}

/// Two schematic eyes, each as one lens in air: of no case.
fn schematic(out: &mut Out) -> bool {
    let eyes = (system(1.0, GULLSTRAND), system(1.0, LE_GRAND));
    if let Ok(w) = &eyes.0 {
        w.show(out);
    }
    if let Ok(w) = &eyes.1 {
        w.show_le_grand(out);
    }
    eyes.0.is_ok() || eyes.1.is_ok()
}
