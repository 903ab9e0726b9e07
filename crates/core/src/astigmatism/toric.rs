//! The toric lens, by exact vergence at a method's own lens position: no fixed ratio.

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::constant::optics::N;
use crate::error::Error;
use crate::optics::{thin_eye::ThinEye, vertex::to_cornea};
use crate::quantity::{Axis, LensCylinder, Refraction, Vertex};

crate::choices! {
    /// What the power on a toric label is.
    LabelPower {
        /// The mean of the two meridians.
        SphericalEquivalent "spherical_equivalent",
        /// The weaker meridian, the one the lens is marked along.
        FlattestMeridian "flattest_meridian",
    }
    /// Where the cylinder on a toric label is meant.
    CylinderPlane {
        /// At the lens.
        Lens "lens",
        /// At the cornea, as the maker converts it.
        Cornea "cornea",
    }
}

working! {
    /// From the cornea to the cylinder at the lens, step by step.
    Working "The cylinder at the lens";
    n "N" "D" = "N' above" [], "corneal astigmatism after the incision", Identity Two;
    kc "Kc" "D" = "Kc of the method's optics" [], "mean corneal power", Identity Memory;
    elp "d" "mm" = "ELP of the method" [], "lens position", Identity Memory;
    rc "Rc" "D" = "Rc = Rx / (1 - V Rx/1000)" [], "refraction wanted, at the cornea", Identity Two;
    k_steep "k_s" "D" = "k_s = Kc + N/2 + Rc" [], "light leaving the steep meridian", Identity Two;
    k_flat "k_f" "D" = "k_f = Kc - N/2 + Rc" [], "light leaving the flat meridian", Identity Two;
    v_steep "v_s" "D" = "v_s = k_s / (c - d k_s/(1000*1.336)), c 1, Shammas-PL 1.0125" [N], "the steep meridian's light at the lens", Identity Two;
    v_flat "v_f" "D" = "v_f = k_f / (c - d k_f/(1000*1.336))" [N], "the flat meridian's light at the lens", Identity Two;
    needed "C" "D" = "C = v_s - v_f" [], "cylinder needed at the lens", Identity Two;
    ratio "C/N" "1" = "C/N, near N = 0 its limit c/(c - d (Kc + Rc)/(1000*1.336))^2" [N], "lens cylinder over corneal cylinder", Identity Two;
}

working! {
    /// What a cornea and a toric lens leave, step by step.
    Residual "What the toric lens chosen leaves";
    al "AL" "mm" = "AL of the method's optics" [], "axial length in the optics", Identity Memory;
    mean "P" "D" = "the label's, or before one is chosen the exact power; a label of the weak meridian, plus C/2" [],
        "mean power of the lens", Identity Memory;
    cylinder "C" "D" = "the label's; one at the cornea, taken to the lens" [], "cylinder of the lens", Entered Entered;
    mark "m" "deg" = "entered" [], "meridian of the mark, the weak one", Entered Entered;
    after "X2" "D" = "X2 = 1000*1.336/(AL - d)" [N], "vergence needed behind the lens", Identity Two;
    x_m "X_M" "D" = "X_M = X2 - P" [], "light that must arrive at the lens, mean", Identity Two;
    x_0 "X_0" "D" = "X_0 = C/2 cos 2m" [], "its part along 0 and 90", Thibos1997 Two;
    x_45 "X_45" "D" = "X_45 = C/2 sin 2m" [], "its part along 45 and 135", Thibos1997 Two;
    k_m "Y_M" "D" = "Y = 1000*1.336 c X/(d X + 1000*1.336) in both principal meridians X_M +/- C/2, axis kept" [N],
        "light that must leave the cornea, mean", Identity Two;
    k_0 "Y_0" "D" = "its part along 0 and 90" [], "the same", Identity Two;
    k_45 "Y_45" "D" = "its part along 45 and 135" [], "the same", Identity Two;
    left_m "R_M" "D" = "R_M = Y_M - Kc" [], "refraction still needed at the cornea, mean", Identity Two;
    left_0 "R_0" "D" = "R_0 = Y_0 - N/2 cos 2a, a the planned steep meridian" [], "its part along 0 and 90", Identity Two;
    left_45 "R_45" "D" = "R_45 = Y_45 - N/2 sin 2a" [], "its part along 45 and 135", Identity Two;
    left "R" "D" = "R = 2 sqrt(R_0^2 + R_45^2); its plus axis is atan2(R_45, R_0)/2 + 90" [], "cylinder left", Thibos1997 Two;
}

/// The lens cylinder that a corneal astigmatism needs.
///
/// ```text
/// v = k/(1 - (d/n) k)          C = v(Kc + N/2 + Rc) - v(Kc - N/2 + Rc)
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] as in the vergence formulas.
///
/// ```
/// use ocellus_core::{astigmatism::toric, optics::thin_eye::ThinEye, quantity::*};
/// let eye = ThinEye::new(23.5, 43.5, 5.2);
/// let w = toric::working(&eye, 1.0, Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?;
/// assert!((w.ratio - 1.449).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(eye: &ThinEye, n: f64, target: Refraction, vertex: Vertex) -> Result<Working, Error> {
    let ThinEye { kc, elp, .. } = *eye;
    let rc = to_cornea(target.d(), vertex)?;
    let (k_steep, k_flat) = (kc + n / 2.0 + rc, kc - n / 2.0 + rc);
    let (v_steep, v_flat) = (eye.arriving(k_steep)?, eye.arriving(k_flat)?);
    let needed = v_steep - v_flat;
    // below a thousandth of a dioptre the quotient is rounding noise; its limit is not
    let ratio = if n > 1e-3 {
        needed / n
    } else {
        let room = 1.0 - elp * (kc + rc) / (1000.0 * N.get() * eye.divisor);
        1.0 / (eye.divisor * room * room)
    };
    Ok(Working { n, kc, elp, rc, k_steep, k_flat, v_steep, v_flat, needed, ratio })
}

/// A label cylinder as it is at the lens, D.
///
/// A cylinder labelled at the cornea is taken to the lens as a cornea of that astigmatism would need it.
///
/// # Errors
/// As [`working()`].
///
/// ```
/// use ocellus_core::{astigmatism::toric::{CylinderPlane, at_lens_plane}, optics::thin_eye::ThinEye, quantity::*};
/// let eye = ThinEye::new(23.5, 43.5, 5.2);
/// let (label, target, vertex) = (LensCylinder::from_d(1.5)?, Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?);
/// assert_eq!(at_lens_plane(label, CylinderPlane::Lens, &eye, target, vertex)?, 1.5);
/// assert!((at_lens_plane(label, CylinderPlane::Cornea, &eye, target, vertex)? - 2.174).abs() < 0.001);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn at_lens_plane(
    label: LensCylinder,
    plane: CylinderPlane,
    eye: &ThinEye,
    target: Refraction,
    vertex: Vertex,
) -> Result<f64, Error> {
    match plane {
        CylinderPlane::Lens => Ok(label.d()),
        CylinderPlane::Cornea => working(eye, label.d(), target, vertex).map(|w| w.needed),
    }
}

/// A toric lens in the eye: its mean power, its cylinder at the lens, and where its mark (its weak meridian) lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToricLens {
    /// Mean of its two meridians, D.
    pub mean: f64,
    /// Difference of its two meridians, D, not negative.
    pub cylinder: f64,
    /// Meridian of its mark, the weaker one.
    pub mark: Axis,
}

impl ToricLens {
    /// From the power on a label, which means one of two things.
    ///
    /// ```
    /// use ocellus_core::{astigmatism::toric::{LabelPower, ToricLens}, quantity::Axis};
    /// let mark = Axis::from_deg(90.0)?;
    /// assert_eq!(ToricLens::labelled(20.0, LabelPower::FlattestMeridian, 3.0, mark).mean, 21.5);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn labelled(power: f64, label: LabelPower, cylinder: f64, mark: Axis) -> ToricLens {
        let mean = match label {
            LabelPower::SphericalEquivalent => power,
            LabelPower::FlattestMeridian => power + cylinder / 2.0,
        };
        ToricLens { mean, cylinder, mark }
    }

    /// The same lens turned counter-clockwise as seen from the front.
    ///
    /// ```
    /// use ocellus_core::{astigmatism::toric::ToricLens, quantity::Axis};
    /// let lens = ToricLens { mean: 20.0, cylinder: 3.0, mark: Axis::from_deg(175.0)? };
    /// assert_eq!(lens.turned(10.0).mark.deg(), 5.0);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn turned(self, degrees: f64) -> ToricLens {
        ToricLens { mark: super::turned(self.mark, degrees), ..self }
    }
}

/// Light that must leave the cornea, in every meridian, for a toric lens to focus it: what lens and length ask of the cornea.
///
/// ```text
/// X = 1000 n/(AL - d) - P                     P the lens, strongest across its mark
/// Y = X (I + (d/n) X)^-1                      each as a power in every meridian
/// ```
///
/// X has one pair of principal meridians, so the inverse is taken in each of them: exact for any crossing of the axes. A lens
/// that is turned turns Y by as much.
///
/// # Errors
/// As [`working()`].
///
/// ```
/// use ocellus_core::{astigmatism::toric::*, optics::thin_eye::ThinEye, quantity::Axis};
/// let eye = ThinEye::new(23.5, 43.5, 5.2);
/// let lens = ToricLens { mean: 20.0, cylinder: 3.0, mark: Axis::from_deg(90.0)? };
/// let (plain, turned) = (at_cornea(&eye, lens)?, at_cornea(&eye, lens.turned(10.0))?);
/// assert!((plain.turned(10.0).j45 - turned.j45).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn at_cornea(eye: &ThinEye, lens: ToricLens) -> Result<PowerVector<Cornea>, Error> {
    Ok(asked(eye, lens.mean, lens.cylinder)?.along(direction(lens.mark)))
}

/// What a toric lens asks of the cornea, wherever its mark lies.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    /// Mean power, D.
    pub mean: f64,
    /// Half of what is stronger along the mark than across it, D.
    pub half: f64,
}

impl Asked {
    /// As a power in every meridian, for a mark in this direction.
    ///
    /// ```
    /// use ocellus_core::{astigmatism::toric::{Asked, direction}, quantity::Axis};
    /// let along = Asked { mean: 43.0, half: 1.0 }.along(direction(Axis::from_deg(0.0)?));
    /// assert_eq!((along.m, along.j0), (43.0, 1.0));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn along(self, direction: PowerVector<Cornea>) -> PowerVector<Cornea> {
        PowerVector { m: self.mean, j0: self.half * direction.j0, j45: self.half * direction.j45, ..direction }
    }
}

/// A meridian as a vector of length 1: worked out once where many lenses lie along it.
///
/// ```
/// use ocellus_core::{astigmatism::toric::direction, quantity::Axis};
/// assert_eq!(direction(Axis::from_deg(90.0)?).j0, -1.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn direction(mark: Axis) -> PowerVector<Cornea> {
    PowerVector::strongest_along(Cornea, 0.0, 2.0, mark)
}

/// Light that must leave the cornea along the mark of a lens and across it, by its mean power and its cylinder, D.
///
/// # Errors
/// As [`working()`].
///
/// ```
/// use ocellus_core::{astigmatism::toric::*, optics::thin_eye::ThinEye, quantity::Axis};
/// let (eye, mark) = (ThinEye::new(23.5, 43.5, 5.2), Axis::from_deg(90.0)?);
/// let lens = ToricLens { mean: 20.0, cylinder: 3.0, mark };
/// assert_eq!(asked(&eye, 20.0, 3.0)?.along(direction(mark)), at_cornea(&eye, lens)?);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
// apart, so that the steps take no room on the stack of who does not want them
#[inline(never)]
pub fn asked(eye: &ThinEye, mean: f64, cylinder: f64) -> Result<Asked, Error> {
    let (x, half) = (eye.behind_lens()? - mean, cylinder / 2.0);
    // light must be strongest where the lens is weakest: along its mark
    let (along, across) = (eye.leaving(x + half)?, eye.leaving(x - half)?);
    Ok(Asked { mean: (along + across) / 2.0, half: (along - across) / 2.0 })
}

/// The refraction, at the cornea, that a cornea and a toric lens leave: the correction still needed.
///
/// ```text
/// Rc = Y - K                                  Y as in `at_cornea`, K the cornea
/// ```
///
/// # Errors
/// As [`working()`].
///
/// ```
/// use ocellus_core::astigmatism::{plane, power_vector::PowerVector, toric::*};
/// use ocellus_core::{optics::thin_eye::ThinEye, quantity::*};
/// let eye = ThinEye::new(23.5, 43.5, 5.2);
/// let (target, vertex) = (Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?);
/// let steep = Axis::from_deg(90.0)?;
/// let cornea = PowerVector::strongest_along(plane::Cornea, 0.0, 2.0, steep);
/// let w = working(&eye, 2.0, target, vertex)?;
/// // two meridians that both need their own lens: nothing is left
/// let mean = eye.behind_lens()? - (w.v_steep + w.v_flat) / 2.0;
/// let left = residual(&eye, cornea, ToricLens { mean, cylinder: w.needed, mark: steep })?;
/// assert!(left.blur() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn residual(
    eye: &ThinEye,
    astigmatism: PowerVector<Cornea>,
    lens: ToricLens,
) -> Result<PowerVector<Cornea>, Error> {
    Ok(left(eye.kc, astigmatism, at_cornea(eye, lens)?))
}

/// The refraction, at a cornea of the mean power `kc`, that it leaves of the light that should leave it.
///
/// ```
/// use ocellus_core::astigmatism::{plane::Cornea, power_vector::PowerVector, toric::left};
/// let (cornea, wanted) = (PowerVector::at(Cornea, 0.0, 0.5, 0.0), PowerVector::at(Cornea, 43.0, 0.75, 0.0));
/// assert_eq!(left(43.5, cornea, wanted), PowerVector::at(Cornea, -0.5, 0.25, 0.0));
/// ```
pub fn left(kc: f64, astigmatism: PowerVector<Cornea>, wanted: PowerVector<Cornea>) -> PowerVector<Cornea> {
    wanted.minus(PowerVector { m: kc, ..astigmatism })
}

/// The same with every step.
///
/// # Errors
/// As [`working()`].
///
/// ```
/// use ocellus_core::astigmatism::{plane, power_vector::PowerVector, toric::*};
/// use ocellus_core::{optics::thin_eye::ThinEye, quantity::Axis};
/// let eye = ThinEye::new(23.5, 43.5, 5.2);
/// let cornea = PowerVector::strongest_along(plane::Cornea, 0.0, 2.0, Axis::from_deg(90.0)?);
/// let lens = ToricLens { mean: 20.0, cylinder: 2.25, mark: Axis::from_deg(80.0)? };
/// assert_eq!(residual_working(&eye, cornea, lens)?.left, residual(&eye, cornea, lens)?.cylinder());
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn residual_working(eye: &ThinEye, astigmatism: PowerVector<Cornea>, lens: ToricLens) -> Result<Residual, Error> {
    let (after, along) = (eye.behind_lens()?, direction(lens.mark));
    let x = Asked { mean: after - lens.mean, half: lens.cylinder / 2.0 }.along(along);
    let y = asked(eye, lens.mean, lens.cylinder)?.along(along);
    let left = left(eye.kc, astigmatism, y);
    Ok(Residual {
        al: eye.al,
        mean: lens.mean,
        cylinder: lens.cylinder,
        mark: lens.mark.deg(),
        after,
        x_m: x.m,
        x_0: x.j0,
        x_45: x.j45,
        k_m: y.m,
        k_0: y.j0,
        k_45: y.j45,
        left_m: left.m,
        left_0: left.j0,
        left_45: left.j45,
        left: left.cylinder(),
    })
}
