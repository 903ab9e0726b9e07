//! Axial length adjusted for long eyes: three published sets of straight lines, none of them applied unless asked for.

use crate::constant::Constant;
use crate::constant::long_eye::*;
use crate::lens::method::Method;
use crate::quantity::AxialLength;

crate::choices! {
    /// What is done about the axial length of a long eye.
    LongEye {
        /// Nothing.
        Off "off",
        /// The first set of 2011.
        First2011 "first_2011",
        /// The second set of 2011.
        Second2011 "second_2011",
        /// The set of 2018.
        Set2018 "set_2018",
        /// Nothing, with all sets shown beside.
        Compared "compared",
    }
}

working! {
    /// An adjusted length, step by step.
    Working "The length, adjusted for a long eye";
    al "AL" "mm" = "entered" [], "axial length", Entered Entered;
    slope "b" "1" = "2011, first and second set, and 2018: Holladay 1 0.8289, 0.8814, 0.817; Haigis 0.9286, 0.9621; SRK/T 0.8544, 0.8981, 0.8453; Hoffer Q 0.8530, 0.8776"
        [HOLLADAY1_FIRST_1, HOLLADAY1_SECOND_1, HOLLADAY1_2018_1, HAIGIS_FIRST_1, HAIGIS_SECOND_1, SRKT_FIRST_1, SRKT_SECOND_1, SRKT_2018_1, HOFFERQ_FIRST_1, HOFFERQ_SECOND_1],
        "slope of the line", WangKoch Memory;
    constant "a" "mm" = "the same: Holladay 1 4.2663, 2.8701, 4.7013; Haigis 1.562, 0.6763; SRK/T 3.7222, 2.5637, 4.0773; Hoffer Q 3.5794, 2.9269"
        [HOLLADAY1_FIRST_0, HOLLADAY1_SECOND_0, HOLLADAY1_2018_0, HAIGIS_FIRST_0, HAIGIS_SECOND_0, SRKT_FIRST_0, SRKT_SECOND_0, SRKT_2018_0, HOFFERQ_FIRST_0, HOFFERQ_SECOND_0],
        "its constant", WangKoch Memory;
    above "e" "mm" = "2011: 25.0; 2018: Holladay 1 26.5, SRK/T 27.0" [ABOVE_2011, HOLLADAY1_2018_ABOVE, SRKT_2018_ABOVE],
        "length above which it holds", WangKoch Memory;
    step "s" "mm" = "s = b e + a - e" [], "step that it makes there", Identity Two;
    adjusted "AL*" "mm" = "AL* = b AL + a; used for AL from here on" [], "axial length adjusted", WangKoch Memory;
}

/// The published sets, in the order they are shown.
pub const SETS: [LongEye; 3] = [LongEye::First2011, LongEye::Second2011, LongEye::Set2018];

/// Set, method, and its line: slope, constant, and the length above which it holds. A method without a line is left as it is.
const LINES: &[(LongEye, Method, [&Constant; 3])] = &[
    (LongEye::First2011, Method::Holladay1, [&HOLLADAY1_FIRST_1, &HOLLADAY1_FIRST_0, &ABOVE_2011]),
    (LongEye::First2011, Method::Haigis, [&HAIGIS_FIRST_1, &HAIGIS_FIRST_0, &ABOVE_2011]),
    (LongEye::First2011, Method::Srkt, [&SRKT_FIRST_1, &SRKT_FIRST_0, &ABOVE_2011]),
    (LongEye::First2011, Method::HofferQ, [&HOFFERQ_FIRST_1, &HOFFERQ_FIRST_0, &ABOVE_2011]),
    (LongEye::Second2011, Method::Holladay1, [&HOLLADAY1_SECOND_1, &HOLLADAY1_SECOND_0, &ABOVE_2011]),
    (LongEye::Second2011, Method::Haigis, [&HAIGIS_SECOND_1, &HAIGIS_SECOND_0, &ABOVE_2011]),
    (LongEye::Second2011, Method::Srkt, [&SRKT_SECOND_1, &SRKT_SECOND_0, &ABOVE_2011]),
    (LongEye::Second2011, Method::HofferQ, [&HOFFERQ_SECOND_1, &HOFFERQ_SECOND_0, &ABOVE_2011]),
    (LongEye::Set2018, Method::Holladay1, [&HOLLADAY1_2018_1, &HOLLADAY1_2018_0, &HOLLADAY1_2018_ABOVE]),
    (LongEye::Set2018, Method::Srkt, [&SRKT_2018_1, &SRKT_2018_0, &SRKT_2018_ABOVE]),
];

/// The length that a set gives a method instead of the measured one.
///
/// ```text
/// AL* = b AL + a          where AL is above e; else AL as it is
/// ```
///
/// `None` where the set has no line for the method, or the eye is not above its length. Each line makes a step where it
/// begins, and it is given. Sources: Wang 2011, 2018 (memory).
///
/// ```
/// use ocellus_core::{lens::{long_eye::{self, LongEye}, method::Method}, quantity::AxialLength};
/// let w = long_eye::working(LongEye::Set2018, Method::Holladay1, AxialLength::from_mm(30.0)?).unwrap();
/// assert!((w.adjusted - 29.2113).abs() < 1e-9 && (w.step - -0.1482).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(set: LongEye, method: Method, al: AxialLength) -> Option<Working> {
    let (_, _, line) = LINES.iter().find(|(of, by, _)| (*of, *by) == (set, method))?;
    let [slope, constant, above] = line.map(Constant::get);
    let al = al.mm();
    let on_line = |al: f64| slope * al + constant;
    (al > above).then(|| Working { al, slope, constant, above, step: on_line(above) - above, adjusted: on_line(al) })
}
