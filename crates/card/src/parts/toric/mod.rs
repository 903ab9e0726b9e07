//! The toric label: what it means, what it comes in, what was chosen.

pub mod table;

use crate::entry::Entry;
use crate::id::EntryId;
use crate::parts::eye::Eye;
use crate::rule::Rule;
use ocellus_core::astigmatism::toric::{CylinderPlane, LabelPower};
use ocellus_core::quantity::{Axis, LensCylinder};
use table::entries::*;

/// The cylinders that one model may come in.
const MADE: [Entry<LensCylinder>; 8] =
    [CYLINDER_1, CYLINDER_2, CYLINDER_3, CYLINDER_4, CYLINDER_5, CYLINDER_6, CYLINDER_7, CYLINDER_8];

pub(crate) const CYLINDERS: [EntryId; 8] = [
    CYLINDER_1.id(),
    CYLINDER_2.id(),
    CYLINDER_3.id(),
    CYLINDER_4.id(),
    CYLINDER_5.id(),
    CYLINDER_6.id(),
    CYLINDER_7.id(),
    CYLINDER_8.id(),
];

pub(crate) const RULES: &[Rule] = &[
    Rule::Together(&[LENS_CYLINDER.id()], &[LENS_AXIS.id()]),
    Rule::Together(&[LENS_AXIS.id()], &[LENS_CYLINDER.id()]),
    // a toric label is ambiguous by half its cylinder: neither of these has a default
    Rule::Together(
        &[
            CYLINDER_1.id(),
            CYLINDER_2.id(),
            CYLINDER_3.id(),
            CYLINDER_4.id(),
            CYLINDER_5.id(),
            CYLINDER_6.id(),
            CYLINDER_7.id(),
            CYLINDER_8.id(),
            LENS_CYLINDER.id(),
        ],
        &[LABEL_POWER.id(), CYLINDER_PLANE.id()],
    ),
];

/// The toric label.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Label {
    pub(crate) power: LabelPower,
    pub(crate) plane: CylinderPlane,
    /// The cylinder chosen, and the meridian for its mark.
    pub(crate) chosen: Option<(LensCylinder, Axis)>,
}

impl Label {
    /// The label of a toric lens, where there is one.
    #[inline(never)]
    pub(crate) fn of(eye: &Eye) -> Option<Label> {
        let chosen = eye.get(LENS_CYLINDER).zip(eye.get(LENS_AXIS));
        if chosen.is_none() && cylinders(eye).next().is_none() {
            return None;
        }
        Some(Label { power: eye.get(LABEL_POWER)?, plane: eye.get(CYLINDER_PLANE)?, chosen })
    }

    /// Whether it states the weak meridian of a lens whose cylinder is not chosen yet.
    pub(crate) fn is_unsettled(&self) -> bool {
        self.power == LabelPower::FlattestMeridian && self.chosen.is_none()
    }
}

/// The label cylinders of the model.
pub(crate) fn cylinders(eye: &Eye) -> impl Iterator<Item = LensCylinder> + Clone {
    MADE.iter().filter_map(|entry| eye.get(*entry))
}
