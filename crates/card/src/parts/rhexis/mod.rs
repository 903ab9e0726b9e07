//! The rhexis, as it is and as it looks.

pub mod table;

use crate::error::Wrong;
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::rule::Rule;
use ocellus_core::table_side::rhexis::{grasps, overlap, paraxial_magnification, working};
use ocellus_text::text;
use table::entries::*;
use table::{cautions, items};

pub(crate) const RULES: &[Rule] = &[
    Rule::Ordered(OPTIC.id(), LENS_LENGTH.id(), LENS_LENGTH.id()),
    Rule::Accepts(Wrong::Disagree, LENS_LENGTH.id(), text!("not below {}"), &[OPTIC.id()]),
];

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    out.show(const { &[CUT.id(), GRASP.id(), OPTIC.id(), DECENTRATION.id(), CAPSULE_DEPTH.id()] });
    if let Some(depth) = eye.get(CAPSULE_DEPTH)
        && let Ok(factor) = paraxial_magnification(depth, eye.mean_cornea().k())
    {
        out.item(items::PARAXIAL_FACTOR, factor);
    }
    let Some(cut) = eye.get(CUT) else { return };
    let circle = working(cut);
    out.item(items::RHEXIS_TRUE, circle.diameter);
    out.item(items::RHEXIS_EDGE, circle.edge);
    if let Some(grasp) = eye.get(GRASP) {
        out.item(items::RHEXIS_GRASPS, grasps(circle.edge, grasp));
    }
    out.item(items::CUT_SEEN, circle.cut_seen);
    out.item(items::RHEXIS_SEEN, circle.seen);
    out.item(items::RHEXIS_SEEN_LEAST, circle.seen_least);
    out.item(items::RHEXIS_SEEN_MOST, circle.seen_most);
    out.about(cautions::RHEXIS_BAND, CUT);
    let Some((decentration, optic)) = eye.get(DECENTRATION).zip(eye.get(OPTIC)) else { return };
    let (worst, best) = overlap(circle.diameter, optic, decentration);
    let (worst_seen, best_seen) = overlap(circle.seen, optic, decentration);
    out.item(items::OVERLAP_WORST, worst);
    out.item(items::OVERLAP_BEST, best);
    out.item(items::OVERLAP_WORST_SEEN, worst_seen);
    out.item(items::OVERLAP_BEST_SEEN, best_seen);
    if worst < 0.0 {
        out.about(cautions::RHEXIS_UNCOVERED, DECENTRATION);
    }
}

#[inline(never)]
pub(crate) fn explain(_subject: u8, eye: &Eye, out: &mut Out) -> bool {
    eye.get(CUT).map(working).inspect(|w| w.show(out)).is_some()
}
