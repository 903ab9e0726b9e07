//! The cornea after its incision, the toric lens, and what a turned one leaves.

use ocellus_core::astigmatism::cornea as corneal;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::toric::{self, ToricLens, Working};
use ocellus_core::choice::{CylinderPlane, LabelPower};
use ocellus_core::eye::cornea::Cornea;
use ocellus_core::lens::vergence::ThinEye;
use ocellus_core::quantity::{
    Axis, CornealPower, Flattening, KeratometricIndex, LensCylinder, Refraction, Site, Vertex,
};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::astigmatism::axis;
use crate::checks::symbol;
use crate::values::Value;

/// The part of a vector that the id ends in.
fn part(value: &Value, v: PowerVector) -> f64 {
    match value.id.rsplit('-').next() {
        Some("m") => v.m,
        Some("j0") => v.j0,
        _ => v.j45,
    }
}

/// The eye of a value; its axial length plays no part in the cylinder.
fn eye(value: &Value) -> Result<ThinEye, Failed> {
    let al = if value.given.contains_key("optical_length_mm") { value.number("optical_length_mm")? } else { 23.5 };
    Ok(ThinEye::new(al, value.number("corneal_power_d")?, value.number("elp_mm")?))
}

fn refraction(value: &Value) -> Result<(Refraction, Vertex), Failed> {
    Ok((Refraction::from_d(value.number("target_d")?)?, Vertex::from_mm(value.number("vertex_mm")?)?))
}

/// A cornea of this astigmatism whose steep meridian is the first.
fn cornea(value: &Value) -> Result<Cornea, Failed> {
    let (n, steep) = (value.number("corneal_astigmatism_d")?, value.number("steep_deg")?);
    let (flat, index) = (CornealPower::from_d(43.0)?, KeratometricIndex::new(1.3375)?);
    let axes = (Axis::from_deg(steep)?, Axis::from_deg((steep + 90.0).rem_euclid(180.0))?);
    Ok(Cornea::from_powers(CornealPower::from_d(43.0 + n)?, flat, index, Some(axes))?)
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        corneal::measured, corneal::induced => "incision-*" => |measured, induced; value| {
            let site = Site::from_deg(value.number("site_deg")?)?;
            let flattening = Flattening::from_d(value.number("flattening_d")?)?;
            let after = measured(&cornea(value)?).ok_or("no axes")?.plus(induced(site, flattening));
            Ok(vec![match value.id.rsplit('-').next() {
                Some("x") => 2.0 * after.j0,
                Some("y") => 2.0 * after.j45,
                Some("n") => after.cylinder(),
                _ => after.strongest().ok_or("no axis")?.deg(),
            }])
        };
        corneal::working, corneal::Working::show => "incision-*-n" => |working, show; value| {
            let site = Site::from_deg(value.number("site_deg")?)?;
            let w = working(&cornea(value)?, site, Flattening::from_d(value.number("flattening_d")?)?).ok_or("no axes")?;
            symbol(&["N'"], |sink| show(&w, sink))
        };
        toric::working, Working::show => ["lens-cylinder-*-v_*", "lens-cylinder-*-cylinder"] => |working, show; value| {
            let (target, vertex) = refraction(value)?;
            let w = working(&eye(value)?, value.number("corneal_astigmatism_d")?, target, vertex)?;
            let step = match value.id.rsplit('-').next() {
                Some("v_steep") => "v_s",
                Some("v_flat") => "v_f",
                _ => "C",
            };
            symbol(&[step], |sink| show(&w, sink))
        };
        toric::working => "lens-cylinder-*-local_ratio" => |working; value| {
            let (target, vertex) = refraction(value)?;
            Ok(vec![working(&eye(value)?, 0.0, target, vertex)?.ratio])
        };
        toric::working => "toric-ratio" => |working; value|
            Ok(vec![working(&eye(value)?, 0.0, Refraction::from_d(0.0)?, Vertex::from_mm(12.0)?)?.ratio]);
        toric::at_lens_plane => "lens-cylinder-*-cylinder" => |at_lens_plane; value| {
            let (target, vertex) = refraction(value)?;
            let label = LensCylinder::from_d(value.number("corneal_astigmatism_d")?)?;
            Ok(vec![at_lens_plane(label, CylinderPlane::Cornea, &eye(value)?, target, vertex)?])
        };
        toric::residual_working, toric::Residual::show => "rotated-*" => |steps, show; value| {
            let (along, across) = (value.number("lens_along_mark_d")?, value.number("lens_across_mark_d")?);
            let cornea = PowerVector::strongest_along(
                0.0,
                value.number("corneal_astigmatism_d")?,
                axis(value, "steep_deg")?,
            );
            let lens = ToricLens { mean: (along + across) / 2.0, cylinder: across - along, mark: axis(value, "mark_deg")? };
            let (w, _) = steps(&eye(value)?, cornea, lens)?;
            let wanted = match value.id.rsplit('-').next() {
                Some("m") => "R_M",
                Some("j0") => "R_0",
                _ => "R_45",
            };
            symbol(&[wanted], |sink| show(&w, sink))
        };
        toric::residual, ToricLens::labelled, ToricLens::turned, PowerVector::strongest_along => "rotated-*" =>
            |residual, labelled, turned, strongest_along; value| {
                let (along, across) = (value.number("lens_along_mark_d")?, value.number("lens_across_mark_d")?);
                let (mark, off) = (value.number("mark_deg")?, value.number("off_deg")?);
                let intended = Axis::from_deg((mark - off).rem_euclid(180.0))?;
                let cornea = strongest_along(0.0, value.number("corneal_astigmatism_d")?, axis(value, "steep_deg")?);
                let flattest = labelled(along, LabelPower::FlattestMeridian, across - along, intended);
                let mean = labelled((along + across) / 2.0, LabelPower::SphericalEquivalent, across - along, intended);
                let left = [flattest, mean].map(|lens| residual(&eye(value)?, cornea, turned(lens, off)).map_err(Failed::from));
                let [flattest, mean] = left.map(|left: Result<PowerVector, Failed>| left.map(|left| part(value, left)));
                let (flattest, mean) = (flattest?, mean?);
                if (flattest - mean).abs() > 1e-12 { Err("the two kinds of label differ".into()) } else { Ok(vec![mean]) }
            };
    }
    turning(registry);
}

/// Turning a lens that sits wrong: what the cornea's share is, where the lens belongs, and what stays.
fn turning(registry: &mut Registry) {
    checks! { registry;
        PowerVector::plus, PowerVector::cylinder, PowerVector::strongest => "turn-*" => |plus, cylinder, strongest; value| {
            let (error, lens) = (value.number("plus_cylinder_d")?, value.number("lens_cylinder_at_cornea_d")?);
            let mark = value.number("mark_deg")?;
            let k = plus(
                PowerVector::strongest_along(0.0, error, axis(value, "axis_deg")?),
                PowerVector::strongest_along(0.0, lens, Axis::from_deg(mark)?),
            );
            let best = strongest(k).ok_or("no axis")?.deg();
            Ok(vec![match value.id.rsplit('-').next() {
                Some("k") => cylinder(k),
                Some("best_mark") => best,
                Some("turn") => 90.0 - (90.0 - (best - mark)).rem_euclid(180.0),
                _ => (cylinder(k) - lens).abs(),
            }])
        };
    }
}
