//! The back of the cornea where it was not measured: published corrections of the front's astigmatism, each under its name.
//!
//! Vectors are of one index, 1.3375: x is plus against the rule (steep at 0), y plus where it is steep at 45.

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::constant::posterior::*;
use crate::quantity::Axis;

crate::choices! {
    /// Where the back of the cornea is taken from.
    BackFrom {
        /// From nowhere: the front stands for both.
        None "none",
        /// From its own radii.
        Measured "measured",
        /// From a regression of 2016.
        Regression2016 "regression_2016",
        /// From Eom and others, 2015.
        Eom2015 "eom_2015",
        /// From Goggin and others, 2015.
        Goggin2015 "goggin_2015",
    }
}

working! {
    /// A correction, step by step.
    Working "The published correction for the back of the cornea";
    n "N" "D" = "N = K steep - K flat" [], "corneal astigmatism measured", Identity Two;
    a "a" "deg" = "entered: with the rule from 60 to 120, against it to 30 and from 150, oblique between" [WITH_FROM, AGAINST_TO],
        "steep meridian, which makes the class", Eom2015 Read;
    x "x" "D" = "x = N cos 2a" [], "its vector", Thibos1997 Two;
    y "y" "D" = "y = N sin 2a" [], "its vector", Thibos1997 Two;
    b_x "x'" "D" = "regression_2016 0.508 + 0.926 x; eom_2015 x + 0.15 N + 0.22 with the rule, x + 0.05 N + 0.27 oblique, x + 0.27 against; goggin_2015 0.75 x, x, 1.41 x; none x"
        [REGRESSION_X, REGRESSION_XX, EOM_WITH_PER_D, EOM_WITH, EOM_OBLIQUE_PER_D, EOM_OBLIQUE, EOM_AGAINST, GOGGIN_WITH, GOGGIN_AGAINST],
        "with the back", Eom2015 Memory;
    b_y "y'" "D" = "regression_2016 0.009 + 0.932 y; eom_2015 y; goggin_2015 0.75 y, y, 1.41 y; none y" [REGRESSION_Y, REGRESSION_YY],
        "with the back", Eom2015 Memory;
}

/// The steps of a published correction; `None` where the back was measured, or where there is no axis.
///
/// ```
/// use ocellus_core::astigmatism::{plane::Cornea, posterior::{BackFrom, working}, power_vector::PowerVector};
/// use ocellus_core::quantity::Axis;
/// let front = PowerVector::strongest_along(Cornea, 0.0, 1.0, Axis::from_deg(0.0)?);
/// assert!((working(front, BackFrom::Regression2016).unwrap().b_x - 1.434).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(front: PowerVector<Cornea>, from: BackFrom) -> Option<Working> {
    let with_back = corrected(front, from)?;
    Some(Working {
        n: front.cylinder(),
        a: front.strongest()?.deg(),
        x: 2.0 * front.j0,
        y: 2.0 * front.j45,
        b_x: 2.0 * with_back.j0,
        b_y: 2.0 * with_back.j45,
    })
}

/// The class of an astigmatism, by its steep meridian.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Steep from 60 to 120.
    With,
    /// Steep from 0 to 30 and from 150 to 180.
    Against,
    /// Steep between these.
    Oblique,
}

/// The class of a steep meridian.
///
/// ```
/// use ocellus_core::{astigmatism::posterior::*, quantity::Axis};
/// assert_eq!(class(Axis::from_deg(60.0)?), Class::With);
/// assert_eq!(class(Axis::from_deg(150.0)?), Class::Against);
/// assert_eq!(class(Axis::from_deg(149.0)?), Class::Oblique);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn class(steep: Axis) -> Class {
    // a meridian that went through a vector comes back with its last bits changed, and must not change class by that
    const HAIR: f64 = 1e-9;
    let from_horizontal = steep.deg().min(180.0 - steep.deg());
    if from_horizontal >= WITH_FROM.get() - HAIR {
        Class::With
    } else if from_horizontal <= AGAINST_TO.get() + HAIR {
        Class::Against
    } else {
        Class::Oblique
    }
}

/// The astigmatism that a published correction makes of the one measured in front.
///
/// ```text
/// regression of 2016   x' = 0.508 + 0.926 x      y' = 0.009 + 0.932 y
/// Eom 2015             x' = x + 0.15 N + 0.22 (with the rule), + 0.05 N + 0.27 (oblique), + 0.27 (against)
/// Goggin 2015          N' = 0.75 N (with the rule), 1.41 N (against), N (oblique)
/// ```
///
/// `None` for a back that was measured: see [`crate::astigmatism::two_surfaces`].
///
/// ```
/// use ocellus_core::astigmatism::{plane::Cornea, posterior::{BackFrom, corrected}, power_vector::PowerVector};
/// use ocellus_core::quantity::Axis;
/// let with_the_rule = PowerVector::strongest_along(Cornea, 0.0, 2.0, Axis::from_deg(90.0)?);
/// let total = corrected(with_the_rule, BackFrom::Eom2015).unwrap();
/// assert!((total.cylinder() - 1.48).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn corrected(front: PowerVector<Cornea>, from: BackFrom) -> Option<PowerVector<Cornea>> {
    let class = if by_class(from) { front.strongest().map(class) } else { None };
    in_class(front, from, class.unwrap_or(Class::Oblique))
}

/// Whether a correction goes by classes.
fn by_class(from: BackFrom) -> bool {
    matches!(from, BackFrom::Eom2015 | BackFrom::Goggin2015)
}

/// The same for an astigmatism taken to be of a class.
fn in_class(front: PowerVector<Cornea>, from: BackFrom, class: Class) -> Option<PowerVector<Cornea>> {
    let (x, y) = (2.0 * front.j0, 2.0 * front.j45);
    let (x, y) = match (from, class) {
        (BackFrom::Measured, _) => return None,
        (BackFrom::None, _) | (BackFrom::Goggin2015, Class::Oblique) => (x, y),
        (BackFrom::Regression2016, _) => {
            (REGRESSION_X.get() + REGRESSION_XX.get() * x, REGRESSION_Y.get() + REGRESSION_YY.get() * y)
        }
        (BackFrom::Eom2015, Class::With) => (x + (EOM_WITH_PER_D.get() * front.cylinder() + EOM_WITH.get()), y),
        (BackFrom::Eom2015, Class::Oblique) => {
            (x + (EOM_OBLIQUE_PER_D.get() * front.cylinder() + EOM_OBLIQUE.get()), y)
        }
        (BackFrom::Eom2015, Class::Against) => (x + EOM_AGAINST.get(), y),
        (BackFrom::Goggin2015, Class::With) => (GOGGIN_WITH.get() * x, GOGGIN_WITH.get() * y),
        (BackFrom::Goggin2015, Class::Against) => (GOGGIN_AGAINST.get() * x, GOGGIN_AGAINST.get() * y),
    };
    Some(PowerVector { j0: x / 2.0, j45: y / 2.0, ..front })
}

/// The nearest edge between two classes, where a correction by classes makes a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// How far the steep meridian is from it, degrees.
    pub distance: f64,
    /// How far apart the two corrections are there, D.
    pub step: f64,
}

/// The nearest edge of a correction that goes by classes; `None` of the others, and without an axis.
///
/// ```
/// use ocellus_core::astigmatism::{plane::Cornea, posterior::{BackFrom, edge}, power_vector::PowerVector};
/// use ocellus_core::quantity::Axis;
/// let front = PowerVector::strongest_along(Cornea, 0.0, 2.0, Axis::from_deg(62.0)?);
/// let edge = edge(front, BackFrom::Eom2015).unwrap();
/// assert!((edge.distance - 2.0).abs() < 1e-9 && (edge.step - 0.15).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn edge(front: PowerVector<Cornea>, from: BackFrom) -> Option<Edge> {
    if !by_class(from) {
        return None;
    }
    let steep = front.strongest()?.deg();
    let from_horizontal = steep.min(180.0 - steep);
    let (to_with, to_against) = (WITH_FROM.get() - from_horizontal, from_horizontal - AGAINST_TO.get());
    let (distance, at, beyond) = if to_with.abs() <= to_against.abs() {
        (to_with.abs(), WITH_FROM.get(), Class::With)
    } else {
        (to_against.abs(), AGAINST_TO.get(), Class::Against)
    };
    let there = PowerVector::strongest_along(Cornea, 0.0, front.cylinder(), Axis::from_deg(at).ok()?);
    let step = in_class(there, from, beyond)?.minus(in_class(there, from, Class::Oblique)?).cylinder();
    Some(Edge { distance, step })
}
