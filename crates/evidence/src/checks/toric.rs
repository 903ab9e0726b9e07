//! The cornea after its incision, the toric lens, and what a turned one leaves.

use ocellus_core::astigmatism::plane;
use ocellus_core::astigmatism::power_vector::{PowerVector, Turn};
use ocellus_core::astigmatism::toric::{self, Asked, CylinderPlane, LabelPower, ToricLens, Working};
use ocellus_core::astigmatism::{short_way, turned};
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{Axis, LensCylinder, Refraction, Vertex};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::astigmatism::part;
use crate::checks::given::{axis, or, target, vertex};
use crate::checks::symbol;
use crate::values::Value;

/// The eye of a value; its axial length plays no part in the cylinder.
fn eye(value: &Value) -> Result<ThinEye, Failed> {
    Ok(ThinEye::new(or(value, "optical_length_mm", 23.5)?, value.number("corneal_power_d")?, value.number("elp_mm")?))
}

fn refraction(value: &Value) -> Result<(Refraction, Vertex), Failed> {
    Ok((target(value)?, vertex(value)?))
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
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
                plane::Cornea,
                0.0,
                value.number("corneal_astigmatism_d")?,
                axis(value, "steep_deg")?,
            );
            let lens = ToricLens { mean: (along + across) / 2.0, cylinder: across - along, mark: axis(value, "mark_deg")? };
            let w = steps(&eye(value)?, cornea, lens)?;
            let wanted = match value.id.rsplit('-').next() {
                Some("m") => "R_M",
                Some("j0") => "R_0",
                _ => "R_45",
            };
            symbol(&[wanted], |sink| show(&w, sink))
        };
        toric::residual, ToricLens::labelled, ToricLens::turned, PowerVector::<plane::Cornea>::strongest_along => "rotated-*" =>
            |residual, labelled, turned, strongest_along; value| {
                let (along, across) = (value.number("lens_along_mark_d")?, value.number("lens_across_mark_d")?);
                let (mark, off) = (value.number("mark_deg")?, value.number("off_deg")?);
                let intended = Axis::from_deg((mark - off).rem_euclid(180.0))?;
                let cornea = strongest_along(plane::Cornea, 0.0, value.number("corneal_astigmatism_d")?, axis(value, "steep_deg")?);
                let flattest = labelled(along, LabelPower::FlattestMeridian, across - along, intended);
                let mean = labelled((along + across) / 2.0, LabelPower::SphericalEquivalent, across - along, intended);
                let left = [flattest, mean].map(|lens| residual(&eye(value)?, cornea, turned(lens, off)).map_err(Failed::from));
                let [flattest, mean] = left.map(|left: Result<PowerVector<plane::Cornea>, Failed>| left.map(|left| part(value, left)));
                let (flattest, mean) = (flattest?, mean?);
                if (flattest - mean).abs() > 1e-12 { Err("the two kinds of label differ".into()) } else { Ok(vec![mean]) }
            };
    }
    checks! { registry;
        // A lens turned, and what a lens not turned asks of the cornea, turned.
        toric::at_cornea, PowerVector::<plane::Cornea>::turned => "rotated-*" => |at_cornea, turned; value| {
            let (along, across) = (value.number("lens_along_mark_d")?, value.number("lens_across_mark_d")?);
            let (mark, off) = (value.number("mark_deg")?, value.number("off_deg")?);
            let (eye, lens) = (eye(value)?, ToricLens {
                mean: (along + across) / 2.0,
                cylinder: across - along,
                mark: Axis::from_deg((mark - off).rem_euclid(180.0))?,
            });
            let n = value.number("corneal_astigmatism_d")?;
            let cornea = PowerVector::strongest_along(plane::Cornea, eye.kc, n, axis(value, "steep_deg")?);
            Ok(vec![part(value, turned(at_cornea(&eye, lens)?, off).minus(cornea))])
        };
        // The same for many lenses and turns: what a lens asks wherever it lies, its direction, the turn.
        toric::asked, Asked::along, toric::direction, toric::left, Turn::by, PowerVector::<plane::Cornea>::turned_by => "rotated-*" =>
            |asked, along, direction, left, by, turned_by; value| {
                let (weak, strong) = (value.number("lens_along_mark_d")?, value.number("lens_across_mark_d")?);
                let (mark, off, eye) = (value.number("mark_deg")?, value.number("off_deg")?, eye(value)?);
                let intended = Axis::from_deg((mark - off).rem_euclid(180.0))?;
                let wanted = along(asked(&eye, (weak + strong) / 2.0, strong - weak)?, direction(intended));
                let n = value.number("corneal_astigmatism_d")?;
                let cornea = PowerVector::strongest_along(plane::Cornea, 0.0, n, axis(value, "steep_deg")?);
                Ok(vec![part(value, left(eye.kc, cornea, turned_by(wanted, by(off))))])
            };
        turned => "rotated-*" => |turned; value| {
            let (along, across) = (value.number("lens_along_mark_d")?, value.number("lens_across_mark_d")?);
            let (mark, off) = (value.number("mark_deg")?, value.number("off_deg")?);
            let mark = turned(Axis::from_deg((mark - off).rem_euclid(180.0))?, off);
            let lens = ToricLens { mean: (along + across) / 2.0, cylinder: across - along, mark };
            let n = value.number("corneal_astigmatism_d")?;
            let cornea = PowerVector::strongest_along(plane::Cornea, 0.0, n, axis(value, "steep_deg")?);
            Ok(vec![part(value, toric::residual(&eye(value)?, cornea, lens)?)])
        };
    }
    turning(registry);
}

/// Turning a lens that sits wrong: what the cornea's share is, where the lens belongs, and what stays.
fn turning(registry: &mut Registry) {
    checks! { registry;
        PowerVector::<plane::Cornea>::plus, PowerVector::<plane::Cornea>::cylinder, PowerVector::<plane::Cornea>::strongest, short_way => "turn-*" => |plus, cylinder, strongest, short_way; value| {
            let (error, lens) = (value.number("plus_cylinder_d")?, value.number("lens_cylinder_at_cornea_d")?);
            let mark = value.number("mark_deg")?;
            let k = plus(
                PowerVector::strongest_along(plane::Cornea, 0.0, error, axis(value, "axis_deg")?),
                PowerVector::strongest_along(plane::Cornea, 0.0, lens, Axis::from_deg(mark)?),
            );
            let best = strongest(k).ok_or("no axis")?.deg();
            Ok(vec![match value.id.rsplit('-').next() {
                Some("k") => cylinder(k),
                Some("best_mark") => best,
                Some("turn") => short_way(best - mark),
                _ => (cylinder(k) - lens).abs(),
            }])
        };
    }
}
