//! Long eyes, eyes after laser, and lenses by refraction.

use ocellus_card::case::Case;
use ocellus_core::choice::LongEye;
use ocellus_card::draft::Draft;
use ocellus_core::explain::{self, Subject};
use ocellus_core::optics::cornea::Cornea;
use ocellus_card::id::EntryId;
use ocellus_core::lens::answer;
use ocellus_core::lens::predict;
use ocellus_core::lens::prediction::Prediction;
use ocellus_core::lens::second::{self, Place};
use ocellus_core::lens::shammas::{self, Laser};
use ocellus_core::lens::srkt;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::lens::{Method, constants, convert, double_k, haigis_l, long_eye};
use ocellus_core::quantity::{
    AxialLength, CornealPower, HaigisA0, KeratometricIndex, LensPower, Pacd, Refraction, SurgeonFactor,
};
use ocellus_card::sink::Sink;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::card;
use crate::checks::lens::{a_constant, al, chamber_depth, cornea, power, refraction, target, thin, vertex};
use crate::checks::symbol;
use crate::values::Value;

/// A method by the key that a value gives it.
pub(super) fn method(value: &Value) -> Result<Method, Failed> {
    let key = value
        .text("method")
        .or_else(|_| value.id.rsplit_once('-').map_or(Ok(""), |(start, _)| Ok::<_, String>(start)))?;
    let named = [
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

/// The draft of a value: after laser where its method is one for such eyes.
pub(super) fn draft(value: &Value, method: Method) -> Result<Draft, Failed> {
    let mut draft = card::draft(value)?;
    if Method::AFTER_LASER.contains(&method) {
        let laser = value.text("laser").unwrap_or("myopic_laser");
        draft.enter(entries::PREVIOUS_SURGERY, laser)?;
    }
    if draft.has(entries::K_AFTER) {
        draft.enter(entries::K_AFTER_FROM, "contact_lens")?;
    }
    if let Ok(set) = value.text("set") {
        draft.enter(entries::LONG_EYE, set)?;
    }
    Ok(draft)
}

pub(super) fn laser(value: &Value) -> Laser {
    if value.text("laser") == Ok("hyperopic_laser") { Laser::Hyperopic } else { Laser::Myopic }
}

fn set(value: &Value) -> Result<LongEye, Failed> {
    let key = value.text("set")?;
    Ok(long_eye::SETS.into_iter().find(|set| set.word() == key).ok_or(format!("no set `{key}`"))?)
}

fn k(value: &Value, key: &str) -> Result<CornealPower, Failed> {
    Ok(CornealPower::from_d(value.number(key)?)?)
}

fn rx(value: &Value, key: &str) -> Result<Refraction, Failed> {
    Ok(Refraction::from_d(value.number(key)?)?)
}

fn place(value: &Value) -> Result<Place, Failed> {
    let in_place = if value.given.contains_key("lens_in_eye_d") { value.number("lens_in_eye_d")? } else { 0.0 };
    let behind = if value.given.contains_key("behind_mm") { value.number("behind_mm")? } else { 0.0 };
    Ok(Place { k: value.number("k_d")?, elp: value.number("position_mm")?, in_place, behind })
}

/// What the way through the case gives for the end of a value's id.
fn answered(value: &Value, prediction: &Prediction) -> Answer {
    let eye = prediction.optics().thin_eye().ok_or("no lens position")?;
    match value.id.rsplit('-').next() {
        Some("elp") => Ok(vec![eye.elp]),
        Some("p") => power(value, eye),
        Some("rx") => refraction(value, eye),
        _ => Err(format!("`{}` names nothing", value.id).into()),
    }
}

pub(super) fn register(registry: &mut Registry) {
    long_eyes(registry);
    after_laser(registry);
    by_refraction(registry);
    checks! { registry;
        convert::a_from_surgeon_factor => "sf-to-a-*" => |back; value|
            Ok(vec![back(SurgeonFactor::from_mm(value.number("surgeon_factor")?)?)?.get()]);
        constants::family, constants::Family::show => ["sf-from-*", "pacd-from-1*", "acdconst-from-*", "a0-from-*"] =>
            |family, show; value| {
                let family = family(a_constant(value)?)?;
                let name = value.id.split('-').next().unwrap_or_default();
                let named = [("sf", "SF"), ("pacd", "pACD"), ("acdconst", "ACDconst"), ("a0", "a0")];
                let (_, shown) = named.iter().find(|(of, _)| *of == name).ok_or("no such constant")?;
                symbol(&[shown], |sink| show(&family, sink))
            };
        convert::surgeon_factor_from_pacd => "pacd-to-sf-*" => |back; value|
            Ok(vec![back(Pacd::from_mm(value.number("pacd_mm")?)?)?.mm()]);
        convert::a_from_haigis => "a0-to-a-*" => |back; value|
            Ok(vec![back(HaigisA0::from_mm(value.number("haigis_a0")?)?)?.get()]);
        convert::a_from_acd_constant => "acdconst-to-a-*" => |back; value|
            Ok(vec![back(value.number("acd_const_mm")?)?.get()]);
    }
}

fn long_eyes(registry: &mut Registry) {
    checks! { registry;
        long_eye::working => "long-*-al" => |working; value| {
            let measured = al(value)?;
            Ok(vec![working(set(value)?, method(value)?, measured).map_or(measured.mm(), |w| w.adjusted)])
        };
        long_eye::working, long_eye::Working::show => "long-*-step" => |working, show; value| {
            let w = working(set(value)?, method(value)?, AxialLength::from_mm(32.0)?).ok_or("not adjusted")?;
            symbol(&["s"], |sink| show(&w, sink))
        };
        predict::predict, Prediction::optics => ["long-*-p", "long-*-elp"] => |predict, optics; value| {
            let (draft, method) = (draft(value, method(value)?)?, method(value)?);
            let prediction = predict(method, &Case::try_from(&draft)?)?;
            let eye = optics(&prediction).thin_eye().ok_or("no lens position")?;
            if value.id.ends_with("elp") { Ok(vec![eye.elp]) } else { power(value, eye) }
        };
    }
}

fn after_laser(registry: &mut Registry) {
    checks! { registry;
        shammas::working, shammas::Working::show, shammas::Working::thin_eye => "shammas-*" =>
            |working, show, thin_eye; value| {
                let w = working(al(value)?, &cornea(value)?, a_constant(value)?, laser(value));
                thin(value, thin_eye(&w), |sink| show(&w, sink))
            };
        haigis_l::working, haigis_l::Working::show, haigis_l::Working::thin_eye => "haigisl-*" =>
            |working, show, thin_eye; value| {
                let constants = convert::haigis(a_constant(value)?)?;
                let w = working(al(value)?, &cornea(value)?, chamber_depth(value)?, constants)?;
                match value.id.ends_with("-r") {
                    true => symbol(&["r'"], |sink| show(&w, sink)),
                    false => thin(value, thin_eye(&w), |sink| show(&w, sink)),
                }
            };
        double_k::working, double_k::Working::show, double_k::Working::thin_eye => "double-srkt-*" =>
            |working, show, thin_eye; value| {
                let (before, after) = (k(value, "k_before_d")?, k(value, "k_after_d")?);
                let steep = Cornea::from_powers(before, before, KeratometricIndex::new(1.3375)?, None)?;
                let own = srkt::working(al(value)?, &steep, a_constant(value)?);
                let w = working(before, after, 1.333, own.thin_eye());
                thin_of_double(value, thin_eye(&w), |sink| show(&w, sink))
            };
        predict::predict, Prediction::optics, Prediction::show => ["double-*-elp", "shammas-*-elp", "haigisl-*-elp"] =>
            |predict, optics, show; value| {
                let (draft, method) = (draft(value, method(value)?)?, method(value)?);
                let prediction = predict(method, &Case::try_from(&draft)?)?;
                let shown = symbol(&["ELP", "d"], |sink| show(&prediction, sink))?;
                let elp = optics(&prediction).thin_eye().ok_or("no lens position")?.elp;
                if shown == [elp] { Ok(shown) } else { Err(format!("shows {shown:?}, means {elp}").into()) }
            };
        predict::predict => ["double-*-p", "double-*-rx", "shammas-*-p", "shammas-*-rx", "haigisl-*-p", "haigisl-*-rx"] =>
            |predict; value| {
                let (draft, method) = (draft(value, method(value)?)?, method(value)?);
                answered(value, &predict(method, &Case::try_from(&draft)?)?)
            };
        answer::answers => ["double-*-p", "shammas-*-p", "haigisl-*-p"] => |answers; value| {
            let (mut draft, method) = (draft(value, method(value)?)?, method(value)?);
            draft.clear(entries::LENS_POWER);
            let answers = answers(&Case::try_from(&draft)?, &mut |_| {});
            Ok(vec![answers.iter().flatten().find(|answer| answer.method == method).ok_or("no answer")?.power])
        };
        answer::ordinary_answers => "srkt-##-p" => |answers; value| {
            let mut draft = card::draft(value)?;
            draft.clear(entries::LENS_POWER);
            let answers = answers(&Case::try_from(&draft)?, &mut |_| {});
            Ok(vec![answers.iter().flatten().find(|answer| answer.method == Method::Srkt).ok_or("no answer")?.power])
        };
        explain::explain => ["double-*-p", "shammas-*-p", "haigisl-*-p"] => |explain; value| {
            let (mut draft, method) = (draft(value, method(value)?)?, method(value)?);
            draft.clear(entries::LENS_POWER);
            let case = Case::try_from(&draft)?;
            symbol(&["P"], |sink| _ = explain(Subject::Method(method), &case, sink))
        };
        double_k::from_history => "history-*" => |from_history; value| {
            let (before, after) = (rx(value, "refraction_before_d")?, rx(value, "refraction_after_d")?);
            Ok(vec![from_history(k(value, "k_before_d")?, before, after, vertex(value)?)?.d()])
        };
    }
}

fn thin_of_double(value: &Value, eye: ThinEye, show: impl FnOnce(&mut dyn Sink)) -> Answer {
    match value.id.rsplit('-').next() {
        Some("p") => power(value, eye),
        Some("rx") => refraction(value, eye),
        _ => symbol(&["ELP"], show),
    }
}

fn by_refraction(registry: &mut Registry) {
    checks! { registry;
        second::working, second::Working::show => ["second-*-p", "exchange-*-p"] => |working, show; value| {
            let w = working(&place(value)?, rx(value, "refraction_now_d")?, target(value)?, vertex(value)?)?;
            symbol(&["P"], |sink| show(&w, sink))
        };
        second::refraction => "second-*-rx" => |refraction; value| {
            let power = LensPower::from_d(value.number("power_d")?)?;
            Ok(vec![refraction(&place(value)?, rx(value, "refraction_now_d")?, power, vertex(value)?)?])
        };
    }
}
