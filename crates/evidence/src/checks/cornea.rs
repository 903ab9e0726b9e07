//! The front of the cornea.

use ocellus_core::astigmatism::site::{self, Side};
use ocellus_core::astigmatism::{apart, on_dial};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{Axis, CornealPower, CornealRadius, KeratometricIndex, Site};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::crossing;
use crate::values::Value;

fn index(value: &Value) -> Result<KeratometricIndex, Failed> {
    Ok(KeratometricIndex::new(value.number("keratometric_index")?)?)
}

fn power(value: &Value, key: &str) -> Result<CornealPower, Failed> {
    Ok(CornealPower::from_d(value.number(key)?)?)
}

fn radius(value: &Value, key: &str) -> Result<CornealRadius, Failed> {
    Ok(CornealRadius::from_mm(value.number(key)?)?)
}

fn axis(value: &Value, key: &str) -> Result<Axis, Failed> {
    Ok(Axis::from_deg(value.number(key)?)?)
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        Cornea::from_powers, Cornea::radius => "radius-*" => |from_powers, radius; value| {
            let k = power(value, "k_d")?;
            Ok(vec![radius(&from_powers(k, k, index(value)?, None)?).mm()])
        };
        Cornea::from_powers, Cornea::k => "k-1.3375-*" => |from_powers, k; value| {
            let entered = power(value, "k_d")?;
            Ok(vec![k(&from_powers(entered, entered, index(value)?, None)?)])
        };
        Cornea::from_powers, Cornea::flat_k, Cornea::steep_k, Cornea::k, Cornea::astigmatism => "cornea-powers-*" =>
            |from_powers, flat, steep, mean, astigmatism; value| {
                let cornea = from_powers(power(value, "k1_d")?, power(value, "k2_d")?, index(value)?, None)?;
                Ok(vec![flat(&cornea), steep(&cornea), mean(&cornea), astigmatism(&cornea)])
            };
        Cornea::from_radii, Cornea::flat_k, Cornea::steep_k, Cornea::k, Cornea::astigmatism => "cornea-radii-*" =>
            |from_radii, flat, steep, mean, astigmatism; value| {
                let cornea = from_radii(radius(value, "r1_mm")?, radius(value, "r2_mm")?, None)?;
                Ok(vec![flat(&cornea), steep(&cornea), mean(&cornea), astigmatism(&cornea)])
            };
        Cornea::steep_axis, Cornea::flat_axis, Cornea::off_square => "cornea-axes-*" => |steep, flat, off_square; value| {
            let axes = Some((axis(value, "k1_axis_deg")?, axis(value, "k2_axis_deg")?));
            let cornea = Cornea::from_powers(power(value, "k1_d")?, power(value, "k2_d")?, index(value)?, axes)?;
            let axes = [steep(&cornea), flat(&cornea)].map(|axis| axis.map_or(f64::NAN, Axis::deg));
            Ok(vec![axes[0], axes[1], off_square(&cornea).ok_or("no axes")?])
        };
        apart => "cornea-axes-*" => |apart; value| {
            let (first, second) = (value.number("k1_axis_deg")?, value.number("k2_axis_deg")?);
            let is_steep = value.number("k1_d")? > value.number("k2_d")?;
            let (steep, flat) = if is_steep { (first, second) } else { (second, first) };
            Ok(vec![steep, flat, (90.0 - apart(first, second)).abs()])
        };
        // Once around the limbus, and on until the run of sites with that word has ended.
        site::word => "site-*" => |word; value| {
            let eye = if value.text("eye")? == "right" { Side::Right } else { Side::Left };
            let wanted = value.text("word")?;
            let called = |deg: u32| Ok::<_, Failed>(word(Site::from_deg(f64::from(deg % 360))?, eye) == wanted);
            let mut first = 0;
            while called(first)? || !called(first + 1)? {
                first += 1;
                if first > 720 {
                    return Err(format!("no site is called {wanted}").into());
                }
            }
            let mut last = first + 1;
            while called(last + 1)? {
                last += 1;
            }
            Ok(vec![f64::from(first + 1 + last) / 2.0 % 360.0])
        };
        on_dial => "dial-*" => |on_dial; value| Ok(vec![on_dial(axis(value, "axis_deg")?)]);
        Cornea::same => "cornea-same-*" => |same; value| {
            let (r, index) = (radius(value, "r_mm")?, index(value)?);
            let nominal = 1000.0 * (index.get() - 1.0) / r.mm();
            crossing(nominal, nominal + 0.2, |k| Ok(if same(CornealPower::from_d(k)?, r, index) { 1.0 } else { -1.0 }))
        };
    }
}
