//! Cylinders as vectors.

use ocellus_core::astigmatism::matrix::PowerMatrix;
use ocellus_core::astigmatism::plane::{Cornea, Lens, Spectacles};
use ocellus_core::astigmatism::polar::Polar;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::quantity::Axis;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::{axis, or, vertex};
use crate::values::{self, Value};

/// The axis of a refraction is one of the keys that begin so.
fn refraction(value: &Value, begin: &str) -> Result<SpheroCylinder<Spectacles>, Failed> {
    let number = |key: &str| value.number(&format!("{begin}{key}"));
    let axis = axis(value, &format!("{begin}axis_deg"))?;
    Ok(SpheroCylinder::at(Spectacles, number("sphere_d")?, number("cylinder_d")?, Some(axis)))
}

fn vector(value: &Value, begin: &str) -> Result<PowerVector<Spectacles>, Failed> {
    Ok(PowerVector::of(refraction(value, begin)?))
}

/// Written on one line, as opticians do: `+1.75 +0.50 x 45`.
fn written(value: &Value, key: &str) -> Result<PowerVector<Spectacles>, Failed> {
    let numbers = values::numbers(value.text(key)?)?;
    let [sphere, cylinder, axis] = numbers.as_slice() else { return Err("not sphere, cylinder, axis".into()) };
    Ok(PowerVector::of(SpheroCylinder::at(Spectacles, sphere.value, cylinder.value, Some(Axis::from_deg(axis.value)?))))
}

/// An axis that came out a hair below 180 is 0.
pub(super) fn dial(axis: Axis) -> f64 {
    if axis.deg() > 180.0 - 1e-9 { axis.deg() - 180.0 } else { axis.deg() }
}

/// Sphere, cylinder and axis; one of them where the id ends in its letter.
fn parts<P>(value: &Value, rx: SpheroCylinder<P>) -> Answer {
    let axis = || Ok::<_, Failed>(dial(rx.axis.ok_or("no axis")?));
    Ok(match value.id.rsplit('-').next() {
        Some("s" | "sphere") => vec![rx.sphere],
        Some("c" | "cylinder") => vec![rx.cylinder],
        Some("a" | "axis") => vec![axis()?],
        _ => vec![rx.sphere, rx.cylinder, axis()?],
    })
}

/// Cylinder wanted along an axis, and the same placed off it.
fn placed_off(value: &Value, cylinder: f64, placed: f64) -> Result<(PowerVector<Lens>, PowerVector<Lens>), Failed> {
    let wanted = or(value, "axis_deg", 20.0)?;
    let at = |cylinder, deg: f64| {
        Ok::<_, Failed>(PowerVector::of(SpheroCylinder::at(
            Lens,
            0.0,
            cylinder,
            Some(Axis::from_deg(deg.rem_euclid(180.0))?),
        )))
    };
    Ok((at(cylinder, wanted)?, at(placed, wanted + value.number("off_deg")?)?))
}

pub(super) fn register(registry: &mut Registry) {
    refractions(registry);
    forms(registry);
    off_axis(registry);
}

/// From one way of writing a power to another.
fn forms(registry: &mut Registry) {
    checks! { registry;
        PowerMatrix::of::<Spectacles> => ["forms-*-xx", "forms-*-xy", "forms-*-yy"] => |of; value| {
            let f = of(vector(value, "")?);
            Ok(vec![match value.id.rsplit('-').next() {
                Some("xx") => f.xx,
                Some("xy") => f.xy,
                _ => f.yy,
            }])
        };
        PowerMatrix::at::<Spectacles>, PowerVector::<Spectacles>::minus_cylinder => ["forms-*-sphere", "forms-*-cylinder", "forms-*-axis"] =>
            |at, minus_cylinder; value| parts(value, minus_cylinder(at(PowerMatrix::of(vector(value, "")?), Spectacles)));
        PowerVector::<Spectacles>::plus_cylinder => ["forms-*-sphere", "forms-*-cylinder", "forms-*-axis"] => |plus_cylinder; value|
            parts(value, plus_cylinder(vector(value, "")?).transposed());
        PowerVector::<Cornea>::in_meridians => "meridians-*" => |in_meridians; value|
            Ok(vec![part(value, in_meridians(Cornea, value.number("f0_d")?, value.number("f45_d")?, value.number("f90_d")?))]);
        Polar::about::<Cornea> => "polar-*" => |about; value| {
            let n = PowerVector::strongest_along(Cornea, 0.0, value.number("astigmatism_d")?, axis(value, "steep_deg")?);
            let polar = about(axis(value, "reference_deg")?, n);
            Ok(vec![if value.id.ends_with("along") { polar.along } else { polar.oblique }])
        };
        // There and back about another meridian.
        Polar::power::<Cornea> => "polar-*" => |power; value| {
            let n = PowerVector::strongest_along(Cornea, 0.0, value.number("astigmatism_d")?, axis(value, "steep_deg")?);
            let elsewhere = Axis::from_deg(37.0)?;
            let polar = Polar::about(axis(value, "reference_deg")?, power(Polar::about(elsewhere, n), elsewhere, Cornea, 0.0));
            Ok(vec![if value.id.ends_with("along") { polar.along } else { polar.oblique }])
        };
        PowerMatrix::plus, PowerMatrix::times, PowerVector::<Lens>::plus => "sum-*" => |plus, times, add; value| {
            let numbered = |n: u8| {
                let number = |key: &str| value.number(&format!("{key}{n}_d"));
                let axis = axis(value, &format!("axis{n}_deg"))?;
                Ok::<_, Failed>(PowerVector::of(SpheroCylinder::at(Lens, number("sphere")?, number("cylinder")?, Some(axis))))
            };
            let (first, second) = (numbered(1)?, numbered(2)?);
            // half of both twice over
            let (half, other) = (times(PowerMatrix::of(first), 0.5), times(PowerMatrix::of(second), 0.5));
            let sum = times(plus(half, other), 2.0).at(Lens);
            if sum.minus(add(first, second)).blur() > 1e-12 {
                return Err("matrices and vectors have other sums".into());
            }
            parts(value, sum.minus_cylinder())
        };
    }
}

/// The part of a vector that the id ends in.
pub(super) fn part<P>(value: &Value, v: PowerVector<P>) -> f64 {
    match value.id.rsplit('-').next() {
        Some("m") => v.m,
        Some("j0") => v.j0,
        _ => v.j45,
    }
}

fn refractions(registry: &mut Registry) {
    checks! { registry;
        PowerVector::<Spectacles>::of, PowerVector::<Spectacles>::blur => "vector-*" => |of, blur; value| {
            let v = of(refraction(value, "")?);
            Ok(vec![match value.id.rsplit('-').next() {
                Some("m") => v.m,
                Some("j0") => v.j0,
                Some("j45") => v.j45,
                _ => blur(v),
            }])
        };
        PowerVector::<Spectacles>::at, PowerVector::<Spectacles>::minus_cylinder => "sphero-*" => |at, minus_cylinder; value| {
            let v = at(Spectacles, value.number("m_d")?, value.number("j0_d")?, value.number("j45_d")?);
            parts(value, minus_cylinder(v))
        };
        PowerVector::<Spectacles>::in_meridian => ["meridian-*", "in-meridian-*"] => |in_meridian; value|
            Ok(vec![in_meridian(vector(value, "")?, axis(value, "meridian_deg")?)]);
        SpheroCylinder::<Spectacles>::at, SpheroCylinder::<Spectacles>::transposed => ["transpose-*", "transposed-*"] => |at, transposed; value| {
            let axis = Some(axis(value, "axis_deg")?);
            parts(value, transposed(at(Spectacles, value.number("sphere_d")?, value.number("cylinder_d")?, axis)))
        };
        SpheroCylinder::to_cornea => "cornea-#*" => |to_cornea; value|
            parts(value, to_cornea(refraction(value, "")?, vertex(value)?)?);
        SpheroCylinder::to_spectacles => "spectacles-*" => |to_spectacles; value| {
            let SpheroCylinder { sphere, cylinder, axis, .. } = refraction(value, "")?;
            parts(value, to_spectacles(SpheroCylinder::at(Cornea, sphere, cylinder, axis), vertex(value)?)?)
        };
        PowerVector::<Spectacles>::plus => "crossed-sum-*" => |plus; value|
            parts(value, plus(vector(value, "first_")?, vector(value, "second_")?).minus_cylinder());
        PowerVector::<Spectacles>::plus => "crossed-1" => |plus; value|
            parts(value, plus(written(value, "first")?, written(value, "second")?).minus_cylinder());
    }
}

fn off_axis(registry: &mut Registry) {
    checks! { registry;
        PowerVector::<Lens>::minus => ["off-axis-*", "!off-axis-share-*", "!off-axis-unequal-*"] => |minus; value| {
            let cylinder = value.number("cylinder_d")?;
            let (wanted, placed) = placed_off(value, cylinder, cylinder)?;
            let needed = minus(wanted, placed);
            Ok(vec![match value.id.rsplit('-').next() {
                Some("m") => needed.m,
                Some("j0") => needed.j0,
                _ => needed.j45,
            }])
        };
        PowerVector::<Lens>::minus => "offaxis-*-*" => |minus; value| {
            let cylinder = value.number("cylinder_d")?;
            let (wanted, placed) = placed_off(value, cylinder, cylinder)?;
            let needed = minus(wanted, placed).minus_cylinder();
            Ok(vec![needed.sphere, needed.cylinder])
        };
        PowerVector::<Lens>::minus, PowerVector::<Lens>::cylinder => "offaxis-*pct" => |minus, cylinder; value| {
            let (wanted, placed) = placed_off(value, 2.0, 2.0)?;
            Ok(vec![100.0 * cylinder(minus(wanted, placed)) / 2.0])
        };
        PowerVector::<Lens>::cylinder => "off-axis-share-*-residual_share" => |cylinder; value| {
            let (wanted, placed) = placed_off(value, 2.0, 2.0)?;
            Ok(vec![cylinder(wanted.minus(placed)) / 2.0])
        };
        PowerVector::<Lens>::in_meridian => "off-axis-share-*-effect_lost" => |in_meridian; value| {
            let (intended, off) = (20.0, value.number("off_deg")?);
            let placed = PowerVector::strongest_along(Lens, 0.0, 2.0, Axis::from_deg(intended + off)?);
            Ok(vec![1.0 - in_meridian(placed, Axis::from_deg(intended)?)])
        };
        PowerVector::<Lens>::cylinder => "off-axis-unequal-*" => |cylinder; value| {
            let (wanted, placed) = placed_off(value, value.number("first_d")?, value.number("second_d")?)?;
            Ok(vec![cylinder(wanted.minus(placed))])
        };
    }
}
