//! A chamber over time, while somebody moves the bottle and closes the tip. **An illustration for teaching.**

use crate::fluids::chamber::Supply;
use crate::fluids::column::of_column;
use crate::fluids::surge::{Setup, State, Stepper};
use crate::quantity::Density;

/// What can be done while it runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// The bottle 5 cm higher.
    BottleUp,
    /// The bottle 5 cm lower.
    BottleDown,
    /// The most vacuum 25 mmHg more.
    VacuumUp,
    /// The most vacuum 25 mmHg less; what there is above it is vented.
    VacuumDown,
    /// The tip is closed.
    Occlude,
    /// The tip is open again.
    Release,
}

/// What is seen in one stretch of time, mmHg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// The least pressure in the chamber.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// The pressure in the chamber at the end of it.
    pub chamber: f64,
    /// The pressure in the line; a vacuum is negative.
    pub line: f64,
}

/// How long a stretch is, ms.
pub const STRETCH: f64 = 10.0;

/// A run that shows what an occlusion does: so many stretches, and then a change.
pub const SHOWN: [(u8, Option<Change>); 3] = [(8, Some(Change::Occlude)), (24, Some(Change::Release)), (24, None)];

/// A set-up invented for teaching, used where none is entered.
pub const INVENTED: Setup = Setup {
    supply: Supply { head: 66.0, infusion: 0.2, leak: 2.0 },
    aspiration: 5.0,
    vacuum: 400.0,
    pumped: Some(30.0),
    eye: 0.8,
    line: 0.09,
};

/// Steps of a stretch, at the most: a small machine draws several stretches a second.
const MOST_STEPS: f64 = 80.0;

/// The bounds within which bottle and vacuum are moved, mmHg.
const MOST_HEAD: f64 = 150.0;
const MOST_VACUUM: f64 = 700.0;

/// A chamber that runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Live {
    setup: Setup,
    state: State,
    /// What 5 cm of bottle make, mmHg.
    bottle: f64,
    occluded: bool,
}

impl Live {
    /// At rest under flow. `None` where the set-up leaves no pressure, or needs steps too short to be shown as it goes.
    ///
    /// ```
    /// use ocellus_core::{fluids::live::{INVENTED, Live}, quantity::Density};
    /// assert!(Live::new(INVENTED, Density::from_kg_m3(1000.0)?).is_some());
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn new(setup: Setup, density: Density) -> Option<Live> {
        // a pump that would need more vacuum than is set holds what is set
        let free = setup.end()?;
        let state = if free.line < -setup.vacuum { held(setup).end()? } else { free };
        let live = Live { setup, state, bottle: of_column(5.0, density), occluded: false };
        Some(live).filter(|live| live.state.chamber > 0.0 && STRETCH / setup.step().unwrap_or(0.0) <= MOST_STEPS)
    }

    /// The set-up as it is now.
    pub fn setup(&self) -> &Setup {
        &self.setup
    }

    /// Whether the tip is closed.
    pub fn is_occluded(&self) -> bool {
        self.occluded
    }

    /// Changes something.
    ///
    /// ```
    /// use ocellus_core::{fluids::live::*, quantity::Density};
    /// let mut live = Live::new(INVENTED, Density::from_kg_m3(1000.0)?).unwrap();
    /// live.change(Change::BottleUp);
    /// assert!((live.setup().supply.head - 69.68).abs() < 0.005);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn change(&mut self, change: Change) {
        match change {
            Change::BottleUp => self.lift(self.bottle),
            Change::BottleDown => self.lift(-self.bottle),
            Change::VacuumUp => self.limit(25.0),
            Change::VacuumDown => self.limit(-25.0),
            Change::Occlude => self.occluded = true,
            Change::Release => self.occluded = false,
        }
    }

    /// The leak goes with the pressure, so that its conductance stays.
    fn lift(&mut self, mmhg: f64) {
        let supply = &mut self.setup.supply;
        let head = moved(supply.head, mmhg, self.bottle, MOST_HEAD);
        supply.leak *= head / supply.head;
        supply.head = head;
    }

    fn limit(&mut self, mmhg: f64) {
        self.setup.vacuum = moved(self.setup.vacuum, mmhg, 25.0, MOST_VACUUM);
        match self.setup.pumped {
            Some(_) => self.state.line = self.state.line.max(-self.setup.vacuum),
            None => self.state.line = -self.setup.vacuum,
        }
    }

    /// Goes on for a stretch of [`STRETCH`] ms; `None` once the chamber is empty: the model ends. The pump draws
    /// no more than keeps the vacuum that is set.
    ///
    /// ```
    /// use ocellus_core::{fluids::live::*, quantity::Density};
    /// let mut live = Live::new(INVENTED, Density::from_kg_m3(1000.0)?).unwrap();
    /// let at_rest = live.advance().unwrap();
    /// assert!((at_rest.most - at_rest.least).abs() < 1e-9);
    /// live.change(Change::Occlude);
    /// (0..30).for_each(|_| _ = live.advance());
    /// assert!((live.advance().unwrap().line + 400.0).abs() < 25.0);
    /// live.change(Change::Release);
    /// assert!(live.advance().unwrap().least < at_rest.least);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    #[inline(never)]
    pub fn advance(&mut self) -> Option<Seen> {
        if self.state.chamber <= 0.0 {
            return None;
        }
        let step = self.setup.step()?;
        let new = if self.occluded { Stepper::occluded } else { Stepper::new };
        let (draws, holds, mut past) = (new(&self.setup, step)?, new(&held(self.setup), step)?, 0.0);
        let mut seen = Seen { least: self.state.chamber, most: self.state.chamber, chamber: 0.0, line: 0.0 };
        while past < STRETCH && self.state.chamber > 0.0 {
            let mut next = draws.step(self.state).state;
            // the pump draws no more than keeps the vacuum that is set
            if next.line < -self.setup.vacuum {
                next = holds.step(State { line: -self.setup.vacuum, ..self.state }).state;
            }
            self.state = State { chamber: next.chamber.max(0.0), ..next };
            seen.least = seen.least.min(self.state.chamber);
            seen.most = seen.most.max(self.state.chamber);
            past += step;
        }
        Some(Seen { chamber: self.state.chamber, line: self.state.line, ..seen })
    }
}

/// The same set-up with a pump that holds its vacuum.
fn held(setup: Setup) -> Setup {
    Setup { pumped: None, ..setup }
}

/// A value moved within its bounds; one that was beyond them is not brought back.
fn moved(value: f64, by: f64, least: f64, most: f64) -> f64 {
    (value + by).max(least.min(value)).min(most.max(value))
}
