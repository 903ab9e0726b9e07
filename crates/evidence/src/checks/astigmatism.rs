//! Cylinders as vectors.

use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::quantity::{Axis, Vertex};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::values::{self, Value};

pub(super) fn axis(value: &Value, key: &str) -> Result<Axis, Failed> {
    Ok(Axis::from_deg(value.number(key)?)?)
}

/// The axis of a refraction is one of the keys that begin so.
fn refraction(value: &Value, begin: &str) -> Result<SpheroCylinder, Failed> {
    let number = |key: &str| value.number(&format!("{begin}{key}"));
    let axis = axis(value, &format!("{begin}axis_deg"))?;
    Ok(SpheroCylinder::new(number("sphere_d")?, number("cylinder_d")?, Some(axis)))
}

fn vector(value: &Value, begin: &str) -> Result<PowerVector, Failed> {
    Ok(PowerVector::of(refraction(value, begin)?))
}

/// Written on one line, as opticians do: `+1.75 +0.50 x 45`.
fn written(value: &Value, key: &str) -> Result<PowerVector, Failed> {
    let numbers = values::numbers(value.text(key)?)?;
    let [sphere, cylinder, axis] = numbers.as_slice() else { return Err("not sphere, cylinder, axis".into()) };
    Ok(PowerVector::of(SpheroCylinder::new(sphere.value, cylinder.value, Some(Axis::from_deg(axis.value)?))))
}

/// Sphere, cylinder and axis; one of them where the id ends in its letter.
fn parts(value: &Value, rx: SpheroCylinder) -> Answer {
    let axis = rx.axis.ok_or("no axis")?.deg();
    Ok(match value.id.rsplit('-').next() {
        Some("s") => vec![rx.sphere],
        Some("c") => vec![rx.cylinder],
        Some("a") => vec![axis],
        _ => vec![rx.sphere, rx.cylinder, axis],
    })
}

fn vertex(value: &Value) -> Result<Vertex, Failed> {
    Ok(Vertex::from_mm(value.number("vertex_mm")?)?)
}

/// Cylinder wanted along an axis, and the same placed off it.
fn placed_off(value: &Value, cylinder: f64, placed: f64) -> Result<(PowerVector, PowerVector), Failed> {
    let wanted = if value.given.contains_key("axis_deg") { value.number("axis_deg")? } else { 20.0 };
    let at = |cylinder, deg: f64| {
        Ok::<_, Failed>(PowerVector::of(SpheroCylinder::new(
            0.0,
            cylinder,
            Some(Axis::from_deg(deg.rem_euclid(180.0))?),
        )))
    };
    Ok((at(cylinder, wanted)?, at(placed, wanted + value.number("off_deg")?)?))
}

pub(super) fn register(registry: &mut Registry) {
    refractions(registry);
    off_axis(registry);
}

fn refractions(registry: &mut Registry) {
    checks! { registry;
        PowerVector::of, PowerVector::blur => "vector-*" => |of, blur; value| {
            let v = of(refraction(value, "")?);
            Ok(vec![match value.id.rsplit('-').next() {
                Some("m") => v.m,
                Some("j0") => v.j0,
                Some("j45") => v.j45,
                _ => blur(v),
            }])
        };
        PowerVector::minus_cylinder => "sphero-*" => |minus_cylinder; value| {
            let v = PowerVector { m: value.number("m_d")?, j0: value.number("j0_d")?, j45: value.number("j45_d")? };
            parts(value, minus_cylinder(v))
        };
        PowerVector::in_meridian => ["meridian-*", "in-meridian-*"] => |in_meridian; value|
            Ok(vec![in_meridian(vector(value, "")?, axis(value, "meridian_deg")?)]);
        SpheroCylinder::new, SpheroCylinder::transposed => ["transpose-*", "transposed-*"] => |new, transposed; value| {
            let axis = Some(axis(value, "axis_deg")?);
            parts(value, transposed(new(value.number("sphere_d")?, value.number("cylinder_d")?, axis)))
        };
        SpheroCylinder::to_cornea => "cornea-#*" => |to_cornea; value|
            parts(value, to_cornea(refraction(value, "")?, vertex(value)?)?);
        SpheroCylinder::to_spectacles => "spectacles-*" => |to_spectacles; value|
            parts(value, to_spectacles(refraction(value, "")?, vertex(value)?)?);
        PowerVector::plus => "crossed-sum-*" => |plus; value|
            parts(value, plus(vector(value, "first_")?, vector(value, "second_")?).minus_cylinder());
        PowerVector::plus => "crossed-1" => |plus; value|
            parts(value, plus(written(value, "first")?, written(value, "second")?).minus_cylinder());
    }
}

fn off_axis(registry: &mut Registry) {
    checks! { registry;
        PowerVector::minus => ["off-axis-*", "!off-axis-share-*", "!off-axis-unequal-*"] => |minus; value| {
            let cylinder = value.number("cylinder_d")?;
            let (wanted, placed) = placed_off(value, cylinder, cylinder)?;
            let needed = minus(wanted, placed);
            Ok(vec![match value.id.rsplit('-').next() {
                Some("m") => needed.m,
                Some("j0") => needed.j0,
                _ => needed.j45,
            }])
        };
        PowerVector::minus => "offaxis-*-*" => |minus; value| {
            let cylinder = value.number("cylinder_d")?;
            let (wanted, placed) = placed_off(value, cylinder, cylinder)?;
            let needed = minus(wanted, placed).minus_cylinder();
            Ok(vec![needed.sphere, needed.cylinder])
        };
        PowerVector::minus, PowerVector::cylinder => "offaxis-*pct" => |minus, cylinder; value| {
            let (wanted, placed) = placed_off(value, 2.0, 2.0)?;
            Ok(vec![100.0 * cylinder(minus(wanted, placed)) / 2.0])
        };
        PowerVector::cylinder => "off-axis-share-*-residual_share" => |cylinder; value| {
            let (wanted, placed) = placed_off(value, 2.0, 2.0)?;
            Ok(vec![cylinder(wanted.minus(placed)) / 2.0])
        };
        PowerVector::in_meridian => "off-axis-share-*-effect_lost" => |in_meridian; value| {
            let (intended, off) = (20.0, value.number("off_deg")?);
            let placed = PowerVector::strongest_along(0.0, 2.0, Axis::from_deg(intended + off)?);
            Ok(vec![1.0 - in_meridian(placed, Axis::from_deg(intended)?)])
        };
        PowerVector::cylinder => "off-axis-unequal-*" => |cylinder; value| {
            let (wanted, placed) = placed_off(value, value.number("first_d")?, value.number("second_d")?)?;
            Ok(vec![cylinder(wanted.minus(placed))])
        };
    }
}
