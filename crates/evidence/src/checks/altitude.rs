//! The air at a height, the boiling of water, and what the two leave for a vacuum.

use ocellus_core::constant::{self, Constant};
use ocellus_core::pressure::ceiling::{self, Air, Working};
use ocellus_core::pressure::unit::{Unit, convert};
use ocellus_core::pressure::{air, vapour};
use ocellus_core::quantity::{Altitude, StationPressure, Temperature};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::{crossing, symbol};
use crate::values::Value;

fn altitude(value: &Value) -> Result<Altitude, Failed> {
    Ok(Altitude::from_m(value.number("altitude_m")?)?)
}

fn temperature(value: &Value) -> Result<Temperature, Failed> {
    Ok(Temperature::from_c(value.number("temperature_C")?)?)
}

/// Region 4 beyond the temperatures of a theatre: MPa from theta's A, B and C, as the release prints it.
#[expect(clippy::disallowed_methods, reason = "an outside road: the core's own powers and roots stay out of it")]
fn saturation_mpa((_, [a, b, c]): (f64, [f64; 3])) -> f64 {
    (2.0 * c / (-b + (b.powi(2) - 4.0 * a * c).sqrt())).powi(4)
}

pub(super) fn register(registry: &mut Registry) {
    atmosphere(registry);
    water(registry);
    vacuum(registry);
}

fn atmosphere(registry: &mut Registry) {
    checks! { registry;
        air::geopotential => "geopotential-*" => |geopotential; value| Ok(vec![geopotential(altitude(value)?)]);
        air::geopotential, air::pressure_at =>
            ["atmosphere-*", "!atmosphere-geopotential-*", "!atmosphere-exponent", "ambiance-*"] =>
            |geopotential, pressure_at; value| Ok(vec![pressure_at(geopotential(altitude(value)?))]);
        air::pressure_at => ["atmosphere-geopotential-*", "atm-#*"] => |pressure_at; value|
            Ok(vec![pressure_at(value.number("height_m")?)]);
        // The exponent m from two heights: p = p0 t^m with t linear in the height, so m = ln(p/p0)/ln(t).
        air::pressure_at => ["atmosphere-exponent", "atm-exponent"] => |pressure_at; _value| {
            let half_way = 288.15 / 0.0065 / 2.0;
            #[expect(clippy::disallowed_methods, reason = "an outside road back to the exponent")]
            let exponent = (pressure_at(half_way) / pressure_at(0.0)).ln() / 0.5_f64.ln();
            Ok(vec![exponent])
        };
    }
}

fn water(registry: &mut Registry) {
    checks! { registry;
        vapour::saturation => ["iapws-psat-*", "coolprop-psat-*", "iapws95-psat-*", "if97-psat-*"] => |saturation; value|
            Ok(vec![saturation(temperature(value)?)]);
        vapour::saturation => "psat-mmhg-*" => |saturation; value|
            Ok(vec![convert(saturation(temperature(value)?), Unit::Pa, Unit::MmHg)]);
        vapour::coefficients => "psat-###" => |coefficients; value|
            Ok(vec![saturation_mpa(coefficients(value.number("temperature_K")?))]);
        vapour::coefficients => ["if97-theta-*", "if97-a-*", "if97-b-*", "if97-c-*"] => |coefficients; value| {
            let (theta, [a, b, c]) = coefficients(value.number("temperature_C")? + 273.15);
            Ok(vec![match value.id.split('-').nth(1) {
                Some("theta") => theta,
                Some("a") => a,
                Some("b") => b,
                _ => c,
            }])
        };
        Constant::get => "if97-n#*" => |get; value| {
            let name = format!("n{}", value.text("n")?);
            let constant = constant::all().find(|constant| constant.name == name).ok_or(format!("no constant {name}"))?;
            Ok(vec![get(constant)])
        };
    }
}

fn vacuum(registry: &mut Registry) {
    checks! { registry;
        ceiling::working, Working::show => ["ceiling-#*", "vacuum-ceiling-0", "vacuum-ceiling-####"] =>
            |working, show; value| {
                let w = working(Air::Altitude(altitude(value)?), temperature(value)?);
                symbol(&["V_max"], |sink| show(&w, sink))
            };
        // The same from a measured pressure.
        ceiling::working => "ceiling-#*" => |working; value| {
            let air = working(Air::Altitude(altitude(value)?), temperature(value)?).air;
            Ok(vec![working(Air::Station(StationPressure::from_hpa(air / 100.0)?), temperature(value)?).ceiling])
        };
        ceiling::working => "vacuum-ceiling-500" => |working; value| {
            let (vacuum, temperature) = (value.number("vacuum_mmhg")?, temperature(value)?);
            crossing(0.0, 9000.0, |m| Ok(working(Air::Altitude(Altitude::from_m(m)?), temperature).ceiling - vacuum))
        };
    }
}
