//! The cornea with its back and its incisions.

use ocellus_card::case::Case;
use ocellus_card::{entries, items};
use ocellus_core::astigmatism::incision::{self, centroid, induced};
use ocellus_core::astigmatism::matrix::PowerMatrix;
use ocellus_core::astigmatism::plane;
use ocellus_core::astigmatism::posterior::{self, BackFrom, Class, class, corrected, edge};
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::site::{self, ClockSeen, Seat, Side, SiteWord};
use ocellus_core::astigmatism::two_surfaces::{self, Working};
use ocellus_core::astigmatism::{cornea, meridian};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{
    Axis, ClockHour, CornealPower, CornealRadius, CornealThickness, Flattening, KeratometricIndex, Site,
};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::astigmatism::{axis, dial, part};
use crate::checks::card::{Card, draft};
use crate::checks::symbol;
use crate::values::Value;

type Vector = PowerVector<plane::Cornea>;

/// The one of a few that a word means.
fn one_of<T: Copy>(all: &[T], word_of: fn(T) -> &'static str, word: &str) -> Result<T, Failed> {
    Ok(all.iter().copied().find(|one| word_of(*one) == word).ok_or(format!("no word `{word}`"))?)
}

fn eye(value: &Value) -> Result<Side, Failed> {
    one_of(Side::ALL, Side::word, value.text("eye")?)
}

fn back(value: &Value) -> Result<BackFrom, Failed> {
    one_of(BackFrom::ALL, BackFrom::word, value.text("correction")?)
}

fn word(value: &Value) -> Result<SiteWord, Failed> {
    one_of(SiteWord::ALL, SiteWord::word, value.text("word")?)
}

fn flattening(value: &Value, key: &str) -> Result<Flattening, Failed> {
    Ok(Flattening::from_d(value.number(key)?)?)
}

/// The numbers that an id may end in: a vector's parts, its size, its meridian.
fn of_vector(value: &Value, v: Vector) -> Answer {
    Ok(vec![match value.id.rsplit('-').next() {
        Some("x") => 2.0 * v.j0,
        Some("y") => 2.0 * v.j45,
        Some("n") => v.cylinder(),
        _ => dial(v.strongest().ok_or("no axis")?),
    }])
}

/// A cornea of these powers at 1.3375, or of this astigmatism, whose steep meridian is the first.
fn front(value: &Value) -> Result<Cornea, Failed> {
    let (flat, steep) = match value.number("corneal_astigmatism_d").or(value.number("astigmatism_d")) {
        Ok(n) => (43.0, 43.0 + n),
        Err(_) => (value.number("flat_d")?, value.number("steep_d")?),
    };
    let along = value.number("steep_deg")?;
    let axes = (Axis::from_deg(along)?, Axis::from_deg((along + 90.0).rem_euclid(180.0))?);
    let power = CornealPower::from_d;
    Ok(Cornea::from_powers(power(steep)?, power(flat)?, KeratometricIndex::new(1.3375)?, Some(axes))?)
}

fn measured(value: &Value) -> Result<Vector, Failed> {
    Ok(cornea::measured(&front(value)?).ok_or("no axes")?)
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
    sites(registry);
    incisions(registry);
    backs(registry);
}

fn sites(registry: &mut Registry) {
    checks! { registry;
        site::of_word => "of-word-*" => |of_word; value|
            Ok(vec![of_word(word(value)?, eye(value)?).ok_or("no site")?.deg()]);
        // The words go round from the temporal side, an eighth of a turn each.
        site::from_temporal => "of-word-*" => |from_temporal; value|
            Ok(vec![from_temporal(45.0 * f64::from(word(value)? as u8), eye(value)?)]);
        site::of_clock => "of-clock-*" => |of_clock; value| {
            Ok(vec![of_clock(ClockHour::new(value.number("clock_h")?)?, seen(value)?, eye(value)?).ok_or("no site")?.deg()])
        };
        site::tilt => "of-clock-*" => |tilt; value| {
            let seat = match seen(value)? {
                ClockSeen::Facing => None,
                ClockSeen::Superior => Some(Seat::Superior),
                ClockSeen::Temporal => Some(Seat::Temporal),
            };
            Ok(vec![(90.0 - 30.0 * value.number("clock_h")? + tilt(seat, eye(value)?)).rem_euclid(360.0)])
        };
        // Six hours on is across the eye.
        site::opposite => "of-clock-*" => |opposite; value| Ok(vec![opposite(clock(value, 6.0)?).deg()]);
    }
}

fn seen(value: &Value) -> Result<ClockSeen, Failed> {
    one_of(ClockSeen::ALL, ClockSeen::word, value.text("seen_from")?)
}

/// The site so many hours after the one given.
fn clock(value: &Value, later: f64) -> Result<Site, Failed> {
    let hour = ClockHour::new((value.number("clock_h")? + later) % 12.0)?;
    Ok(site::of_clock(hour, seen(value)?, eye(value)?).ok_or("no site")?)
}

fn incisions(registry: &mut Registry) {
    checks! { registry;
        cornea::measured, induced => "incision-*" => |measured, induced; value| {
            let site = Site::from_deg(value.number("site_deg")?)?;
            let before = measured(&front(value)?).ok_or("no axes")?;
            of_vector(value, before.plus(induced(site, flattening(value, "flattening_d")?)))
        };
        meridian => "incision-*" => |meridian; value| {
            let across = meridian(value.number("site_deg")? + 90.0).ok_or("no meridian")?;
            of_vector(value, measured(value)?.plus(centroid(flattening(value, "flattening_d")?, across)))
        };
        cornea::working, cornea::Working::show => "incision-*-n" => |working, show; value| {
            let incision = induced(Site::from_deg(value.number("site_deg")?)?, flattening(value, "flattening_d")?);
            let w = working(&front(value)?, measured(value)?, incision).ok_or("no axes")?;
            symbol(&["N'"], |sink| show(&w, sink))
        };
        incision::working, incision::Working::show => ["incision-*-x", "incision-*-y"] => |working, show; value| {
            let w = working(Site::from_deg(value.number("site_deg")?)?, flattening(value, "flattening_d")?);
            let before = measured(value)?;
            let (step, before) = if value.id.ends_with('x') { ("s_x", before.j0) } else { ("s_y", before.j45) };
            Ok(vec![symbol(&[step], |sink| show(&w, sink))?[0] + 2.0 * before])
        };
        induced => ["incisions-*", "!incisions-*-flat", "!incisions-*-steep"] => |induced; value| {
            let site = Site::from_deg(value.number("site_deg")?)?;
            let cuts = [
                (site, "flattening_d"),
                (site::opposite(site), "opposite_d"),
                (Site::from_deg(value.number("site2_deg")?)?, "flattening2_d"),
            ];
            let mut after = measured(value)?;
            for (site, key) in cuts {
                after = after.plus(induced(site, flattening(value, key)?));
            }
            of_vector(value, after)
        };
        // On the card: what a keratometer would read.
        Case::plan => ["incisions-*-flat", "incisions-*-steep"] => |plan; value| {
            let mut draft = draft(value)?;
            let steep = value.number("steep_deg")?;
            for (entry, number) in [
                (entries::K1.id(), value.number("flat_d")?),
                (entries::K1_AXIS.id(), (steep + 90.0).rem_euclid(180.0)),
                (entries::K2.id(), value.number("steep_d")?),
                (entries::K2_AXIS.id(), steep),
                (entries::INCISION_SITE.id(), value.number("site_deg")?),
                (entries::FLATTENING.id(), value.number("flattening_d")?),
                (entries::PAIRED_FLATTENING.id(), value.number("opposite_d")?),
                (entries::OTHER_SITE.id(), value.number("site2_deg")?),
                (entries::OTHER_FLATTENING.id(), value.number("flattening2_d")?),
            ] {
                draft.set(entry, number);
            }
            let card = Card::of(plan, &draft)?;
            let what = if value.id.ends_with("flat") { items::PLANNED_FLAT } else { items::PLANNED_STEEP };
            Ok(vec![card.items.iter().find(|item| item.what == what).ok_or("not on the card")?.value])
        };
        centroid => "centroid-*" => |centroid; value| {
            let size = flattening(value, "centroid_d")?;
            of_vector(value, measured(value)?.plus(centroid(size, axis(value, "centroid_deg")?)))
        };
    }
}

fn backs(registry: &mut Registry) {
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
