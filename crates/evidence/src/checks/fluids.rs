//! Water, other columns, what a setting reaches; tubes, needles, openings.

use ocellus_card::case::Case;
use ocellus_card::parts::pressure::fluid_density;
use ocellus_core::fluids::tube::{self, Fluid, Tube};
use ocellus_core::fluids::{air, ceiling, column, density, hold, needle, opening, plunger, vapour, viscosity};
use ocellus_core::quantity::*;

use crate::check::{Answer, Failed, Registry};
use crate::checks;
use crate::checks::given::temperature;
use crate::checks::{card, symbol};
use crate::values::Value;

pub(super) fn register(registry: &mut Registry) {
    water(registry);
    levels(registry);
    tubes(registry);
    rest(registry);
}

fn density_of(value: &Value) -> Result<Density, Failed> {
    Ok(Density::from_kg_m3(value.number("density_kg_m3")?)?)
}

fn level(value: &Value, key: &str) -> Result<Level, Failed> {
    Ok(Level::from_cm(value.number(key)?)?)
}

fn pressure(value: &Value, key: &str) -> Result<GasPressure, Failed> {
    Ok(GasPressure::from_mmhg(value.number(key)?)?)
}

fn water(registry: &mut Registry) {
    checks! { registry;
        air::height, air::Height::show => ["altitude-of-*", "ambiance-altitude-of-*"] => |height, show; value| {
            let w = height(StationPressure::from_hpa(value.number("pressure_Pa")? / 100.0)?);
            symbol(&["Z"], |sink| show(&w, sink))
        };
        vapour::magnus => "magnus-*" => |magnus; value| Ok(vec![magnus(temperature(value)?)]);
        density::working, density::Working::show => ["tanaka-*", "coolprop-density-*", "rho-##"] => |working, show; value| {
            let w = working(temperature(value)?);
            symbol(&["rho"], |sink| show(&w, sink))
        };
        viscosity::working, viscosity::Working::show =>
            ["viscosity-*", "iapws-viscosity-*", "coolprop-viscosity-*", "mu-##"] => |working, show; value| {
                let w = working(temperature(value)?);
                symbol(&["mu"], |sink| show(&w, sink))
            };
        fluid_density => "card-fluids-density-used-kg-m3-#" => |fluid_density; value| {
            let draft = card::entered(value)?;
            let density = Case::try_from(&draft)?.known(|known| fluid_density(known.entered));
            Ok(vec![density.ok_or("no fluid")?.kg_m3()])
        };
    }
}

fn levels(registry: &mut Registry) {
    checks! { registry;
        column::set, column::Set::show => "set-head-*" => |set, show; value| {
            let (assumed, eye) = (level(value, "assumed_cm")?, level(value, "eye_cm")?);
            let w = set(pressure(value, "set_mmhg")?, assumed, eye, density_of(value)?);
            symbol(&["P"], |sink| show(&w, sink))
        };
        // The column that makes the same pressure makes it.
        column::of_column, column::set => "set-head-*" => |of_column, set; value| {
            let (assumed, eye) = (level(value, "assumed_cm")?, level(value, "eye_cm")?);
            let w = set(pressure(value, "set_mmhg")?, assumed, eye, density_of(value)?);
            Ok(vec![of_column(w.column, density_of(value)?)])
        };
        column::level_for => "level-for-*" => |level_for; value| Ok(vec![level_for(
            pressure(value, "wanted_mmhg")?,
            pressure(value, "gas_mmhg")?,
            level(value, "eye_cm")?,
            density_of(value)?,
        )]);
        column::setting_for => "setting-for-*" => |setting_for; value| Ok(vec![setting_for(
            pressure(value, "wanted_mmhg")?,
            level(value, "assumed_cm")?,
            level(value, "eye_cm")?,
            density_of(value)?,
        )]);
        ceiling::reached, column::of_column => "tip-*" => |reached, of_column; value| {
            let siphon = of_column(value.number("eye_cm")? - value.number("pump_cm")?, density_of(value)?);
            let vacuum = Vacuum::from_mmhg(value.number("vacuum_mmhg")?)?;
            Ok(vec![reached(vacuum, value.number("ceiling_mmhg")?, siphon).1])
        };
    }
}

fn tube_of(value: &Value, bore: &str, length: &str, side_by_side: f64) -> Result<Tube, Failed> {
    Ok(Tube {
        bore: Bore::from_mm(value.number(bore)?)?,
        length: TubeLength::from_mm(value.number(length)?)?,
        side_by_side: Tubes::new(side_by_side)?,
    })
}

fn first(value: &Value) -> Result<Tube, Failed> {
    tube_of(value, "bore_mm", "length_mm", value.number("side_by_side")?)
}

fn second(value: &Value) -> Result<Tube, Failed> {
    tube_of(value, "bore_2_mm", "length_2_mm", 1.0)
}

fn fluid(value: &Value) -> Result<Fluid, Failed> {
    Ok(Fluid { viscosity: Viscosity::from_mpa_s(value.number("viscosity_mpa_s")?)?, density: density_of(value)? })
}

fn flow(value: &Value) -> Result<TubeFlow, Failed> {
    Ok(TubeFlow::from_ml_min(value.number("flow_ml_min")?)?)
}

fn drive(value: &Value) -> Result<Drive, Failed> {
    Ok(Drive::from_mmhg(value.number("drive_mmhg")?)?)
}

/// Under which symbol a step of a tube is shown.
fn step(value: &Value) -> Result<&'static str, Failed> {
    let steps = [
        ("velocity", "v"),
        ("reynolds", "Re"),
        ("shear", "gamma"),
        ("laminar", "dP_l"),
        ("kinetic", "dP_k"),
        ("drop", "dP"),
        ("entrance", "L_e"),
    ];
    let name = value.id.split('-').nth(1).unwrap_or("");
    Ok(steps.iter().find(|(step, _)| *step == name).ok_or(format!("no step `{name}`"))?.1)
}

fn three(value: &Value) -> Result<[f64; 3], Failed> {
    Ok([value.number("r1")?, value.number("r2")?, value.number("r3")?])
}

fn tubes(registry: &mut Registry) {
    checks! { registry;
        tube::working, tube::Working::show => ["tube-*", "!tube-flow-*"] => |working, show; value| {
            let w = working(first(value)?, fluid(value)?, flow(value)?);
            symbol(&[step(value)?], |sink| show(&w, sink))
        };
        tube::working_at => ["tube-*", "!tube-flow-*"] => |working_at; value| {
            let w = working_at(first(value)?, fluid(value)?, value.number("flow_ml_min")?);
            symbol(&[step(value)?], |sink| w.show(sink))
        };
        tube::driven => "tube-flow-*" => |driven; value|
            Ok(vec![driven(&[first(value)?], fluid(value)?, drive(value)?)]);
        tube::driven => "tubes-flow-*" => |driven; value|
            Ok(vec![driven(&[first(value)?, second(value)?], fluid(value)?, drive(value)?)]);
        tube::working => "tubes-drop-*" => |working; value| {
            let lost = |tube| Ok::<_, Failed>(working(tube, fluid(value)?, flow(value)?).drop);
            Ok(vec![lost(first(value)?)? + lost(second(value)?)?])
        };
        tube::in_series => "series-*" => |in_series; value| Ok(vec![in_series(&three(value)?)]);
        tube::side_by_side => "parallel-*" => |side_by_side; value| Ok(vec![side_by_side(&three(value)?)]);
    }
}

/// A number of the needle of a gauge.
fn needle_of(of: fn(Gauge) -> Option<&'static needle::Needle>, value: &Value) -> Answer {
    let needle = of(Gauge::new(value.number("gauge")?)?).ok_or("no such needle")?;
    Ok(vec![match value.id.split('-').nth(1) {
        Some("outer") => needle.outer,
        Some("bore") => needle.bore,
        Some("least") => needle.least,
        _ => needle.least_thin,
    }])
}

fn rest(registry: &mut Registry) {
    checks! { registry;
        opening::working, opening::Working::show => "orifice-*" => |working, show; value| {
            let discharge = Discharge::new(value.number("discharge")?)?;
            let opening = Opening::from_mm(value.number("diameter_mm")?)?;
            let w = working(opening, discharge, drive(value)?, density_of(value)?);
            symbol(&["Q"], |sink| show(&w, sink))
        };
        opening::working_at => "orifice-*" => |working_at; value| {
            let discharge = Discharge::new(value.number("discharge")?)?;
            let opening = Opening::from_mm(value.number("diameter_mm")?)?;
            Ok(vec![working_at(opening, discharge, value.number("drive_mmhg")?, density_of(value)?).flow])
        };
        plunger::working, plunger::Working::show => "plunger-*" => |working, show; value| {
            let syringe = SyringeBore::from_mm(value.number("syringe_bore_mm")?)?;
            let w = working(value.number("drop_mmhg")?, syringe, Friction::from_n(value.number("friction_n")?)?);
            symbol(&["F"], |sink| show(&w, sink))
        };
        hold::force => "hold-*" => |force; value| Ok(vec![force(
            value.number("vacuum_mmhg")?,
            value.number("eye_mmhg")?,
            TipBore::from_mm(value.number("bore_mm")?)?,
        )]);
        needle::of => "gauge-##" => |of; value| {
            let needle = of(Gauge::new(value.number("gauge")?)?).ok_or("no such needle")?;
            Ok(vec![needle.outer, needle.bore])
        };
        // so little flow that nothing is lost but along the tube
        tube::working => "bore-1" => |working; value| {
            let lost = |key: &str| {
                let tube = Tube {
                    bore: Bore::from_mm(value.number(key)?)?,
                    length: TubeLength::from_mm(2000.0)?,
                    side_by_side: Tubes::new(1.0)?,
                };
                let water = Fluid { viscosity: Viscosity::from_mpa_s(1.0)?, density: Density::from_kg_m3(1000.0)? };
                Ok::<_, Failed>(working(tube, water, TubeFlow::from_ml_min(1.0)?).laminar)
            };
            Ok(vec![lost("other_mm")? / lost("bore_mm")?])
        };
        needle::of => ["needle-outer-##", "needle-bore-##", "needle-least-##", "needle-thin-##"] => |of; value|
            needle_of(of, value);
    }
}
