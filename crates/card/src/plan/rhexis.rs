//! The rhexis, as it is and as it looks.

use super::entries;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::sink::Sink;
use crate::table_side::rhexis::{grasps, overlap, paraxial_magnification, working};

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Rhexis);
    entries(case.draft(), sink, &[Field::Cut, Field::Grasp, Field::Decentration, Field::CapsuleDepth]);
    let one = Item::one;
    if let Some(depth) = case.capsule_depth()
        && let Ok(factor) = paraxial_magnification(depth, case.cornea.k())
    {
        sink.item(one(What::ParaxialFactor, factor));
    }
    let Some(cut) = case.cut() else { return };
    let circle = working(cut);
    sink.item(one(What::RhexisTrue, circle.diameter));
    sink.item(one(What::RhexisEdge, circle.edge));
    if let Some(grasp) = case.grasp() {
        sink.item(one(What::RhexisGrasps, grasps(circle.edge, grasp)));
    }
    sink.item(one(What::CutSeen, circle.cut_seen));
    sink.item(one(What::RhexisSeen, circle.seen));
    sink.item(one(What::RhexisSeenLeast, circle.seen_least));
    sink.item(one(What::RhexisSeenMost, circle.seen_most));
    sink.caution(Caution::about(Code::RhexisBand, Field::Cut));
    let Some((optic, decentration)) = case.optic().zip(case.decentration()) else { return };
    let (worst, best) = overlap(circle.diameter, optic, decentration);
    let (worst_seen, best_seen) = overlap(circle.seen, optic, decentration);
    sink.item(one(What::OverlapWorst, worst));
    sink.item(one(What::OverlapBest, best));
    sink.item(one(What::OverlapWorstSeen, worst_seen));
    sink.item(one(What::OverlapBestSeen, best_seen));
    if worst < 0.0 {
        sink.caution(Caution::about(Code::RhexisUncovered, Field::Decentration));
    }
}
