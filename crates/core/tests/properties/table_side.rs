//! Rhexis and wound.

use ocellus_core::quantity::{CapsuleDepth, Cut, Decentration, Grasp, OpticDiameter, WoundLength};
use ocellus_core::table_side::rhexis::{grasps, overlap, paraxial_magnification, working};
use ocellus_core::table_side::wound::squareness;
use proptest::prelude::*;

use crate::close;

proptest! {
    /// What the optic has over the rhexis is shared out between the two sides, by the decentration.
    #[test]
    fn overlaps_add_up(diameter in 1.0..9.0, optic in 4.0..8.0, decentration in 0.0..3.0) {
        let (optic_mm, off) = (OpticDiameter::from_mm(optic).unwrap(), Decentration::from_mm(decentration).unwrap());
        let (worst, best) = overlap(diameter, optic_mm, off);
        prop_assert!(close(worst + best, optic - diameter) && close(best - worst, 2.0 * decentration));
        prop_assert!(worst <= best);
    }

    /// A cut that only looks its length makes a smaller circle, and the band encloses the mean.
    #[test]
    fn circles_keep_their_order(cut in 0.5..5.0) {
        let w = working(Cut::from_mm(cut).unwrap());
        prop_assert!(w.seen_least < w.seen && w.seen < w.seen_most && w.seen_most < w.diameter);
        prop_assert!(close(w.diameter, 2.0 * cut) && close(w.edge / w.diameter, std::f64::consts::PI));
    }

    /// The grasps are enough for the edge, and one fewer is not.
    #[test]
    fn grasps_are_just_enough(edge in 1.0..40.0, grasp in 0.2..10.0) {
        let count = grasps(edge, Grasp::from_mm(grasp).unwrap());
        prop_assert!(count * grasp >= edge * (1.0 - 1e-12) && (count - 1.0) * grasp < edge);
    }

    /// The deeper the capsule and the steeper the cornea, the larger it looks.
    #[test]
    fn magnification_rises(depth in 1.5..6.5, deeper in 0.01..0.5, k in 30.0..60.0, steeper in 0.01..5.0) {
        let seen = |mm, k| paraxial_magnification(CapsuleDepth::from_mm(mm).unwrap(), k).unwrap();
        prop_assert!(1.0 < seen(depth, k) && seen(depth, k) < seen(depth + deeper, k));
        prop_assert!(seen(depth, k) < seen(depth, k + steeper));
    }

    /// A tunnel turned by a quarter has the inverse squareness.
    #[test]
    fn squareness_turns_over(tunnel in 0.3..12.0, width in 0.3..12.0) {
        let (tunnel, width) = (WoundLength::from_mm(tunnel).unwrap(), WoundLength::from_mm(width).unwrap());
        prop_assert!(close(squareness(tunnel, width) * squareness(width, tunnel), 1.0));
    }
}
