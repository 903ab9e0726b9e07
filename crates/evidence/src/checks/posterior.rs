//! The back of the cornea: estimated from the front, and measured.

use ocellus_core::astigmatism::matrix::PowerMatrix;
use ocellus_core::astigmatism::plane;
use ocellus_core::astigmatism::posterior::{self, BackFrom, Class, class, corrected, edge};
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::two_surfaces::{self, Working};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{Axis, CornealRadius, CornealThickness};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::astigmatism::part;
use crate::checks::cornea::{measured, of_vector};
use crate::checks::given::{axis, one_of};
use crate::checks::symbol;
use crate::values::Value;

fn back(value: &Value) -> Result<BackFrom, Failed> {
    one_of(BackFrom::ALL, BackFrom::word, value.text("correction")?)
}

/// Radii and the steep meridian of one surface.
fn surface(value: &Value, which: &str) -> Result<Cornea, Failed> {
    let radius = |kind: &str| Ok::<_, Failed>(CornealRadius::from_mm(value.number(&format!("{which}_{kind}_mm"))?)?);
    let steep = value.number(&format!("{which}_steep_deg"))?;
    let axes = (Axis::from_deg((steep + 90.0).rem_euclid(180.0))?, Axis::from_deg(steep)?);
    Ok(Cornea::from_radii(radius("flat")?, radius("steep")?, Some(axes))?)
}

fn both(value: &Value, of: impl Fn(&Cornea, &Cornea, CornealThickness) -> Option<Working>) -> Result<Working, Failed> {
    let thickness = CornealThickness::from_um(value.number("thickness_um")?)?;
    Ok(of(&surface(value, "front")?, &surface(value, "back")?, thickness).ok_or("no axes")?)
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        corrected => "corrected-*" => |corrected; value|
            of_vector(value, corrected(measured(value)?, back(value)?).ok_or("measured")?);
        // Without an axis there is no class and nothing to show.
        posterior::working, posterior::Working::show => ["corrected-*", "!corrected-8-*"] => |working, show; value| {
            let w = working(measured(value)?, back(value)?).ok_or("no correction")?;
            symbol(&[if value.id.ends_with('x') { "x'" } else { "y'" }], |sink| show(&w, sink))
        };
        edge => "class-edge-*" => |edge; value| {
            let edge = edge(measured(value)?, back(value)?).ok_or("no edge")?;
            Ok(vec![if value.id.ends_with("distance") { edge.distance } else { edge.step }])
        };
        // The corrections that go by classes, written out again over the class alone.
        class => "corrected-*" => |class; value| {
            let front = measured(value)?;
            let of = class(axis(value, "steep_deg")?);
            let (x, y) = (2.0 * front.j0, 2.0 * front.j45);
            let (n, times) = (front.cylinder(), |factor: f64| (factor * x, factor * y));
            let (x, y) = match (back(value)?, of) {
                (BackFrom::Eom2015, Class::With) => (x + 0.15 * n + 0.22, y),
                (BackFrom::Eom2015, Class::Oblique) => (x + 0.05 * n + 0.27, y),
                (BackFrom::Eom2015, Class::Against) => (x + 0.27, y),
                (BackFrom::Goggin2015, Class::With) => times(0.75),
                (BackFrom::Goggin2015, Class::Against) => times(1.41),
                (BackFrom::Regression2016, _) => (0.508 + 0.926 * x, 0.009 + 0.932 * y),
                _ => (x, y),
            };
            Ok(vec![if value.id.ends_with('x') { x } else { y }])
        };
        two_surfaces::working, PowerMatrix::product => "two-surface-*" => |working, product; value| {
            let w = both(value, working)?;
            let surfaces = [(w.front_m, w.front_0, w.front_45), (w.back_m, w.back_0, w.back_45)];
            let [f, g] = surfaces.map(|(m, j0, j45)| PowerMatrix::of(PowerVector::at(plane::Cornea, m, j0, j45)));
            // the way back from the total to the product, by either order of the two
            let reduced = value.number("thickness_um")? / 1e6 / 1.376;
            for order in [product(f, g), product(g, f)] {
                let total = f.plus(g).plus(order.times(-reduced)).at(plane::Cornea);
                if total.minus(PowerVector::at(plane::Cornea, w.total_m, w.total_0, w.total_45)).blur() > 1e-12 {
                    return Err("the product is another".into());
                }
            }
            Ok(vec![part(value, PowerVector::at(plane::Cornea, w.total_m, w.total_0, w.total_45))])
        };
        Working::show => "two-surface-*" => |show; value| {
            let w = both(value, two_surfaces::working)?;
            let step = match value.id.rsplit('-').next() {
                Some("m") => "F_M",
                Some("j0") => "F_0",
                _ => "F_45",
            };
            symbol(&[step], |sink| show(&w, sink))
        };
        Working::astigmatism, Cornea::flat_radius, Cornea::steep_radius => ["two-surface-*-j0", "two-surface-*-j45"] =>
            |astigmatism, flat, steep; value| {
                let w = both(value, two_surfaces::working)?;
                let front = surface(value, "front")?;
                // half the difference of the front's two powers, by its radii as they are handed out
                let half = 188.0 / steep(&front).mm() - 188.0 / flat(&front).mm();
                if (half * half - w.front_0 * w.front_0 - w.front_45 * w.front_45).abs() > 1e-12 {
                    return Err("the front's radii are others".into());
                }
                Ok(vec![part(value, astigmatism(&w))])
            };
    }
}
