//! How a predicted refraction moves, how sure it is, and what a label may be off by.

use ocellus_core::lens::certainty::{Budget, Scatter, budget, chance};
use ocellus_core::lens::label;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::second_eye;
use ocellus_core::lens::slopes::{Chain, Gradient, Slopes, slopes};
use ocellus_core::lens::view::View;
use ocellus_core::lens::{convert, haigis, haigis_l, hoffer_q, holladay1, shammas_pl, srkt, t2};
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{LensPower, Refraction};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::{a_constant, al, chamber_depth, cornea, laser, lens, or, rx, vertex};
use crate::checks::symbol;
use crate::checks::view::{Shammas, Viewed, adjusted, ask, method};
use crate::values::Value;

/// The slope that the end of a value's id names.
fn slope(value: &Value, eye: ThinEye, chain: Chain) -> Answer {
    let slopes = slopes(&eye, &chain, lens(value)?, vertex(value)?)?;
    let name = value.id.rsplit('-').next().unwrap_or_default();
    let symbols = match name {
        "al" => "dRx/dAL",
        "k" => "dRx/dK",
        "acd" => "dRx/dACD",
        "elp" => "dRx/dd",
        "lens" => "dRx/dP",
        "kbefore" => return Ok(vec![slopes.position * chain.elp_k_before]),
        _ => return Err(format!("`{}` names no slope", value.id).into()),
    };
    symbol(&[symbols], |sink| slopes.show(sink))
}

/// A method's optics of the eye of a value, and how they move.
fn moving(viewed: Viewed, value: &Value) -> Result<(ThinEye, Chain), Failed> {
    ask(viewed, value, |view| {
        let eye = view.optics().thin_eye().ok_or("no lens position")?;
        Ok((eye, view.chain().ok_or("no slopes")?))
    })
}

/// What scatters: nothing where a value is silent.
fn scatter(value: &Value) -> Result<Scatter, Failed> {
    let of = |key: &str| or(value, key, 0.0);
    Ok(Scatter {
        al: of("sd_al")?,
        k: of("sd_k")?,
        acd: of("sd_acd")?,
        position: of("sd_position")?,
        label: of("tolerance_d")?,
        refraction: of("sd_refraction")?,
    })
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        srkt::Working::chain => ["slope-srkt-*"] => |chain; value| {
            let w = srkt::working(al(value)?, &cornea(value)?, a_constant(value)?);
            slope(value, w.thin_eye(), chain(&w).ok_or("no slopes")?)
        };
        t2::Working::chain => "slope-t2-*" => |chain; value| {
            let w = t2::working(al(value)?, &cornea(value)?, a_constant(value)?);
            slope(value, w.thin_eye(), chain(&w).ok_or("no slopes")?)
        };
        holladay1::Working::chain => "slope-holladay1-*" => |chain; value| {
            let w = holladay1::working(al(value)?, &cornea(value)?, convert::surgeon_factor(a_constant(value)?)?);
            slope(value, w.thin_eye(), chain(&w).ok_or("no slopes")?)
        };
        hoffer_q::Working::chain => "slope-hofferq-*" => |chain; value| {
            let pacd = convert::pacd(convert::surgeon_factor(a_constant(value)?)?)?;
            let w = hoffer_q::working(al(value)?, &cornea(value)?, pacd);
            slope(value, w.thin_eye(), chain(&w).ok_or("no slopes")?)
        };
        haigis::Working::chain => "slope-haigis-*" => |chain; value| {
            let constants = convert::haigis(a_constant(value)?)?;
            let w = haigis::working(al(value)?, &cornea(value)?, chamber_depth(value)?, constants);
            slope(value, w.thin_eye(), chain(&w).ok_or("no slopes")?)
        };
        Shammas::chain => "slope-shammas-*" => |chain; value| {
            let w = shammas_pl::working(al(value)?, &cornea(value)?, a_constant(value)?, laser(value));
            slope(value, w.thin_eye(), chain(&(w, laser(value))).ok_or("no slopes")?)
        };
        haigis_l::Working::chain => "slope-haigisl-*" => |chain; value| {
            let constants = convert::haigis(a_constant(value)?)?;
            let w = haigis_l::working(al(value)?, &cornea(value)?, chamber_depth(value)?, constants)?;
            slope(value, w.thin_eye(), chain(&w).ok_or("no slopes")?)
        };
        Method::view, slopes, Slopes::show => ["slope-*", "!slope-published"] => |view, slopes, show; value| {
            let (eye, chain) = moving(view, value)?;
            let w = slopes(&eye, &chain, lens(value)?, vertex(value)?)?;
            // streamed as it is computed
            symbol(&["dRx/dP"], |sink| show(&w, sink))?;
            slope(value, eye, chain)
        };
        // Of a line through two lengths, what one more millimetre makes.
        Chain::of_length => "long-*-al" => |of_length; value| {
            let measured = al(value)?.mm();
            let Some(w) = adjusted(value, method(value)?)? else { return Ok(vec![measured]) };
            Ok(vec![w.constant + of_length(Chain { al: 1.0, ..Chain::NONE }, w.slope).al * measured])
        };
        slopes => "slope-published" => |slopes; value| {
            let (eye, chain) = moving(Method::view, value)?;
            let exact = eye.power(Refraction::from_d(0.0)?, vertex(value)?)?.power;
            Ok(vec![slopes(&eye, &chain, LensPower::from_d(exact)?, vertex(value)?)?.position])
        };
        budget, Budget::show, Slopes::gradient => "budget-*" => |budget, show, gradient; value| {
            let (eye, chain) = moving(Method::view, value)?;
            let slopes = slopes(&eye, &chain, lens(value)?, vertex(value)?)?;
            let budget = budget(&gradient(&slopes), &scatter(value)?);
            let symbols = match value.id.rsplit('-').next().unwrap_or_default() {
                "sd" => "SD",
                variance_or_half => variance_or_half,
            };
            symbol(&[symbols], |sink| show(&budget, sink))
        };
        chance => "chance-*" => |chance; value|
            Ok(vec![chance(or(value, "off_d", 0.0)?, value.number("half_width_d")?, value.number("sd_d")?)]);
        budget => "normal-*" => |budget; value| {
            let nothing = Gradient { al: 0.0, k: 0.0, acd: 0.0, position: 0.0, lens: 0.0 };
            let one = Scatter { al: 0.0, k: 0.0, acd: 0.0, position: 0.0, label: 0.0, refraction: 1.0 };
            let b = budget(&nothing, &one);
            Ok(vec![if value.id.ends_with("50") { b.half_50 } else { b.half_95 }])
        };
        label::tolerance => "label-tolerance-*" => |tolerance; value| Ok(vec![tolerance(lens(value)?)]);
        second_eye::expected => "second-eye-*" => |expected; value| {
            let (error, half) = expected(rx(value, "fellow_refraction_d")?, rx(value, "fellow_predicted_d")?);
            Ok(vec![error, half])
        };
    }
}
