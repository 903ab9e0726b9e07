//! The chamber under flow. **An illustration for teaching**, from numbers that the user enters: no living eye behaves so.

use crate::error::Error;

/// What is set on the pump.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pump {
    /// The flow, mL/min: vacuum follows.
    Flow(f64),
    /// The vacuum, mmHg: flow follows.
    Vacuum(f64),
}

/// What is around the chamber: pressures in mmHg, flows in mL/min.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// Pressure at the eye when nothing flows.
    pub head: f64,
    /// Resistance of the infusion line, mmHg min/mL.
    pub infusion: f64,
    /// Leak while nothing is aspirated, mL/min.
    pub leak: f64,
}

working! {
    /// The chamber under flow, step by step.
    Working "The chamber under flow: an illustration";
    head "P_head" "mmHg" = "pressure at the eye, nothing flowing" [], "illustration: the column", Here Chosen;
    infusion "R_in" "mmHg min/mL" = "entered, or from two readings" [], "illustration: resistance of the infusion line", Entered Entered;
    conductance "G" "mL/min/mmHg" = "G = Q_leak/(P_head - R_in Q_leak)" [], "illustration: leak for each mmHg", Here Chosen;
    still "P_0" "mmHg" = "P_0 = P_head/(1 + R_in G)" [], "illustration: chamber, nothing aspirated", Here Chosen;
    pressure "P" "mmHg" = "P = (P_head - R_in Q)/(1 + R_in G), or (P_head/R_in - V/R_asp)/(1/R_in + 1/R_asp + G)" [],
        "illustration: chamber under flow", Here Chosen;
    aspiration "Q" "mL/min" = "set, or (P + V)/R_asp" [], "illustration: aspiration flow", Here Chosen;
    leaking "Q_leak" "mL/min" = "Q_leak = G P" [], "illustration: leak under flow", Here Chosen;
}

/// The leak as a conductance, mL/min/mmHg: a leak that was seen while nothing was aspirated, taken as proportional to the
/// pressure.
///
/// ```text
/// G = Q_leak/(P_head - R_in Q_leak)
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] where such a leak leaves no pressure.
///
/// ```
/// use ocellus_core::fluids::chamber::{Supply, conductance};
/// assert_eq!(conductance(Supply { head: 52.0, infusion: 0.2, leak: 10.0 })?, 0.2);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn conductance(supply: Supply) -> Result<f64, Error> {
    let left = supply.head - supply.infusion * supply.leak;
    if left > 0.0 { Ok(supply.leak / left) } else { Err(Error::NoSolution) }
}

/// The steady chamber; `aspiration` is the resistance of tip and tubing, which a pump that is set by vacuum needs.
///
/// ```text
/// (P_head - P)/R_in = Q + G P          and, where the vacuum is set, Q = (P + V)/R_asp
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] where the leak leaves no pressure, or a vacuum has no resistance to draw through.
///
/// ```
/// use ocellus_core::fluids::chamber::*;
/// let supply = Supply { head: 66.0, infusion: 0.2, leak: 0.0 };
/// assert_eq!(working(supply, Pump::Flow(30.0), None)?.pressure, 60.0);
/// let w = working(supply, Pump::Vacuum(240.0), Some(7.45))?;
/// assert!((w.pressure - 58.0).abs() < 1e-9 && (w.aspiration - 40.0).abs() < 1e-9);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn working(supply: Supply, pump: Pump, aspiration: Option<f64>) -> Result<Working, Error> {
    let Supply { head, infusion, .. } = supply;
    let conductance = conductance(supply)?;
    let (pressure, flow) = match (pump, aspiration) {
        (Pump::Flow(flow), _) => ((head - infusion * flow) / (1.0 + infusion * conductance), flow),
        (Pump::Vacuum(vacuum), Some(resistance)) => {
            let inward = head / infusion - vacuum / resistance;
            let pressure = inward / (1.0 / infusion + 1.0 / resistance + conductance);
            (pressure, (pressure + vacuum) / resistance)
        }
        (Pump::Vacuum(_), None) => return Err(Error::NoSolution),
    };
    Ok(Working {
        head,
        infusion,
        conductance,
        still: head / (1.0 + infusion * conductance),
        pressure,
        aspiration: flow,
        leaking: conductance * pressure,
    })
}
