//! Each method asked about the eye of a value, by itself and through the table of all methods.

use ocellus_core::lens::eye::{Eye, Lack, Laser, Measured};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::view::{Eyes, Optics, View};
use ocellus_core::lens::{convert, haigis, haigis_l, hoffer_q, holladay1, long_eye, shammas_pl, srk2, srkt, t2};
use ocellus_core::quantity::AxialLength;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::{a_constant, al, chamber_depth, cornea, k, laser, lens, set, target, vertex};
use crate::checks::symbol;
use crate::values::Value;

/// A method by the key that a value gives it, or by the beginning of its id.
pub(super) fn method(value: &Value) -> Result<Method, Failed> {
    let key = value
        .text("method")
        .or_else(|_| value.id.rsplit_once('-').map_or(Ok(""), |(start, _)| Ok::<_, String>(start)))?;
    let named = [
        ("srk2", Method::Srk2),
        ("srkt", Method::Srkt),
        ("t2", Method::T2),
        ("holladay1", Method::Holladay1),
        ("hofferq", Method::HofferQ),
        ("haigis", Method::Haigis),
        ("shammas", Method::ShammasPl),
        ("haigisl", Method::HaigisL),
        ("double-srkt", Method::DoubleSrkt),
        ("double-holladay1", Method::DoubleHolladay1),
        ("double-hofferq", Method::DoubleHofferQ),
    ];
    let found = named.iter().rev().find(|(name, _)| key == *name || key.starts_with(&format!("{name}-")));
    Ok(found.ok_or(format!("no method `{key}`"))?.1)
}

/// The length that a value's set gives a method, where it names one.
pub(super) fn adjusted(value: &Value, method: Method) -> Result<Option<long_eye::Working>, Failed> {
    if !value.given.contains_key("set") {
        return Ok(None);
    }
    Ok(long_eye::working(set(value)?, method, al(value)?))
}

/// What a value says of its eye.
pub(super) fn measured(value: &Value, method: Method) -> Result<Measured, Failed> {
    let has = |key: &str| value.given.contains_key(key);
    let length = match adjusted(value, method)? {
        Some(w) => AxialLength::from_mm(w.adjusted)?,
        None => al(value)?,
    };
    Ok(Measured {
        axial_length: Some(length),
        cornea: if has("k_d") { Some(cornea(value)?) } else { None },
        chamber_depth: if has("acd_mm") { Some(chamber_depth(value)?) } else { None },
        a_constant: Some(a_constant(value)?),
        laser: Method::of(Eyes::AfterLaser).any(|after| after == method).then(|| laser(value)),
        k_before: if has("k_before_d") { Some(k(value, "k_before_d")?) } else { None },
        k_after: if has("k_after_d") { Some(k(value, "k_after_d")?) } else { None },
        ..Measured::NOTHING
    })
}

/// What Shammas-PL makes of an eye: its optics, and what the laser was for.
pub(super) type Shammas = (shammas_pl::Working, Laser);

/// [`Method::view`].
pub(super) type Viewed = fn(Method, &dyn Eye, &mut dyn FnMut(&dyn View)) -> Result<(), Lack>;

/// What a method's view of a value's eye answers.
pub(super) fn ask<T>(viewed: Viewed, value: &Value, of: impl Fn(&dyn View) -> Result<T, Failed>) -> Result<T, Failed> {
    let (method, mut answer) = (method(value)?, Err("no view".into()));
    viewed(method, &measured(value, method)?, &mut |view| answer = of(view))?;
    answer
}

/// The lens position of a method's optics, the lens for the target or the refraction for the lens, as the id ends.
pub(super) fn of_optics(value: &Value, optics: &Optics) -> Answer {
    Ok(vec![match value.id.rsplit('-').next() {
        Some("elp") => optics.thin_eye().ok_or("no lens position")?.elp,
        Some("p") => optics.power(target(value)?, vertex(value)?)?,
        Some("rx") => optics.refraction(lens(value)?, vertex(value)?)?,
        _ => return Err(format!("`{}` names nothing", value.id).into()),
    }])
}

pub(super) fn register(registry: &mut Registry) {
    by_table(registry);
    by_method(registry);
}

fn by_table(registry: &mut Registry) {
    checks! { registry;
        Method::view, Optics::power => [
            "srk2-*-p", "srkt-*-p", "t2-*-p", "holladay1-##-p", "hofferq-##-p", "haigis-*-p",
            "double-*-p", "shammas-*-p", "haigisl-*-p", "long-*-p",
        ] => |view, power; value|
            ask(view, value, |view| Ok(vec![power(&view.optics(), target(value)?, vertex(value)?)?]));
        Method::view, Optics::refraction => [
            "srk2-*-rx", "srkt-*-rx", "t2-*-rx", "holladay1-##-rx", "hofferq-##-rx", "haigis-*-rx",
            "double-*-rx", "shammas-*-rx", "haigisl-*-rx",
        ] => |view, refraction; value|
            ask(view, value, |view| Ok(vec![refraction(&view.optics(), lens(value)?, vertex(value)?)?]));
        Method::view, Optics::thin_eye => [
            "srkt-*-elp", "t2-*-elp", "holladay1-##-elp", "hofferq-##-elp", "haigis-*-elp",
            "double-*-elp", "shammas-*-elp", "haigisl-*-elp", "long-*-elp",
        ] => |view, thin_eye; value| {
            ask(view, value, |view| {
                let elp = thin_eye(&view.optics()).ok_or("no lens position")?.elp;
                let shown = symbol(&["ELP", "d"], |steps| view.show(steps))?;
                if shown == [elp] { Ok(shown) } else { Err(format!("shows {shown:?}, means {elp}").into()) }
            })
        };
        Method::view => "srk2-*-p0" => |view; value|
            ask(view, value, |view| symbol(&["P0"], |steps| view.show(steps)));
    }
}

/// What each method hands out as its optics.
fn by_method(registry: &mut Registry) {
    checks! { registry;
        srk2::Working::optics => ["srk2-##-p", "srk2-##-rx"] => |optics; value|
            of_optics(value, &optics(&srk2::working(al(value)?, &cornea(value)?, a_constant(value)?)));
        srkt::Working::optics => ["srkt-##-p", "srkt-##-rx", "srkt-##-elp"] => |optics; value|
            of_optics(value, &optics(&srkt::working(al(value)?, &cornea(value)?, a_constant(value)?)));
        t2::Working::optics => ["t2-*-p", "t2-*-rx", "t2-*-elp"] => |optics; value|
            of_optics(value, &optics(&t2::working(al(value)?, &cornea(value)?, a_constant(value)?)));
        holladay1::Working::optics => ["holladay1-##-p", "holladay1-##-rx", "holladay1-##-elp"] => |optics; value| {
            let sf = convert::surgeon_factor(a_constant(value)?)?;
            of_optics(value, &optics(&holladay1::working(al(value)?, &cornea(value)?, sf)))
        };
        hoffer_q::Working::optics => ["hofferq-##-p", "hofferq-##-rx", "hofferq-##-elp"] => |optics; value| {
            let pacd = convert::pacd(convert::surgeon_factor(a_constant(value)?)?)?;
            of_optics(value, &optics(&hoffer_q::working(al(value)?, &cornea(value)?, pacd)))
        };
        haigis::Working::optics => ["haigis-*-p", "haigis-*-rx", "haigis-*-elp"] => |optics; value| {
            let constants = convert::haigis(a_constant(value)?)?;
            of_optics(value, &optics(&haigis::working(al(value)?, &cornea(value)?, chamber_depth(value)?, constants)))
        };
        Shammas::optics, Shammas::show =>
            ["shammas-*-p", "shammas-*-rx", "shammas-*-elp"] => |optics, show; value| {
                let w = shammas_pl::working(al(value)?, &cornea(value)?, a_constant(value)?, laser(value));
                let w = (w, laser(value));
                let elp = optics(&w).thin_eye().ok_or("no lens position")?.elp;
                if symbol(&["ELP"], |steps| show(&w, steps))? == [elp] {
                    of_optics(value, &optics(&w))
                } else {
                    Err("shows another lens position".into())
                }
            };
        haigis_l::Working::optics => ["haigisl-*-p", "haigisl-*-rx", "haigisl-*-elp"] => |optics; value| {
            let constants = convert::haigis(a_constant(value)?)?;
            of_optics(value, &optics(&haigis_l::working(al(value)?, &cornea(value)?, chamber_depth(value)?, constants)?))
        };
        // T2's corneal height in SRK/T's eye is T2's lens position.
        srkt::Working::beside => "t2-*-elp" => |beside; value| {
            let w = srkt::working(al(value)?, &cornea(value)?, a_constant(value)?);
            Ok(vec![beside(&w).ok_or("nothing beside")?.elp])
        };
        t2::corneal_height => "t2-*-h2" => |corneal_height; value|
            Ok(vec![corneal_height(al(value)?.mm(), cornea(value)?.k())]);
    }
}
