//! Lens power: each method's intermediate values, the lens for the target, the refraction for a lens.

use ocellus_core::lens::view::Line;
use ocellus_core::lens::{convert, haigis, hoffer_q, holladay1, srk2, srkt, t2};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::optics::thin_eye::{PowerWorking, RefractionWorking, ThinEye};
use ocellus_core::optics::{vergence, vertex as spectacles};
use ocellus_core::quantity::{AConstant, AxialLength, CornealPower, KeratometricIndex, SurgeonFactor};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::{a_constant, al, chamber_depth, cornea, lens, target, vertex};
use crate::checks::{Shown, crossing, symbol};
use crate::values::Value;

/// The end of a value's id, and the symbols under which the methods' papers know it.
const STEPS: &[(&str, &[&str])] = &[
    ("a0", &["a0"]),
    ("a1", &["A1"]),
    ("a-used", &["A'"]),
    ("acd", &["ACD"]),
    ("ag", &["AG"]),
    ("al-used", &["LOPT", "ALm", "AL"]),
    ("cr", &["CR"]),
    ("cw", &["Cw"]),
    ("elp", &["ELP", "d"]),
    ("h", &["H"]),
    ("h2", &["H2"]),
    ("kc", &["Kc", "Dc", "K"]),
    ("lcor", &["LCOR"]),
    ("offset", &["offset"]),
    ("p0", &["P0"]),
    ("pacd", &["pACD"]),
    ("radicand", &["q"]),
    ("rag", &["Rag"]),
    ("sf", &["SF"]),
];

fn step(value: &Value, name: &str, show: impl FnOnce(&mut Shown)) -> Answer {
    let (_, symbols) = STEPS.iter().find(|(end, _)| *end == name).ok_or(format!("`{}` names no step", value.id))?;
    symbol(symbols, show)
}

/// A step of the working, or what the optics make of it: P for the target, Rx for the lens.
pub(super) fn thin(value: &Value, eye: ThinEye, show: impl FnOnce(&mut Shown)) -> Answer {
    match value.id.splitn(3, '-').last() {
        Some("p") => power(value, eye),
        Some("rx") => refraction(value, eye),
        name => step(value, name.unwrap_or_default(), show),
    }
}

pub(super) fn power(value: &Value, eye: ThinEye) -> Answer {
    Ok(vec![eye.power(target(value)?, vertex(value)?)?.power])
}

pub(super) fn refraction(value: &Value, eye: ThinEye) -> Answer {
    Ok(vec![eye.refraction(lens(value)?, vertex(value)?)?.rx])
}

/// The eye of a value about the vergence formula alone.
fn bare(value: &Value) -> Result<ThinEye, Failed> {
    Ok(ThinEye::new(value.number("optical_length_mm")?, value.number("corneal_power_d")?, value.number("elp_mm")?))
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        srk2::working, srk2::Working::show, srk2::Working::line, Line::power, Line::refraction => "srk2-*" =>
            |working, show, line, power, refraction; value| {
                let w = working(al(value)?, &cornea(value)?, a_constant(value)?);
                match value.id.splitn(3, '-').last() {
                    Some("p") => Ok(vec![power(&line(&w), target(value)?)]),
                    Some("rx") => Ok(vec![refraction(&line(&w), lens(value)?)]),
                    name => step(value, name.unwrap_or_default(), |sink| show(&w, sink)),
                }
            };
        srkt::working, srkt::Working::show, srkt::Working::thin_eye =>
            "srkt-##-*" => |working, show, thin_eye; value| {
                let w = working(al(value)?, &cornea(value)?, a_constant(value)?);
                thin(value, thin_eye(&w), |sink| show(&w, sink))
            };
        t2::working, t2::Working::show, t2::Working::thin_eye => "t2-*" => |working, show, thin_eye; value| {
            let w = working(al(value)?, &cornea(value)?, a_constant(value)?);
            thin(value, thin_eye(&w), |sink| show(&w, sink))
        };
        holladay1::working, holladay1::Working::show, holladay1::Working::thin_eye =>
            "holladay1-##-*" =>
            |working, show, thin_eye; value| {
                let w = working(al(value)?, &cornea(value)?, convert::surgeon_factor(a_constant(value)?)?);
                thin(value, thin_eye(&w), |sink| show(&w, sink))
            };
        hoffer_q::working, hoffer_q::Working::show, hoffer_q::Working::thin_eye =>
            "hofferq-##-*" =>
            |working, show, thin_eye; value| {
                let pacd = convert::pacd(convert::surgeon_factor(a_constant(value)?)?)?;
                let w = working(al(value)?, &cornea(value)?, pacd);
                thin(value, thin_eye(&w), |sink| show(&w, sink))
            };
        haigis::working, haigis::Working::show, haigis::Working::thin_eye => "haigis-*" =>
            |working, show, thin_eye; value| {
                let w = working(al(value)?, &cornea(value)?, chamber_depth(value)?, convert::haigis(a_constant(value)?)?);
                thin(value, thin_eye(&w), |sink| show(&w, sink))
            };
    }
    // What the optics show of a refraction, on the eye of one of the methods.
    checks! { registry;
        ThinEye::refraction, RefractionWorking::show => "t2-*-rx" => |refraction, show; value| {
            let eye = t2::working(al(value)?, &cornea(value)?, a_constant(value)?).thin_eye();
            let w = refraction(&eye, lens(value)?, vertex(value)?)?;
            symbol(&["Rx"], |sink| show(&w, sink))
        };
    }
    published(registry);
    optics(registry);
    constants(registry);
}

/// What the papers and the trade print of the methods.
fn published(registry: &mut Registry) {
    checks! { registry;
        holladay1::working => ["holladay1-k39", "holladay1-k32", "cusp-holladay1"] => |working; value| {
            let sf = convert::surgeon_factor(a_constant(value)?)?;
            power(value, working(al(value)?, &cornea(value)?, sf).thin_eye())
        };
        t2::working => "cusp-t2" => |working; value|
            power(value, working(al(value)?, &cornea(value)?, a_constant(value)?).thin_eye());
        srkt::working => ["cusp-srkt", "average-srkt"] => |working; value|
            power(value, working(al(value)?, &cornea(value)?, a_constant(value)?).thin_eye());
        srkt::working => "cusp-srkt-elp" => |working; value|
            Ok(vec![working(al(value)?, &cornea(value)?, a_constant(value)?).elp]);
        srkt::working => "srkt-radicand-*" => |working; value| {
            let (cornea, a) = (cornea(value)?, AConstant::new(118.4)?);
            let radicand = |mm| Ok(working(AxialLength::from_mm(mm)?, &cornea, a).radicand);
            crossing(20.0, 32.0, radicand)
        };
        srkt::working => "retina-sign" => |working; _value| {
            let a = AConstant::new(118.4)?;
            crossing(24.0, 40.0, |mm| {
                let eye = working(AxialLength::from_mm(mm)?, &average_cornea()?, a);
                Ok(eye.al - mm)
            })
        };
        srkt::working => "lcor-turn" => |working; _value| {
            let a = AConstant::new(118.4)?;
            let lcor = |mm| Ok::<_, Failed>(working(AxialLength::from_mm(mm)?, &average_cornea()?, a).lcor);
            crossing(25.0, 39.9, |mm| Ok(lcor(mm + 0.01)? - lcor(mm - 0.01)?))
        };
        srkt::working => "lcor-step" => |working; value| {
            let edge = value.number("axial_length_mm")?;
            let lcor = |mm| Ok::<_, Failed>(working(AxialLength::from_mm(mm)?, &average_cornea()?, AConstant::new(118.4)?).lcor);
            Ok(vec![lcor(edge.next_up())? - lcor(edge)?])
        };
        hoffer_q::working => "hofferq-step" => |working; value| {
            let edge = value.number("axial_length_mm")?;
            let pacd = convert::pacd(convert::surgeon_factor(AConstant::new(118.4)?)?)?;
            let acd = |mm| Ok::<_, Failed>(working(AxialLength::from_mm(mm)?, &average_cornea()?, pacd).acd);
            Ok(vec![(acd(edge.next_up())? - acd(edge)?).abs()])
        };
        hoffer_q::working => "hofferq-degrees" => |working; value| {
            let pacd = convert::pacd(convert::surgeon_factor(AConstant::new(118.4)?)?)?;
            Ok(vec![working(AxialLength::from_mm(23.5)?, &cornea(value)?, pacd).cornea_term])
        };
        haigis::working => "average-haigis" => |working; value| {
            let acd = chamber_depth(value)?;
            power(value, working(al(value)?, &cornea(value)?, acd, convert::haigis(a_constant(value)?)?).thin_eye())
        };
    }
}

fn average_cornea() -> Result<Cornea, Failed> {
    let k = CornealPower::from_d(43.8)?;
    Ok(Cornea::from_powers(k, k, KeratometricIndex::new(1.3375)?, None)?)
}

/// The vergence formula by itself, and refractions between spectacles and cornea.
fn optics(registry: &mut Registry) {
    checks! { registry;
        ThinEye::power, PowerWorking::show => "skeleton-*-p" => |power, show; value| {
            let w = power(&bare(value)?, target(value)?, vertex(value)?)?;
            symbol(&["P"], |sink| show(&w, sink))
        };
        // Step by step, so that lenses are reached that nobody could type.
        ThinEye::behind_lens, vergence::at_cornea => "skeleton-*-rc" => |behind_lens, at_cornea; value| {
            let eye = bare(value)?;
            Ok(vec![at_cornea(behind_lens(&eye)? - value.number("iol_power_d")?, eye.elp)? - eye.kc])
        };
        ThinEye::behind_lens, vergence::at_cornea, spectacles::to_spectacles => "skeleton-*-rx" =>
            |behind_lens, at_cornea, to_spectacles; value| {
                let eye = bare(value)?;
                let rc = at_cornea(behind_lens(&eye)? - value.number("iol_power_d")?, eye.elp)? - eye.kc;
                Ok(vec![to_spectacles(rc, vertex(value)?)?])
            };
        vergence::at_lens => ["lens-cylinder-*-v_steep", "lens-cylinder-*-v_flat"] => |at_lens; value| {
            let half = value.number("corneal_astigmatism_d")? / 2.0;
            let half = if value.id.ends_with("steep") { half } else { -half };
            let rc = spectacles::to_cornea(value.number("target_d")?, vertex(value)?)?;
            Ok(vec![at_lens(value.number("corneal_power_d")? + half + rc, value.number("elp_mm")?)?])
        };
        vergence::at_cornea => "lens-back-*" => |at_cornea; value|
            Ok(vec![at_cornea(value.number("vergence_d")?, value.number("elp_mm")?)?]);
        ThinEye::new, ThinEye::leaving => "lens-back-*" => |new, leaving; value|
            Ok(vec![leaving(&new(0.0, 0.0, value.number("elp_mm")?), value.number("vergence_d")?)?]);
        ThinEye::arriving, ThinEye::forward => "skeleton-*-p" => |arriving, forward; value| {
            let eye = bare(value)?;
            let light = eye.kc + spectacles::to_cornea(value.number("target_d")?, vertex(value)?)?;
            // moved back by a power of two and forward again
            let moved = forward(ThinEye { elp: eye.elp + 0.5, ..eye }, 0.5);
            Ok(vec![eye.behind_lens()? - arriving(&moved, light)?])
        };
        spectacles::to_cornea => ["to-cornea-*", "vertex-*"] => |to_cornea; value|
            Ok(vec![to_cornea(value.number("refraction_d")?, vertex(value)?)?]);
        spectacles::to_spectacles => "to-spectacles-*" => |to_spectacles; value|
            Ok(vec![to_spectacles(value.number("refraction_d")?, vertex(value)?)?]);
    }
}

/// One lens constant from another.
fn constants(registry: &mut Registry) {
    checks! { registry;
        convert::surgeon_factor => ["sf-from-*", "const-sf"] => |surgeon_factor; value|
            Ok(vec![surgeon_factor(a_constant(value)?)?.mm()]);
        convert::pacd => ["pacd-from-1*", "const-pacd"] => |pacd; value|
            Ok(vec![pacd(convert::surgeon_factor(a_constant(value)?)?)?.mm()]);
        convert::pacd => "pacd-from-sf-*" => |pacd; value|
            Ok(vec![pacd(SurgeonFactor::from_mm(value.number("surgeon_factor")?)?)?.mm()]);
        convert::acd_constant => ["acdconst-from-*", "const-acd"] => |acd_constant; value|
            Ok(vec![acd_constant(a_constant(value)?)]);
        convert::haigis => "a0-from-*" => |haigis; value| Ok(vec![haigis(a_constant(value)?)?.0.mm()]);
    }
}
