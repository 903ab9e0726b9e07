//! Surge: two compartments, chamber and aspiration line, after an occlusion breaks. **An illustration for teaching**, from
//! numbers that the user enters: no living eye behaves so, and no machine is described.
//!
//! ```text
//! C_e dP/dt  = (P_head - P)/R_in - (P - Pt)/R_asp - G P
//! C_t dPt/dt = (P - Pt)/R_asp - Q_pump                      with a vacuum pump Pt stays at -V
//! ```
//!
//! Time in seconds, pressures in mmHg, volumes in uL. The integration is the implicit midpoint rule with a fixed step: stable
//! for any step, second order, and its flows add up to the volumes and its works to the energies but for rounding.

use crate::constant::fluids::{RECOVERED, STILL};
use crate::fluids::chamber::{self, Pump, Supply};
use crate::math::{sqrt, square};

/// uL/s in a mL/min.
const UL_S: f64 = 1000.0 / 60.0;

/// The steps after which a run ends in any case.
const MOST_STEPS: u16 = 2000;

/// A set-up: everything in it is entered by the user.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setup {
    /// Column, infusion line and leak.
    pub supply: Supply,
    /// Resistance of tip and tubing, mmHg min/mL.
    pub aspiration: f64,
    /// Vacuum in the line when the occlusion breaks, mmHg; of a vacuum pump the one it holds.
    pub vacuum: f64,
    /// What the pump draws after the break, mL/min; `None` for a pump that holds its vacuum.
    pub pumped: Option<f64>,
    /// Compliance of the eye, uL/mmHg.
    pub eye: f64,
    /// Compliance of the aspiration line, uL/mmHg.
    pub line: f64,
}

/// Pressures in the chamber and in the aspiration line, mmHg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// In the chamber.
    pub chamber: f64,
    /// In the line; a vacuum is negative.
    pub line: f64,
}

/// The same set-up in uL, mmHg and seconds: conductances, compliances, the pump.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Network {
    head: f64,
    infusion: f64,
    aspiration: f64,
    leak: f64,
    eye: f64,
    line: f64,
    /// None where the line is held.
    pumped: Option<f64>,
}

/// One fixed step of a set-up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stepper {
    network: Network,
    /// Seconds.
    step: f64,
    /// From what is known before a step to the middle of it: the inverse of the equations' matrix.
    inverse: [[f64; 2]; 2],
    /// Half a step over each compliance.
    half: (f64, f64),
}

impl Setup {
    /// The state in which the occlusion breaks: the chamber at rest, the line at its vacuum.
    ///
    /// ```
    /// # use ocellus_core::fluids::{chamber::Supply, surge::*};
    /// # let setup = Setup { supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 }, aspiration: 6.0, vacuum: 400.0,
    /// #     pumped: Some(30.0), eye: 1.0, line: 0.09 };
    /// assert_eq!(setup.start(), Some(State { chamber: 66.0, line: -400.0 }));
    /// ```
    pub fn start(&self) -> Option<State> {
        let still = chamber::working(self.supply, Pump::Flow(0.0), None).ok()?;
        Some(State { chamber: still.pressure, line: -self.vacuum })
    }

    /// Where it comes to rest.
    ///
    /// ```
    /// # use ocellus_core::fluids::{chamber::Supply, surge::*};
    /// # let setup = Setup { supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 }, aspiration: 6.0, vacuum: 400.0,
    /// #     pumped: Some(30.0), eye: 1.0, line: 0.09 };
    /// assert_eq!(setup.end(), Some(State { chamber: 60.0, line: -120.0 }));
    /// ```
    pub fn end(&self) -> Option<State> {
        let pump = self.pumped.map_or(Pump::Vacuum(self.vacuum), Pump::Flow);
        let steady = chamber::working(self.supply, pump, Some(self.aspiration)).ok()?;
        Some(State { chamber: steady.pressure, line: steady.pressure - self.aspiration * steady.aspiration })
    }

    fn network(&self) -> Option<Network> {
        Some(Network {
            head: self.supply.head,
            infusion: UL_S / self.supply.infusion,
            aspiration: UL_S / self.aspiration,
            leak: UL_S * chamber::conductance(self.supply).ok()?,
            eye: self.eye,
            line: self.line,
            pumped: self.pumped.map(|flow| flow * UL_S),
        })
    }

    /// The shortest of the time constants, ms: a step must be well below it to show what happens.
    ///
    /// ```text
    /// 1/tau = (a + d)/2 + sqrt(((a - d)/2)^2 + b c)
    /// a = (1/R_in + 1/R_asp + G)/C_e     b = 1/(R_asp C_e)     c = d = 1/(R_asp C_t), or 0 where the line is held
    /// ```
    ///
    /// ```
    /// # use ocellus_core::fluids::{chamber::Supply, surge::*};
    /// # let setup = Setup { supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 }, aspiration: 6.0, vacuum: 400.0,
    /// #     pumped: Some(30.0), eye: 1.0, line: 0.09 };
    /// assert!((setup.shortest().unwrap() - 11.41).abs() < 0.005);
    /// ```
    pub fn shortest(&self) -> Option<f64> {
        let n = self.network()?;
        let a = (n.infusion + n.aspiration + n.leak) / n.eye;
        let d = if n.pumped.is_some() { n.aspiration / n.line } else { 0.0 };
        let fastest = (a + d) / 2.0 + sqrt(square((a - d) / 2.0) + n.aspiration / n.eye * d);
        Some(1000.0 / fastest)
    }

    /// The step to take where none is entered: the longest of 1, 0.5, 0.25 ... ms that is an eighth of the shortest time
    /// constant or less.
    ///
    /// ```
    /// # use ocellus_core::fluids::{chamber::Supply, surge::*};
    /// # let setup = Setup { supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 }, aspiration: 6.0, vacuum: 400.0,
    /// #     pumped: Some(30.0), eye: 0.4, line: 0.09 };
    /// assert_eq!(setup.step(), Some(0.5));
    /// ```
    pub fn step(&self) -> Option<f64> {
        let longest = self.shortest()? / 8.0;
        let mut step = 1.0;
        while step > longest {
            step /= 2.0;
        }
        Some(step)
    }

    /// The longest step that is taken where one is given, ms: a quarter of the shortest time constant.
    ///
    /// ```
    /// # use ocellus_core::fluids::{chamber::Supply, surge::*};
    /// # let setup = Setup { supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 }, aspiration: 6.0, vacuum: 400.0,
    /// #     pumped: Some(30.0), eye: 1.0, line: 0.09 };
    /// assert_eq!(setup.longest_step(), Some(setup.shortest().unwrap() / 4.0));
    /// ```
    pub fn longest_step(&self) -> Option<f64> {
        Some(self.shortest()? / 4.0)
    }
}

/// A state, and the one in the middle of the step that led to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stepped {
    /// After the step.
    pub state: State,
    /// In the middle of it, where the flows are taken.
    pub middle: State,
}

impl Stepper {
    /// Steps of so many milliseconds.
    pub fn new(setup: &Setup, step_ms: f64) -> Option<Stepper> {
        Stepper::of(setup.network()?, step_ms / 1000.0)
    }

    /// The same with the tip closed.
    pub fn occluded(setup: &Setup, step_ms: f64) -> Option<Stepper> {
        Stepper::of(Network { aspiration: 0.0, ..setup.network()? }, step_ms / 1000.0)
    }

    fn of(network: Network, step: f64) -> Option<Stepper> {
        let Network { infusion, aspiration, leak, eye, line, pumped, .. } = network;
        let half = (step / (2.0 * eye), if pumped.is_some() { step / (2.0 * line) } else { 0.0 });
        let [[a, b], [c, d]] = [
            [1.0 + half.0 * (infusion + aspiration + leak), -half.0 * aspiration],
            [-half.1 * aspiration, 1.0 + half.1 * aspiration],
        ];
        // a d > b c for any compliances and resistances above zero
        let determinant = a * d - b * c;
        let inverse = [[d / determinant, -b / determinant], [-c / determinant, a / determinant]];
        Some(Stepper { network, step, inverse, half }).filter(|_| determinant.is_finite())
    }

    /// One step on.
    ///
    /// ```text
    /// y_m = y + h/2 f(y_m)          y' = 2 y_m - y
    /// ```
    ///
    /// ```
    /// # use ocellus_core::fluids::{chamber::Supply, surge::*};
    /// # let setup = Setup { supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 }, aspiration: 6.0, vacuum: 400.0,
    /// #     pumped: Some(30.0), eye: 1.0, line: 0.09 };
    /// let stepper = Stepper::new(&setup, 1.0).unwrap();
    /// let (rest, still) = (setup.end().unwrap(), stepper.step(setup.end().unwrap()).state);
    /// assert!((still.chamber - rest.chamber).abs() < 1e-9, "at rest it stays at rest");
    /// ```
    pub fn step(&self, state: State) -> Stepped {
        let Stepper { network: n, inverse: [[a, b], [c, d]], half, .. } = self;
        let pumped = n.pumped.unwrap_or(0.0);
        let known = (state.chamber + half.0 * n.infusion * n.head, state.line - half.1 * pumped);
        let middle = State { chamber: a * known.0 + b * known.1, line: c * known.0 + d * known.1 };
        let state = State { chamber: 2.0 * middle.chamber - state.chamber, line: 2.0 * middle.line - state.line };
        Stepped { state, middle }
    }
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// The chamber came to rest.
    Recovered,
    /// It was empty: the model ends.
    Collapsed,
    /// Not at rest after the most steps.
    Open,
}

working! {
    /// A run, step by step.
    Working "After the occlusion breaks: an illustration";
    start "P_start" "mmHg" = "P_head/(1 + R_in G)" [], "illustration: chamber when it breaks", Here Chosen;
    steady "P_steady" "mmHg" = "chamber under flow" [], "illustration: where it comes to rest", Here Chosen;
    shortest "tau" "ms" = "1/(largest eigenvalue of the network)" [], "illustration: shortest time constant", Here Chosen;
    step "h" "ms" = "entered, or 1, 0.5, 0.25 ... ms up to tau/8" [], "illustration: step", Here Chosen;
    steps "n" "1" = "until both pressures are within 1 mmHg of rest, and that of the chamber rises or is within 0.05" [RECOVERED, STILL], "illustration: steps taken", Here Chosen;
    trough "P_trough" "mmHg" = "least of all steps; P_steady where it only falls" [], "illustration: least pressure", Here Chosen;
    trough_time "t_trough" "ms" = "when it was least" [], "illustration: time of it", Here Chosen;
    recovered "t_recovered" "ms" = "within 1 mmHg of P_steady from here on" [RECOVERED], "illustration: time to recover", Here Chosen;
    volume "V_eye" "uL" = "C_e (P_start - P_trough)" [], "illustration: volume that the chamber lost", Here Chosen;
    room "V_line" "uL" = "C_t (V + P_start)" [], "illustration: what the line has room for", Here Chosen;
    inflow "V_in" "uL" = "sum of h (P_head - P_m)/R_in" [], "illustration: volume that came in", Here Chosen;
    aspirated "V_asp" "uL" = "sum of h (P_m - Pt_m)/R_asp" [], "illustration: volume aspirated", Here Chosen;
    leaked "V_leak" "uL" = "sum of h G P_m" [], "illustration: volume leaked", Here Chosen;
    volume_left "dV" "uL" = "C_e (P - P_start) - V_in + V_asp + V_leak" [], "illustration: volume balance, what is left over", Here Chosen;
    energy_left "dE" "uJ" = "energy stored + lost in resistances + given to the pump - given by the column" [],
        "illustration: energy balance, what is left over", Here Chosen;
}

/// Sums over the middles of steps, from which volumes and works follow.
#[derive(Default)]
struct Sums {
    chamber: f64,
    line: f64,
    chamber_squared: f64,
    line_squared: f64,
    product: f64,
}

impl Sums {
    fn add(&mut self, middle: State) {
        self.chamber += middle.chamber;
        self.line += middle.line;
        self.chamber_squared += square(middle.chamber);
        self.line_squared += square(middle.line);
        self.product += middle.chamber * middle.line;
    }
}

/// A whole run from the break on, with steps of so many milliseconds: until the chamber is at rest, or empty, or 2,000 steps
/// are done. `None` where the set-up leaves no pressure to begin with.
///
/// ```
/// # use ocellus_core::fluids::{chamber::Supply, surge::*};
/// let setup = Setup {
///     supply: Supply { head: 66.0, infusion: 0.2, leak: 0.0 },
///     aspiration: 6.0, vacuum: 400.0, pumped: Some(30.0), eye: 1.0, line: 0.09,
/// };
/// let (run, ended) = run(&setup, 1.0).unwrap();
/// assert_eq!(ended, Ended::Recovered);
/// assert!(run.trough > 0.0 && run.trough < run.steady && run.volume < run.room);
/// assert!(run.volume_left.abs() < 1e-9 && run.energy_left.abs() < 1e-9);
/// ```
#[inline(never)]
pub fn run(setup: &Setup, step_ms: f64) -> Option<(Working, Ended)> {
    let (start, rest) = (setup.start()?, setup.end()?);
    let stepper = Stepper::new(setup, step_ms)?;
    let near = |a: f64, b: f64, within: f64| (a - b).abs() <= within;
    let (mut state, mut sums, mut steps, mut ended) = (start, Sums::default(), 0u16, Ended::Open);
    let (mut trough, mut trough_step, mut away_step) = (start.chamber, 0u16, 0u16);
    while steps < MOST_STEPS {
        let Stepped { state: next, middle } = stepper.step(state);
        let before = state.chamber;
        steps += 1;
        state = next;
        sums.add(middle);
        let rises = state.chamber >= before;
        if state.chamber < trough {
            (trough, trough_step) = (state.chamber, steps);
        }
        if state.chamber <= 0.0 {
            ended = Ended::Collapsed;
            break;
        }
        if !near(state.chamber, rest.chamber, RECOVERED.get()) {
            away_step = steps;
        }
        // at rest below empty it never recovers; and as long as it falls, its least pressure is still to come
        let over = rises || near(state.chamber, rest.chamber, STILL.get());
        let at_rest =
            near(state.chamber, rest.chamber, RECOVERED.get()) && near(state.line, rest.line, RECOVERED.get());
        if rest.chamber > 0.0 && over && at_rest {
            ended = Ended::Recovered;
            break;
        }
    }
    // what only falls comes down to where it rests
    if ended == Ended::Recovered {
        trough = trough.min(rest.chamber);
    }
    let ms = |steps: u16| f64::from(steps) * step_ms;
    let n = stepper.network;
    let flows = volumes(&n, &sums, steps, stepper.step);
    Some((
        Working {
            start: start.chamber,
            steady: rest.chamber,
            shortest: setup.shortest()?,
            step: step_ms,
            steps: f64::from(steps),
            trough,
            trough_time: ms(trough_step),
            // the step after the last one away from it
            recovered: ms(away_step.saturating_add(1)),
            volume: n.eye * (start.chamber - trough),
            room: n.line * (setup.vacuum + start.chamber),
            inflow: flows.0,
            aspirated: flows.1,
            leaked: flows.2,
            volume_left: n.eye * (state.chamber - start.chamber) - flows.0 + flows.1 + flows.2,
            energy_left: energy(&n, &sums, (start, state), (steps, stepper.step)),
        },
        ended,
    ))
}

/// Volumes that came in, were aspirated and leaked, uL.
fn volumes(n: &Network, sums: &Sums, steps: u16, step: f64) -> (f64, f64, f64) {
    let inward = step * n.infusion * (f64::from(steps) * n.head - sums.chamber);
    (inward, step * n.aspiration * (sums.chamber - sums.line), step * n.leak * sums.chamber)
}

/// What the energy balance leaves over, uJ: stored, and lost in the resistances, and given to the pump, less given by the
/// column. Where the line is held, the pump takes the whole flow.
fn energy(n: &Network, sums: &Sums, (start, end): (State, State), (steps, step): (u16, f64)) -> f64 {
    let squares = |from: f64, to: f64| (square(to) - square(from)) / 2.0;
    let mut stored = n.eye * squares(start.chamber, end.chamber);
    let steps = f64::from(steps);
    let across = sums.chamber_squared - 2.0 * sums.product + sums.line_squared;
    let infusion = steps * square(n.head) - 2.0 * n.head * sums.chamber + sums.chamber_squared;
    let lost = n.infusion * infusion + n.aspiration * across + n.leak * sums.chamber_squared;
    let pumped = match n.pumped {
        Some(flow) => {
            stored += n.line * squares(start.line, end.line);
            flow * sums.line
        }
        None => n.aspiration * (sums.product - sums.line_squared),
    };
    let given = n.head * n.infusion * (steps * n.head - sums.chamber);
    // 1 mmHg uL is 0.133322387415 uJ
    (stored + step * (lost + pumped - given)) * crate::constant::fluids::MMHG.get() / 1000.0
}
