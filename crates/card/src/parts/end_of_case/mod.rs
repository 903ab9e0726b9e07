//! Before the eye is closed: viscoelastic out, the lens where it belongs.

pub mod table;

use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::pressure::table::entries::VACUUM_VISCOELASTIC;
use crate::parts::toric::Label;
use crate::parts::toric::table::entries::MARK_FOUND;
use ocellus_core::fluids::unit::{Unit, convert};
use table::entries::HAPTIC_AXIS;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    if let Some(vacuum) = eye.get(VACUUM_VISCOELASTIC) {
        out.show(const { &[VACUUM_VISCOELASTIC.id()] });
        out.item(items::VISCOELASTIC_KPA, convert(vacuum.mmhg(), Unit::MmHg, Unit::KPa));
        out.item(items::VISCOELASTIC_CMH2O, convert(vacuum.mmhg(), Unit::MmHg, Unit::CmH2O));
    }
    out.caution(cautions::VISCOELASTIC_LEFT);
    // a toric axis overrides any other wish
    let toric_axis = Label::of(eye).and_then(|label| label.chosen).map(|(_, axis)| axis);
    // a lens that was found elsewhere has its meridian where its turn is shown
    let wanted = toric_axis.or_else(|| eye.get(HAPTIC_AXIS));
    out.meridian(items::ORIENTATION, wanted.filter(|_| !eye.entered().is_made(MARK_FOUND)));
    if toric_axis.is_none() {
        out.about(cautions::HAPTICS_HORIZONTAL, HAPTIC_AXIS);
    }
}
