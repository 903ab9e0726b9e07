//! A lens off its axis, turned back, what an operation changed, and groups of eyes.

use ocellus_card::case::Case;
use ocellus_card::parts::after::incision_found;
use ocellus_core::astigmatism::change::{Change, Indices, change};
use ocellus_core::astigmatism::expected::{self, Scatter};
use ocellus_core::astigmatism::group::{Group, Summary};
use ocellus_core::astigmatism::off_axis::{self, Loss};
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::polar::Polar;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::astigmatism::turning::{self, Working};
use ocellus_core::quantity::{AlignmentScatter, Axis, ScatterPower};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::astigmatism::dial;
use crate::checks::card::draft;
use crate::checks::cornea::Vector;
use crate::checks::given::axis;
use crate::checks::symbol;
use crate::values::Value;

/// An astigmatism by its size and steep meridian.
fn steep(value: &Value, which: &str) -> Result<Vector, Failed> {
    let size = value.number(&format!("{which}_d"))?;
    Ok(PowerVector::strongest_along(Cornea, 0.0, size, axis(value, &format!("{which}_deg"))?))
}

pub(super) fn register(registry: &mut Registry) {
    off_axis(registry);
    expectations(registry);
    turns(registry);
    changes(registry);
    groups(registry);
}

fn off_axis(registry: &mut Registry) {
    checks! { registry;
        off_axis::loss, Loss::show => "loss-*" => |loss, show; value| {
            let of = loss(value.number("apart_deg")?);
            symbol(&[value.id.rsplit('-').next().unwrap_or("")], |sink| show(&of, sink))
        };
        off_axis::left => "unequal-*" => |left; value|
            Ok(vec![left(value.number("c1_d")?, value.number("c2_d")?, value.number("apart_deg")?)]);
        // The sign of the cylinder is that of C sin p; written with the other it is the same correction.
        off_axis::needed => "still-needed-*" => |needed; value| {
            let rx = needed(value.number("cylinder_d")?, axis(value, "wanted_deg")?, value.number("apart_deg")?);
            Ok(vec![match value.id.rsplit('-').next() {
                Some("sphere") => rx.sphere,
                Some("cylinder") => rx.cylinder,
                _ => dial(rx.axis.ok_or("no axis")?),
            }])
        };
    }
}

/// The lens at the cornea, and the cornea; lens turned off the cornea's steep meridian.
fn expectation(value: &Value) -> Result<(Vector, Vector), Failed> {
    let (steep, apart) = (70.0, value.number("apart_deg")?);
    let at = |size: f64, deg: f64| {
        Ok::<_, Failed>(PowerVector::strongest_along(Cornea, 0.0, size, Axis::from_deg(deg.rem_euclid(180.0))?))
    };
    Ok((at(value.number("at_cornea_d")?, steep + apart)?, at(value.number("astigmatism_d")?, steep)?))
}

fn expectations(registry: &mut Registry) {
    checks! { registry;
        expected::mean => ["expected-*-mean", "expected-*-exact"] => |mean; value| {
            let (lens, cornea) = expectation(value)?;
            let scatter = Scatter::new(value.number("component_sd_d")?, value.number("alignment_sd_deg")?);
            Ok(vec![mean(lens, cornea, scatter)])
        };
        // Two SDs of 3 and 4 parts make one of 5.
        expected::cornea_sd => ["expected-*-mean", "expected-*-exact"] => |cornea_sd; value| {
            let (lens, cornea) = expectation(value)?;
            let part = |of: f64| Ok::<_, Failed>(ScatterPower::from_d(of * value.number("component_sd_d")?)?);
            let scatter = Scatter::new(cornea_sd(part(0.6)?, part(0.8)?), value.number("alignment_sd_deg")?);
            Ok(vec![expected::mean(lens, cornea, scatter)])
        };
        expected::alignment_sd => "card-toric-alignment-*" => |alignment_sd; value| {
            let entered = value.number("alignment_sd_deg").ok().map(AlignmentScatter::from_deg).transpose()?;
            Ok(vec![alignment_sd(entered, value.text("axis_marked") == Ok("lying"))])
        };
        expected::working, expected::Working::show, Scatter::new => "expected-*" => |working, show, new; value| {
            let scatter = new(value.number("component_sd_d")?, value.number("alignment_sd_deg")?);
            let (lens, cornea) = expectation(value)?;
            let w = working(lens, cornea, scatter);
            let step = match value.id.rsplit('-').next() {
                Some("mu") => "mu",
                Some("v") => "v",
                _ => "E",
            };
            symbol(&[step], |sink| show(&w, sink))
        };
    }
}

/// The refraction found, the lens and its mark.
fn sitting(value: &Value) -> Result<(Vector, f64, Axis), Failed> {
    let cylinder = value.number("plus_cylinder_d")?;
    let found = SpheroCylinder::at(Cornea, 0.25, cylinder, Some(axis(value, "plus_axis_deg")?));
    Ok((PowerVector::of(found), value.number("lens_cylinder_d")?, axis(value, "mark_deg")?))
}

fn best(value: &Value) -> Result<Working, Failed> {
    let (needed, lens, mark) = sitting(value)?;
    Ok(turning::working(needed, lens, mark).ok_or("no best meridian")?)
}

fn turns(registry: &mut Registry) {
    checks! { registry;
        turning::working, Working::show => ["best-turn-*", "!best-turn-*-counter", "!best-turn-*-clock"] =>
            |working, show; value| {
                let (needed, lens, mark) = sitting(value)?;
                let w = working(needed, lens, mark).ok_or("no best meridian")?;
                let shown = |step| symbol(&[step], |sink| show(&w, sink));
                match value.id.rsplit('-').next() {
                    Some("best") => Ok(vec![dial(Axis::from_deg(shown("m*")?[0])?)]),
                    Some("turn") => shown("p"),
                    Some("left") => shown("left"),
                    _ => shown("|E|"),
                }
            };
        Working::counter_clockwise => "best-turn-*-counter" => |counter; value| Ok(vec![counter(&best(value)?)]);
        Working::clockwise => "best-turn-*-clock" => |clock; value| Ok(vec![clock(&best(value)?)]);
        Working::after => "turned-*" => |after; value| {
            let left = after(&best(value)?, value.number("by_deg")?, 0.25).plus_cylinder();
            Ok(vec![match value.id.rsplit('-').next() {
                Some("cylinder") => left.cylinder,
                _ => dial(left.axis.ok_or("no axis")?),
            }])
        };
    }
}

fn wanted_and_made(value: &Value) -> Result<Change, Failed> {
    Ok(change(steep(value, "pre")?, steep(value, "post")?, steep(value, "target")?))
}

fn changes(registry: &mut Registry) {
    checks! { registry;
        change => ["change-*-tia", "change-*-tia_axis", "change-*-sia", "change-*-sia_axis", "change-*-dv", "change-*-dv_axis"] =>
            |change; value| {
                let of = change(steep(value, "pre")?, steep(value, "post")?, steep(value, "target")?);
                let name = value.id.rsplit('-').next().unwrap_or("");
                let vector = match name.get(..2) {
                    Some("ti") => of.target,
                    Some("si") => of.surgical,
                    _ => of.difference,
                };
                let axis = || Ok::<_, Failed>(dial(vector.strongest().ok_or("no axis")?));
                Ok(vec![if name.ends_with("axis") { axis()? } else { vector.cylinder() }])
            };
        Change::indices, Indices::show =>
            ["change-*-me", "change-*-ae", "change-*-ci", "change-*-ios", "change-*-fe", "change-*-torque"] =>
            |indices, show; value| {
                let of = indices(&wanted_and_made(value)?).ok_or("no change was wanted")?;
                let name = value.id.rsplit('-').next().unwrap_or("");
                let step = if name == "torque" { name.to_owned() } else { name.to_uppercase() };
                symbol(&[&step], |sink| show(&of, sink))
            };
        incision_found => ["card-toric-induced-#", "card-toric-induced-axis-#"] => |incision_found; value| {
            let draft = draft(value)?;
            let made = Case::try_from(&draft)?.known(|known| incision_found(known.eye?)).ok_or("not measured")?;
            let axis = || Ok::<_, Failed>(dial(made.strongest().ok_or("no axis")?));
            Ok(vec![if value.id.contains("axis") { axis()? } else { made.cylinder() }])
        };
        Polar::about::<Cornea> => "sia-along-*" => |about; value| {
            let made = steep(value, "post")?.minus(steep(value, "pre")?);
            let across = Axis::from_deg((value.number("site_deg")? + 90.0).rem_euclid(180.0))?;
            let polar = about(across, made);
            Ok(vec![if value.id.ends_with("torque") { polar.oblique } else { polar.along }])
        };
    }
}

/// The vectors of a value, one after another.
fn vectors(value: &Value) -> Result<Vec<Vector>, Failed> {
    value
        .text("vectors")?
        .split(';')
        .map(|pair| {
            let (x, y) = pair.split_once(',').ok_or("not x,y")?;
            let (x, y): (f64, f64) = (x.trim().parse()?, y.trim().parse()?);
            Ok(PowerVector::at(Cornea, 0.0, x / 2.0, y / 2.0))
        })
        .collect()
}

fn group(value: &Value, add: impl Fn(&mut Group, Vector)) -> Result<Group, Failed> {
    let mut group = Group::default();
    vectors(value)?.into_iter().for_each(|vector| add(&mut group, vector));
    Ok(group)
}

fn groups(registry: &mut Registry) {
    checks! { registry;
        Group::add, Group::summary, Summary::show => ["group-*", "!group-*-t2", "!group-*-p"] => |add, summary, show; value| {
            let of = summary(&group(value, add)?).ok_or("too few")?;
            let shown = |step| Ok::<_, Failed>(symbol(&[step], |sink| show(&of, sink))?[0]);
            Ok(vec![match value.id.rsplit('-').next().unwrap_or("") {
                "sdx" => shown("s_x")?,
                "sdy" => shown("s_y")?,
                "cxy" => shown("s_xy")?,
                "major" => shown("l1")?,
                "minor" => shown("l2")?,
                "direction" => dial(Axis::from_deg(shown("th")?)?),
                "mean_major" => shown("f_m")? * shown("l1")?,
                "mean_minor" => shown("f_m")? * shown("l2")?,
                "single_major" => shown("f_e")? * shown("l1")?,
                "single_minor" => shown("f_e")? * shown("l2")?,
                name => shown(name)?,
            }])
        };
        // The ends of both axes are as far from the centroid as the semi-axes are long.
        Summary::ellipse => ["group-*-mean_*", "group-*-single_*"] => |ellipse; value| {
            let of = group(value, Group::add)?;
            let (summary, centre) = (of.summary().ok_or("too few")?, of.centroid().ok_or("empty")?);
            let factor = if value.id.contains("mean") { summary.of_mean } else { summary.of_eyes };
            let end = ellipse(&summary, factor, if value.id.ends_with("major") { 180.0 } else { 90.0 });
            Ok(vec![end.minus(centre).cylinder()])
        };
        Group::count => "group-*-n" => |count; value| Ok(vec![count(&group(value, Group::add)?)]);
        Group::centroid => ["group-*-x", "group-*-y"] => |centroid; value| {
            let mean = centroid(&group(value, Group::add)?).ok_or("empty")?;
            Ok(vec![2.0 * if value.id.ends_with('x') { mean.j0 } else { mean.j45 }])
        };
        Group::against_zero => ["group-*-t2", "group-*-p"] => |against_zero; value| {
            let test = against_zero(&group(value, Group::add)?).ok_or("too few")?;
            Ok(vec![if value.id.ends_with("t2") { test.t2 } else { test.p }])
        };
    }
}
