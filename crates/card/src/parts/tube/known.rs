//! What is known of tubes: bores, fluid, flow.

use super::choices::ViscosityFrom;
use super::table::entries::*;
use crate::entered::Entered;
use crate::parts::pressure::{fluid_density, still, temperature};
use ocellus_core::fluids::tube::{Fluid, Tube, driven};
use ocellus_core::fluids::{needle, opening, viscosity};
use ocellus_core::quantity::{Bore, Drive, TubeFlow, Tubes, Viscosity};

/// The bore entered, or the nominal one of the gauge.
pub(super) fn known_bore(entered: &Entered) -> Option<Bore> {
    entered.get(BORE).or_else(|| Bore::from_mm(needle::of(entered.get(GAUGE)?)?.bore).ok())
}

/// One tube, or two in series.
#[derive(Clone, Copy)]
pub(super) struct Line {
    pub(super) first: Tube,
    pub(super) second: Option<Tube>,
}

impl Line {
    pub(super) fn of(entered: &Entered) -> Option<Line> {
        let one = Tubes::new(1.0).ok()?;
        let first = Tube {
            bore: known_bore(entered)?,
            length: entered.get(TUBE_LENGTH)?,
            side_by_side: entered.get(SIDE_BY_SIDE)?,
        };
        let second = entered.get(BORE_2).zip(entered.get(TUBE_LENGTH_2));
        Some(Line { first, second: second.map(|(bore, length)| Tube { bore, length, side_by_side: one }) })
    }

    pub(super) fn tubes(&self) -> impl Iterator<Item = Tube> {
        [Some(self.first), self.second].into_iter().flatten()
    }

    /// The flow through it: entered, or what the pressure drives, mL/min.
    #[inline(never)]
    pub(super) fn flow(&self, entered: &Entered, fluid: Fluid) -> Option<f64> {
        let pair = [self.first, self.second.unwrap_or(self.first)];
        let tubes = pair.get(..1 + usize::from(self.second.is_some()))?;
        let by_pressure = || Some(driven(tubes, fluid, entered.get(DRIVE)?));
        known_flow(entered).or_else(by_pressure)
    }
}

/// The flow that was entered, mL/min.
pub(super) fn known_flow(entered: &Entered) -> Option<f64> {
    entered.get(TUBE_FLOW).map(TubeFlow::ml_min)
}

/// The fluid: water at its temperature, or with a viscosity of its own.
#[inline(never)]
pub(super) fn known_fluid(entered: &Entered) -> Option<Fluid> {
    let viscosity = match entered.get(VISCOSITY_FROM)? {
        ViscosityFrom::Water => Viscosity::from_mpa_s(viscosity::working(temperature(entered)?).viscosity).ok(),
        ViscosityFrom::AtShear | ViscosityFrom::ZeroShear => entered.get(VISCOSITY),
    };
    Some(Fluid { viscosity: viscosity?, density: fluid_density(entered)? })
}

/// The opening, at the pressure entered or at that of the column.
pub(super) fn known_opening(entered: &Entered) -> Option<opening::Working> {
    let opening = entered.get(OPENING)?;
    let across = entered.get(DRIVE).map(Drive::mmhg).or_else(|| still(entered)).filter(|across| *across > 0.0)?;
    Some(opening::working_at(opening, entered.get(DISCHARGE)?, across, fluid_density(entered)?))
}
