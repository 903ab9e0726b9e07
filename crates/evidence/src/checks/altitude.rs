//! The air at a height, the boiling of water, and what the two leave for a vacuum.

use ocellus_core::constant::{self, Constant};
use ocellus_core::fluids::ceiling::{self, Air, Working};
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::fluids::{air, vapour};
use ocellus_core::quantity::{Altitude, StationPressure};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::given::temperature;
use crate::checks::{crossing, symbol};
use crate::values::Value;

fn altitude(value: &Value) -> Result<Altitude, Failed> {
    Ok(Altitude::from_m(value.number("altitude_m")?)?)
}

pub(super) fn register(registry: &mut Registry) {
    atmosphere(registry);
    water(registry);
    vacuum(registry);
}

fn atmosphere(registry: &mut Registry) {
    checks! { registry;
        air::working, air::Working::show => "geopotential-*" => |working, show; value| {
            let w = working(altitude(value)?);
            symbol(&["H"], |sink| show(&w, sink))
        };
        air::working => ["atmosphere-*", "!atmosphere-geopotential-*", "!atmosphere-exponent", "ambiance-*", "!ambiance-altitude-of-*"] =>
            |working; value| Ok(vec![working(altitude(value)?).pressure]);
        air::pressure_at => ["atmosphere-geopotential-*", "atm-#*"] => |pressure_at; value|
            Ok(vec![pressure_at(value.number("height_m")?)]);
        air::working => ["atmosphere-exponent", "atm-exponent"] => |working; _value|
            Ok(vec![working(Altitude::from_m(0.0)?).exponent]);
    }
}

fn water(registry: &mut Registry) {
    checks! { registry;
        vapour::working => ["iapws-psat-*", "coolprop-psat-*", "iapws95-psat-*", "if97-psat-*"] => |working; value|
            Ok(vec![working(temperature(value)?).pressure]);
        vapour::working => "psat-mmhg-*" => |working; value|
            Ok(vec![convert(working(temperature(value)?).pressure, Unit::Pa, Unit::MmHg)]);
        vapour::at_kelvin => "psat-###" => |at_kelvin; value| {
            Ok(vec![at_kelvin(value.number("temperature_K")?).pressure / 1e6])
        };
        vapour::working, vapour::Working::show => ["if97-theta-*", "if97-a-*", "if97-b-*", "if97-c-*"] =>
            |working, show; value| {
                let w = working(temperature(value)?);
                let wanted = match value.id.split('-').nth(1) {
                    Some("theta") => "theta",
                    Some("a") => "A",
                    Some("b") => "B",
                    _ => "C",
                };
                symbol(&[wanted], |sink| show(&w, sink))
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
        ceiling::show_all => ["ceiling-#*", "vacuum-ceiling-0", "vacuum-ceiling-####"] => |show_all; value| {
            let (air, temperature) = (Air::Altitude(altitude(value)?), temperature(value)?);
            symbol(&["V_max"], |sink| show_all(air, temperature, sink))
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
