//! From the first cut to the circle, and the circle on the optic.

use crate::constant::optics::N;
use crate::constant::table_side::{SEEN_LEAST, SEEN_MEAN, SEEN_MOST};
use crate::error::Error;
use crate::math::{CIRCLE, ceil};
use crate::quantity::{CapsuleDepth, Cut, Decentration, Grasp, OpticDiameter};

working! {
    /// The rhexis, step by step.
    Working "The circle";
    cut "c" "mm" = "entered" [], "straight first cut from the centre", Entered Entered;
    diameter "D" "mm" = "D = 2 c" [], "diameter, if the cut is true at the capsule", NoSource CommonPractice;
    edge "E" "mm" = "E = pi D" [], "edge to tear", Identity Two;
    cut_seen "c'" "mm" = "c' = c/1.159, measured mean 115.9 %" [SEEN_MEAN], "true length of a cut that only looks that long", RhexisSeen Read;
    seen "D'" "mm" = "D' = 2 c'" [], "diameter, if the cut only looks that long", RhexisSeen Read;
    seen_least "D'min" "mm" = "D'min = 2 c/1.20, deep and steep: 120 %" [SEEN_MOST], "the least of that", RhexisSeen Read;
    seen_most "D'max" "mm" = "D'max = 2 c/1.10, shallow and flat: 110 %" [SEEN_LEAST], "the most of that", RhexisSeen Read;
}

/// The circle a straight first cut makes: twice its length, if the cut is true at the capsule; less if it only looks
/// that long through the cornea.
///
/// ```
/// use ocellus_core::{quantity::Cut, table_side::rhexis};
/// let w = rhexis::working(Cut::from_mm(2.5)?);
/// assert_eq!(w.diameter, 5.0);
/// assert!((w.seen - 4.31).abs() < 0.005 && (w.seen_least - 4.17).abs() < 0.005 && (w.seen_most - 4.55).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(cut: Cut) -> Working {
    let cut = cut.mm();
    let diameter = 2.0 * cut;
    let cut_seen = 100.0 * cut / SEEN_MEAN.get();
    Working {
        cut,
        diameter,
        edge: CIRCLE * diameter,
        cut_seen,
        seen: 2.0 * cut_seen,
        seen_least: 100.0 * diameter / SEEN_MOST.get(),
        seen_most: 100.0 * diameter / SEEN_LEAST.get(),
    }
}

/// Grasps to tear an edge, mm, when it is grasped again after each length.
///
/// ```
/// use ocellus_core::{quantity::*, table_side::rhexis};
/// assert_eq!(rhexis::grasps(rhexis::working(Cut::from_mm(2.5)?).edge, Grasp::from_mm(1.0)?), 16.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn grasps(edge: f64, grasp: Grasp) -> f64 {
    ceil(edge / grasp.mm())
}

/// Least and greatest overlap of the rhexis edge on the optic, mm; the edge is covered all round when the least is not
/// negative.
///
/// ```text
/// (O - D)/2 -/+ e
/// ```
///
/// ```
/// use ocellus_core::{quantity::*, table_side::rhexis::overlap};
/// let (worst, best) = overlap(5.25, OpticDiameter::from_mm(6.0)?, Decentration::from_mm(0.38)?);
/// assert!((worst - -0.005).abs() < 1e-12 && (best - 0.755).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn overlap(diameter: f64, optic: OpticDiameter, decentration: Decentration) -> (f64, f64) {
    let centred = (optic.mm() - diameter) / 2.0;
    (centred - decentration.mm(), centred + decentration.mm())
}

/// How much larger a thing at the capsule looks through the cornea, by paraxial optics; measured eyes show more.
///
/// ```text
/// 1/(1 - d K/(1000 n))
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] when the depth reaches the focus of the cornea.
///
/// ```
/// use ocellus_core::{quantity::CapsuleDepth, table_side::rhexis::paraxial_magnification};
/// assert!((paraxial_magnification(CapsuleDepth::from_mm(3.28)?, 43.5)? - 1.12).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn paraxial_magnification(depth: CapsuleDepth, k: f64) -> Result<f64, Error> {
    let divisor = 1.0 - depth.mm() * k / (1000.0 * N.get());
    if divisor > 0.0 { Ok(1.0 / divisor) } else { Err(Error::NoSolution) }
}
