//! The rhexis, as it is and as it looks.

pub mod table;

use crate::caution::Caution;
use crate::error::Wrong;
use crate::item::Item;
use crate::parts::eye::Eye;
use crate::parts::general::show;
use crate::rule::Rule;
use crate::sink::Sink;
use crate::text;
use ocellus_core::table_side::rhexis::{grasps, overlap, paraxial_magnification, working};
use table::entries::*;
use table::{cautions, items};

pub(crate) const RULES: &[Rule] = &[
    Rule::Ordered(OPTIC.id(), LENS_LENGTH.id(), LENS_LENGTH.id()),
    Rule::Accepts(Wrong::Disagree, LENS_LENGTH.id(), text!("not below {}"), &[OPTIC.id()]),
];

#[inline(never)]
pub(crate) fn plan(eye: &Eye, sink: &mut dyn Sink) {
    show(eye.entered(), sink, &[CUT.id(), GRASP.id(), OPTIC.id(), DECENTRATION.id(), CAPSULE_DEPTH.id()]);
    let one = Item::one;
    if let Some(depth) = eye.get(CAPSULE_DEPTH)
        && let Ok(factor) = paraxial_magnification(depth, eye.cornea().k())
    {
        sink.item(one(items::PARAXIAL_FACTOR, factor));
    }
    let Some(cut) = eye.get(CUT) else { return };
    let circle = working(cut);
    sink.item(one(items::RHEXIS_TRUE, circle.diameter));
    sink.item(one(items::RHEXIS_EDGE, circle.edge));
    if let Some(grasp) = eye.get(GRASP) {
        sink.item(one(items::RHEXIS_GRASPS, grasps(circle.edge, grasp)));
    }
    sink.item(one(items::CUT_SEEN, circle.cut_seen));
    sink.item(one(items::RHEXIS_SEEN, circle.seen));
    sink.item(one(items::RHEXIS_SEEN_LEAST, circle.seen_least));
    sink.item(one(items::RHEXIS_SEEN_MOST, circle.seen_most));
    sink.caution(Caution::about(cautions::RHEXIS_BAND, CUT));
    let Some((decentration, optic)) = eye.get(DECENTRATION).zip(eye.get(OPTIC)) else { return };
    let (worst, best) = overlap(circle.diameter, optic, decentration);
    let (worst_seen, best_seen) = overlap(circle.seen, optic, decentration);
    sink.item(one(items::OVERLAP_WORST, worst));
    sink.item(one(items::OVERLAP_BEST, best));
    sink.item(one(items::OVERLAP_WORST_SEEN, worst_seen));
    sink.item(one(items::OVERLAP_BEST_SEEN, best_seen));
    if worst < 0.0 {
        sink.caution(Caution::about(cautions::RHEXIS_UNCOVERED, DECENTRATION));
    }
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, eye: &Eye, sink: &mut dyn Sink) -> bool {
    eye.get(CUT).map(working).inspect(|w| w.show(sink)).is_some()
}
