//! The front of the cornea.

use ocellus_core::astigmatism::plane;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::{apart, cornea, on_dial};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{Axis, CornealPower, CornealRadius, KeratometricIndex};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::astigmatism::dial;
use crate::checks::crossing;
use crate::checks::given::{axis, k};
use crate::values::Value;

/// An astigmatism at the cornea.
pub(super) type Vector = PowerVector<plane::Cornea>;

fn index(value: &Value) -> Result<KeratometricIndex, Failed> {
    Ok(KeratometricIndex::new(value.number("keratometric_index")?)?)
}

fn radius(value: &Value, key: &str) -> Result<CornealRadius, Failed> {
    Ok(CornealRadius::from_mm(value.number(key)?)?)
}

/// The numbers that an id may end in: a vector's parts, its size, its meridian.
pub(super) fn of_vector(value: &Value, v: Vector) -> Answer {
    Ok(vec![match value.id.rsplit('-').next() {
        Some("x") => 2.0 * v.j0,
        Some("y") => 2.0 * v.j45,
        Some("n") => v.cylinder(),
        _ => dial(v.strongest().ok_or("no axis")?),
    }])
}

/// A cornea of these powers at 1.3375, or of this astigmatism, whose steep meridian is the first.
pub(super) fn front(value: &Value) -> Result<Cornea, Failed> {
    let (flat, steep) = match value.number("corneal_astigmatism_d").or(value.number("astigmatism_d")) {
        Ok(n) => (43.0, 43.0 + n),
        Err(_) => (value.number("flat_d")?, value.number("steep_d")?),
    };
    let along = value.number("steep_deg")?;
    let axes = (Axis::from_deg(along)?, Axis::from_deg((along + 90.0).rem_euclid(180.0))?);
    let power = CornealPower::from_d;
    Ok(Cornea::from_powers(power(steep)?, power(flat)?, KeratometricIndex::new(1.3375)?, Some(axes))?)
}

pub(super) fn measured(value: &Value) -> Result<Vector, Failed> {
    Ok(cornea::measured(&front(value)?).ok_or("no axes")?)
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        Cornea::from_powers, Cornea::radius => "radius-*" => |from_powers, radius; value| {
            let k = k(value, "k_d")?;
            Ok(vec![radius(&from_powers(k, k, index(value)?, None)?).mm()])
        };
        Cornea::from_powers, Cornea::k => "k-1.3375-*" => |from_powers, mean; value| {
            let entered = k(value, "k_d")?;
            Ok(vec![mean(&from_powers(entered, entered, index(value)?, None)?)])
        };
        Cornea::from_powers, Cornea::flat_k, Cornea::steep_k, Cornea::k, Cornea::astigmatism => "cornea-powers-*" =>
            |from_powers, flat, steep, mean, astigmatism; value| {
                let cornea = from_powers(k(value, "k1_d")?, k(value, "k2_d")?, index(value)?, None)?;
                Ok(vec![flat(&cornea), steep(&cornea), mean(&cornea), astigmatism(&cornea)])
            };
        Cornea::from_radii, Cornea::flat_k, Cornea::steep_k, Cornea::k, Cornea::astigmatism => "cornea-radii-*" =>
            |from_radii, flat, steep, mean, astigmatism; value| {
                let cornea = from_radii(radius(value, "r1_mm")?, radius(value, "r2_mm")?, None)?;
                Ok(vec![flat(&cornea), steep(&cornea), mean(&cornea), astigmatism(&cornea)])
            };
        Cornea::steep_axis, Cornea::flat_axis, Cornea::off_square => "cornea-axes-*" => |steep, flat, off_square; value| {
            let axes = Some((axis(value, "k1_axis_deg")?, axis(value, "k2_axis_deg")?));
            let cornea = Cornea::from_powers(k(value, "k1_d")?, k(value, "k2_d")?, index(value)?, axes)?;
            let axes = [steep(&cornea), flat(&cornea)].map(|axis| axis.map_or(f64::NAN, Axis::deg));
            Ok(vec![axes[0], axes[1], off_square(&cornea).ok_or("no axes")?])
        };
        apart => "cornea-axes-*" => |apart; value| {
            let (first, second) = (value.number("k1_axis_deg")?, value.number("k2_axis_deg")?);
            let is_steep = value.number("k1_d")? > value.number("k2_d")?;
            let (steep, flat) = if is_steep { (first, second) } else { (second, first) };
            Ok(vec![steep, flat, (90.0 - apart(first, second)).abs()])
        };
        on_dial => "dial-*" => |on_dial; value| Ok(vec![on_dial(axis(value, "axis_deg")?)]);
        Cornea::same => "cornea-same-*" => |same; value| {
            let (r, index) = (radius(value, "r_mm")?, index(value)?);
            let nominal = 1000.0 * (index.get() - 1.0) / r.mm();
            crossing(nominal, nominal + 0.2, |k| Ok(if same(CornealPower::from_d(k)?, r, index) { 1.0 } else { -1.0 }))
        };
    }
}
