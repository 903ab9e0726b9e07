//! Round tubes: what is lost along them, and what they let through.

use crate::constant::fluids::MMHG;
use crate::constant::fluids::{ENTRANCE, KINETIC};
use crate::fluids::unit::{Unit, convert};
use crate::math::{CIRCLE, sqrt, square};
use crate::quantity::{Bore, Density, Drive, TubeFlow, TubeLength, Tubes, Viscosity};

/// A tube, or some equal tubes side by side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Inner bore.
    pub bore: Bore,
    /// Length.
    pub length: TubeLength,
    /// How many lie side by side and share the flow.
    pub side_by_side: Tubes,
}

/// What flows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fluid {
    /// Viscosity, at the shear of this tube.
    pub viscosity: Viscosity,
    /// Density.
    pub density: Density,
}

working! {
    /// Flow through one of the tubes, step by step.
    Working "A tube";
    bore "D" "mm" = "entered, or nominal of the gauge" [], "inner bore", Entered Entered;
    length "L" "mm" = "entered" [], "length", Entered Entered;
    viscosity "mu" "mPa s" = "entered, or of water" [], "viscosity", Entered Entered;
    flow "Q" "mL/min" = "flow through all/number of tubes" [], "flow through one tube", Identity Two;
    velocity "v" "m/s" = "v = 4 Q/(pi D^2)" [], "mean velocity", Identity Two;
    reynolds "Re" "1" = "Re = rho v D/mu" [], "Reynolds number", Identity Two;
    entrance "L_e" "mm" = "L_e = 0.056 Re D" [ENTRANCE], "length until the flow is developed", NoSource Memory;
    shear "gamma" "1/s" = "gamma = 32 Q/(pi D^3)" [], "shear at the wall", Poiseuille Two;
    laminar "dP_l" "mmHg" = "dP_l = 128 mu L Q/(pi D^4)/133.322387415" [MMHG], "lost along the tube", Poiseuille Two;
    kinetic "dP_k" "mmHg" = "dP_k = 2.3 rho v^2/2/133.322387415" [KINETIC, MMHG], "lost in its entrance and jet", Here Chosen;
    drop "dP" "mmHg" = "dP = dP_l + dP_k" [], "lost in all", Identity Two;
}

/// What one flow loses in a tube.
///
/// ```text
/// dP = 128 mu L Q/(pi D^4) + K rho v^2/2          v = 4 Q/(pi D^2)          K = 2.3
/// ```
///
/// Laminar, see [`Working::reynolds`]; `K` is 2 of the parabolic profile and 0.2 to 0.4 of the entrance (derived).
///
/// ```
/// use ocellus_core::{fluids::tube::*, quantity::*};
/// let needle = Tube { bore: Bore::from_mm(0.21)?, length: TubeLength::from_mm(13.0)?, side_by_side: Tubes::new(1.0)? };
/// let water = Fluid { viscosity: Viscosity::from_mpa_s(1.0016)?, density: Density::from_kg_m3(1000.0)? };
/// let w = working(needle, water, TubeFlow::from_ml_min(10.0)?);
/// assert!((w.laminar - 341.0).abs() < 0.5 && (w.drop - 540.0).abs() < 1.0);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(tube: Tube, fluid: Fluid, flow: TubeFlow) -> Working {
    working_at(tube, fluid, flow.ml_min())
}

/// The same at a calculated flow, which may lie outside the range of entries.
///
/// ```
/// use ocellus_core::{fluids::tube::*, quantity::*};
/// let tube = Tube { bore: Bore::from_mm(0.21)?, length: TubeLength::from_mm(13.0)?, side_by_side: Tubes::new(1.0)? };
/// let water = Fluid { viscosity: Viscosity::from_mpa_s(1.0016)?, density: Density::from_kg_m3(1000.0)? };
/// assert_eq!(working_at(tube, water, 10.0), working(tube, water, TubeFlow::from_ml_min(10.0)?));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working_at(tube: Tube, fluid: Fluid, ml_min: f64) -> Working {
    let (bore, length, viscosity) = (tube.bore.mm(), tube.length.mm(), fluid.viscosity.mpa_s());
    let flow = ml_min / tube.side_by_side.get();
    let (d, q) = (bore / 1000.0, flow / ML_MIN);
    let velocity = 4.0 * q / (CIRCLE * square(d));
    let reynolds = fluid.density.kg_m3() * velocity * d / (viscosity / 1000.0);
    let (a, b) = losses(tube, fluid);
    let (laminar, kinetic) = (a * ml_min, b * square(ml_min));
    Working {
        bore,
        length,
        viscosity,
        flow,
        velocity,
        reynolds,
        entrance: ENTRANCE.get() * reynolds * bore,
        shear: 8.0 * velocity / d,
        laminar,
        kinetic,
        drop: laminar + kinetic,
    }
}

/// mL/min in a cubic metre a second.
const ML_MIN: f64 = 6e7;

/// What a flow Q loses, mmHg, as `a Q + b Q^2`, in mL/min.
fn losses(tube: Tube, fluid: Fluid) -> (f64, f64) {
    let (d, l, n) = (tube.bore.mm() / 1000.0, tube.length.mm() / 1000.0, tube.side_by_side.get());
    let area = CIRCLE * square(d);
    let laminar = 128.0 * (fluid.viscosity.mpa_s() / 1000.0) * l / (area * square(d));
    let kinetic = KINETIC.get() * fluid.density.kg_m3() / 2.0 * square(4.0 / area);
    let in_mmhg = |pascals| convert(pascals, Unit::Pa, Unit::MmHg);
    (in_mmhg(laminar) / (n * ML_MIN), in_mmhg(kinetic) / square(n * ML_MIN))
}

/// The flow through tubes in series that a pressure drives, mL/min.
///
/// ```text
/// a Q + b Q^2 = dP          Q = 2 dP/(a + sqrt(a^2 + 4 b dP))          a, b: sums over the tubes
/// ```
///
/// ```
/// use ocellus_core::{fluids::tube::*, quantity::*};
/// let needle = Tube { bore: Bore::from_mm(0.21)?, length: TubeLength::from_mm(13.0)?, side_by_side: Tubes::new(1.0)? };
/// let water = Fluid { viscosity: Viscosity::from_mpa_s(1.0016)?, density: Density::from_kg_m3(1000.0)? };
/// assert!((driven(&[needle], water, Drive::from_mmhg(540.0)?) - 10.0).abs() < 0.01);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn driven(tubes: &[Tube], fluid: Fluid, drive: Drive) -> f64 {
    let (a, b) =
        tubes.iter().map(|tube| losses(*tube, fluid)).fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    2.0 * drive.mmhg() / (a + sqrt(square(a) + 4.0 * b * drive.mmhg()))
}

/// Resistances one after another, in any one unit.
///
/// ```
/// assert_eq!(ocellus_core::fluids::tube::in_series(&[0.1, 0.2, 0.25]), 0.55);
/// ```
pub fn in_series(resistances: &[f64]) -> f64 {
    resistances.iter().sum()
}

/// Resistances side by side, none of them zero, in any one unit.
///
/// ```text
/// 1/R = 1/R1 + 1/R2 + ...
/// ```
///
/// ```
/// assert_eq!(ocellus_core::fluids::tube::side_by_side(&[0.5, 0.5]), 0.25);
/// ```
pub fn side_by_side(resistances: &[f64]) -> f64 {
    1.0 / resistances.iter().map(|resistance| 1.0 / resistance).sum::<f64>()
}
