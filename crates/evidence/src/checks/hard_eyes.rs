//! Long eyes, eyes after laser, and lenses by refraction.

use ocellus_core::lens::long_eye;
use ocellus_core::lens::second::{self, Place};
use ocellus_core::lens::{constants, convert, double_k, haigis_l, shammas_pl, srkt};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{AxialLength, HaigisA0, KeratometricIndex, LensPower, Pacd, SurgeonFactor};

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::{a_constant, al, chamber_depth, cornea, k, laser, or, rx, set, target, vertex};
use crate::checks::lens::{power, refraction, thin};
use crate::checks::view::method;
use crate::checks::{Shown, symbol};
use crate::values::Value;

fn place(value: &Value) -> Result<Place, Failed> {
    Ok(Place {
        k: value.number("k_d")?,
        elp: value.number("position_mm")?,
        in_place: or(value, "lens_in_eye_d", 0.0)?,
        behind: or(value, "behind_mm", 0.0)?,
    })
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
    }
}

fn after_laser(registry: &mut Registry) {
    checks! { registry;
        shammas_pl::working, shammas_pl::Working::show, shammas_pl::Working::thin_eye => "shammas-*" =>
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
        double_k::from_history => "history-*" => |from_history; value| {
            let (before, after) = (rx(value, "refraction_before_d")?, rx(value, "refraction_after_d")?);
            Ok(vec![from_history(k(value, "k_before_d")?, before, after, vertex(value)?)?.d()])
        };
    }
}

fn thin_of_double(value: &Value, eye: ThinEye, show: impl FnOnce(&mut Shown)) -> Answer {
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
