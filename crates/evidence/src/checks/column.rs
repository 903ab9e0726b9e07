//! Pressure of the column.

use ocellus_core::fluids::column::{self, Working};
use ocellus_core::quantity::{Density, GasPressure, Level};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::symbol;

fn open_column(
    working: fn(Level, Level, GasPressure, Density) -> Working,
    height: f64,
    density: f64,
) -> Result<Working, Failed> {
    // The eye is not at the datum, so that a forgotten subtraction shows.
    let (open, eye) = (Level::from_cm(85.0 + height)?, Level::from_cm(85.0)?);
    Ok(working(open, eye, GasPressure::from_mmhg(0.0)?, Density::from_kg_m3(density)?))
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        column::working, Working::show => ["head-1", "head-2", "head-3", "head-4", "head-6", "head-7", "head-8", "head-9"] =>
            |working, show; value| {
                let w = open_column(working, value.number("height_cm")?, 1000.0)?;
                symbol(&["P"], |sink| show(&w, sink))
            };
        column::working => "head-5" => |working; value|
            Ok(vec![10.0 * value.number("pressure_mmhg")? / open_column(working, 0.0, 1000.0)?.per_cm]);
        column::working => "pint-head-*" => |working; value|
            Ok(vec![open_column(working, value.number("height_cm")?, value.number("density_kg_m3")?)?.pressure]);
        // Water at 4 C has 999.972 kg/m3 (Tanaka et al., Metrologia 2001;38:301-309).
        column::working => "unit-3" => |working; value| Ok(vec![open_column(working, value.number("value")?, 999.972)?.column]);
        // The gas over the fluid adds to the column.
        column::working => "head-1" => |working; value| {
            let (open, eye) = (Level::from_cm(value.number("height_cm")?)?, Level::from_cm(0.0)?);
            let gas = 30.0;
            let w = working(open, eye, GasPressure::from_mmhg(gas)?, Density::from_kg_m3(1000.0)?);
            Ok(vec![w.pressure - gas])
        };
    }
}
