//! What a toric lens is expected to leave, when the cornea is measured and the lens placed as well as people do.

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::constant::off_axis::{LYING_MEAN, LYING_SD, MARKING_MEAN, MARKING_SD};
use crate::math::{exp, radians, sqrt, square};
use crate::quantity::{AlignmentScatter, ScatterPower};

/// How far things scatter about what was planned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// SD of each component of the corneal astigmatism: measured, and after the incision, D.
    pub cornea: f64,
    /// The mean of cos 2p over the angles p by which lenses lie off.
    aligned: f64,
    /// SD of these angles, degrees.
    alignment: f64,
}

impl Scatter {
    /// From the SD of a component of the cornea's vector, D, and of the lens's angle, degrees.
    ///
    /// ```text
    /// mean of cos 2p = exp(-2 s^2)          s the SD of p in radians, p normal about 0
    /// ```
    ///
    /// ```
    /// let scatter = ocellus_core::astigmatism::expected::Scatter::new(0.2, 5.0);
    /// assert_eq!(scatter.cornea, 0.2);
    /// ```
    pub fn new(cornea: f64, alignment: f64) -> Scatter {
        Scatter { cornea, aligned: exp(-2.0 * square(radians(alignment))), alignment }
    }
}

/// SD of a component of the cornea's vector as it will be: measured, and after the incision, D.
///
/// ```text
/// SD^2 = SD measured^2 + SD of the incision's effect^2
/// ```
///
/// ```
/// use ocellus_core::{astigmatism::expected::cornea_sd, quantity::ScatterPower};
/// assert_eq!(cornea_sd(ScatterPower::from_d(0.3)?, ScatterPower::from_d(0.4)?), 0.5);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn cornea_sd(measured: ScatterPower, incision: ScatterPower) -> f64 {
    sqrt(square(measured.d()) + square(incision.d()))
}

/// SD of the lens's angle, degrees: as given, or of published lenses marked and placed; and of eyes that turn lying down where
/// they were marked so.
///
/// ```text
/// SD^2 = mean^2 + SD^2 of a published error, whose sense is not known
/// ```
///
/// ```
/// use ocellus_core::astigmatism::expected::alignment_sd;
/// assert!((alignment_sd(None, false) - 5.33).abs() < 0.005);
/// ```
pub fn alignment_sd(placing: Option<AlignmentScatter>, marked_lying: bool) -> f64 {
    let placed = placing.map_or(square(MARKING_MEAN.get()) + square(MARKING_SD.get()), |sd| square(sd.deg()));
    let lying = if marked_lying { square(LYING_MEAN.get()) + square(LYING_SD.get()) } else { 0.0 };
    sqrt(placed + lying)
}

working! {
    /// The expected residual, step by step.
    Working "What it is expected to leave, with scatter";
    y "Y" "D" = "cylinder of the lens at the cornea" [], "what the lens corrects", Identity Two;
    n "N" "D" = "N' above" [], "corneal astigmatism after the incisions", Identity Two;
    alignment "s" "deg" = "s^2 = the SD entered^2, or 4.9^2 + 2.1^2; marked lying down, + 1.43^2 + 3.41^2" [MARKING_MEAN, MARKING_SD, LYING_MEAN, LYING_SD],
        "scatter of alignment", Marking2011 Chosen;
    cornea "g" "D" = "g^2 = SD of a component of the cornea^2 + of the incision^2" [], "scatter of the cornea, each component", Identity Two;
    aligned "e" "1" = "e = exp(-2 s^2), s in radians" [], "mean of cos 2p", Identity Two;
    nominal "R" "D" = "R = |Y - N|, vectors" [], "left as planned", Identity Two;
    mu "mu" "D2" = "mu = Y^2 + N^2 - 2 e Y.N + 2 g^2" [], "mean of the square", Identity Two;
    v "v" "D4" = "v = 2 Y^2 N^2 (1 - e^4) + 4 (Y.N)^2 (e^4 - e^2) + 4 g^4 + 4 g^2 (mu - 2 g^2)" [], "variance of the square", Identity Two;
    mean "E" "D" = "E = sqrt(mu) (1 - q/8 + q^2/128 + 5 q^3/1024 - 21 q^4/32768), q = v/mu^2" [],
        "mean of what is left, the square taken as gamma-distributed", Here Chosen;
}

/// The mean size of what is left, D.
///
/// The lens lies off by angles p, normal with SD s; each component of the cornea's vector is off by an amount normal with SD
/// g. Mean and variance of the square of what is left follow exactly; its root's mean follows as if the square were
/// gamma-distributed, which is within 0.033 D and 3 % of the exact integral for corneas of 0.3 to 4 D, lenses within 0.7 D of
/// them, s up to 7 deg and g of 0.15 to 0.5 D, and within 0.04 D up to the s of the 10 deg accepted, marked lying down.
///
/// ```
/// use ocellus_core::astigmatism::{expected::*, plane::Cornea, power_vector::PowerVector};
/// use ocellus_core::quantity::Axis;
/// let cornea = PowerVector::strongest_along(Cornea, 0.0, 2.0, Axis::from_deg(90.0)?);
/// // a lens that should leave nothing
/// assert!(mean(cornea, cornea, Scatter::new(0.2, 5.3)) > 0.3);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn mean(lens: PowerVector<Cornea>, cornea: PowerVector<Cornea>, scatter: Scatter) -> f64 {
    let (mu, v) = square_of_half(lens, cornea, scatter);
    2.0 * root_mean(mu, v)
}

/// The same, step by step.
///
/// ```
/// use ocellus_core::astigmatism::{expected::*, plane::Cornea, power_vector::PowerVector};
/// use ocellus_core::quantity::Axis;
/// let cornea = PowerVector::strongest_along(Cornea, 0.0, 2.0, Axis::from_deg(90.0)?);
/// let (w, scatter) = (working(cornea, cornea, Scatter::new(0.2, 5.3)), Scatter::new(0.2, 5.3));
/// assert!(w.nominal == 0.0 && w.mean == mean(cornea, cornea, scatter));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(lens: PowerVector<Cornea>, cornea: PowerVector<Cornea>, scatter: Scatter) -> Working {
    let (mu, v) = square_of_half(lens, cornea, scatter);
    Working {
        y: lens.cylinder(),
        n: cornea.cylinder(),
        alignment: scatter.alignment,
        cornea: scatter.cornea,
        aligned: scatter.aligned,
        nominal: lens.minus(cornea).cylinder(),
        mu: 4.0 * mu,
        v: 16.0 * v,
        mean: 2.0 * root_mean(mu, v),
    }
}

/// Mean and variance of the square of half of what is left: vectors are kept as halves of their cylinders.
fn square_of_half(lens: PowerVector<Cornea>, cornea: PowerVector<Cornea>, scatter: Scatter) -> (f64, f64) {
    let product = |a: PowerVector<Cornea>, b: PowerVector<Cornea>| a.j0 * b.j0 + a.j45 * b.j45;
    let (y2, n2, dot) = (product(lens, lens), product(cornea, cornea), product(lens, cornea));
    let (e, g2) = (scatter.aligned, square(scatter.cornea / 2.0));
    let e2 = square(e);
    let e4 = square(e2);
    let placed = y2 + n2 - 2.0 * e * dot;
    let turned = 2.0 * y2 * n2 * (1.0 - e4) + 4.0 * square(dot) * (e4 - e2);
    (placed + 2.0 * g2, (turned + 4.0 * g2 * (g2 + placed)).max(0.0))
}

/// Mean of the root of a gamma-distributed number, from its mean and variance.
///
/// ```text
/// sqrt(mu) (1 - q/8 + q^2/128 + 5 q^3/1024 - 21 q^4/32768)          q = v/mu^2, one over the shape
/// ```
fn root_mean(mu: f64, v: f64) -> f64 {
    if mu <= 0.0 {
        return 0.0;
    }
    // beyond a half the series no longer holds, and no scatter comes there
    let q = (v / square(mu)).min(2.0);
    sqrt(mu) * (1.0 - q * (1.0 / 8.0 - q * (1.0 / 128.0 + q * (5.0 / 1024.0 - q * (21.0 / 32768.0)))))
}
