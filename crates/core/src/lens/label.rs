//! What a label may be off by, and which label a rule points out.

use crate::constant::certainty::*;
use crate::math::round;
use crate::quantity::{LabelStep, LensPower, Refraction};

crate::choices! {
    /// By which rule a label power is pointed out.
    LabelRule {
        /// The weakest label that leaves the eye myopic.
        FirstMyopic "first_myopic",
        /// The label that leaves the eye nearest to the target.
        Nearest "nearest",
    }
}

/// How far the power of a lens may be from its label, D.
///
/// ```text
/// 0.3 to 15 D, 0.4 to 25 D, 0.5 to 30 D, 1.0 above, by the size of the power
/// ```
///
/// Source: ISO 11979-2 (read in a tutorial; the edges memory).
///
/// ```
/// use ocellus_core::{lens::label::tolerance, quantity::LensPower};
/// assert_eq!(tolerance(LensPower::from_d(21.5)?), 0.4);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn tolerance(power: LensPower) -> f64 {
    let size = power.d().abs();
    let within = |edge: &'static crate::constant::Constant| size <= edge.get();
    if within(&LABEL_EDGE_WEAK) {
        LABEL_WEAK.get()
    } else if within(&LABEL_EDGE_USUAL) {
        LABEL_USUAL.get()
    } else if within(&LABEL_EDGE_STRONG) {
        LABEL_STRONG.get()
    } else {
        LABEL_STRONGEST.get()
    }
}

/// Rows of a ladder: the label nearest to the middle, and as many on either side.
pub const ROWS: usize = 9;

/// The labels that one model comes in: whole steps from its weakest power, or from 0 D where that is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Labels {
    /// Between two of them.
    pub step: LabelStep,
    /// The weakest.
    pub least: Option<LensPower>,
    /// The strongest.
    pub most: Option<LensPower>,
}

impl Labels {
    /// The labels nearest to a power, at most [`ROWS`] of them, weakest first, within what the model comes in.
    ///
    /// ```
    /// use ocellus_core::{lens::label::Labels, quantity::*};
    /// let labels = Labels { step: LabelStep::from_d(0.5)?, least: None, most: Some(LensPower::from_d(21.0)?) };
    /// assert_eq!(labels.around(20.3).map(LensPower::d).last(), Some(21.0));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn around(self, power: f64) -> impl Iterator<Item = LensPower> {
        // around the nearest label that there is
        let half = (ROWS / 2) as f64;
        let middle = self.steps_to(power);
        (0..ROWS).filter_map(move |row| self.at(middle + row as f64 - half))
    }

    /// Whether a power is one of its steps.
    ///
    /// ```
    /// use ocellus_core::{lens::label::Labels, quantity::*};
    /// let labels = Labels { step: LabelStep::from_d(0.5)?, least: None, most: None };
    /// assert!(labels.has(LensPower::from_d(21.5)?) && !labels.has(LensPower::from_d(21.25)?));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn has(self, power: LensPower) -> bool {
        let steps = (power.d() - self.first()) / self.step.d();
        (steps - round(steps)).abs() < 1e-6
    }

    /// Whether a power lies between its weakest and its strongest.
    ///
    /// ```
    /// use ocellus_core::{lens::label::Labels, quantity::*};
    /// let labels = Labels { step: LabelStep::from_d(0.5)?, least: Some(LensPower::from_d(6.0)?), most: None };
    /// assert!(labels.reaches(6.0) && !labels.reaches(5.9));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn reaches(self, power: f64) -> bool {
        self.least.is_none_or(|least| power >= least.d()) && self.most.is_none_or(|most| power <= most.d())
    }

    /// The label that a rule points out, and what it leaves; `None` where the model has none.
    ///
    /// The first myopic is the weakest label that leaves less than 0 D. The nearest leaves least to the target; of two that are
    /// equally near, the stronger, which leaves the eye the more myopic. A power a step beyond all that is made has none.
    /// `exact` is the label that would leave just 0 D, or the target; `left` gives what a label leaves.
    ///
    /// ```
    /// use ocellus_core::{lens::label::{LabelRule, Labels}, quantity::*};
    /// let labels = Labels { step: LabelStep::from_d(0.5)?, least: None, most: None };
    /// let (target, left) = (Refraction::from_d(0.0)?, |label: LensPower| Some(0.7 * (20.3 - label.d())));
    /// let (label, rx) = labels.by_rule(LabelRule::FirstMyopic, target, 20.3, left).unwrap();
    /// assert!(label.d() == 20.5 && rx < 0.0);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn by_rule(
        self,
        rule: LabelRule,
        target: Refraction,
        exact: f64,
        left: impl Fn(LensPower) -> Option<f64>,
    ) -> Option<(LensPower, f64)> {
        // none of what is made comes near
        let beyond = self.least.is_some_and(|least| exact < least.d() - self.step.d())
            || self.most.is_some_and(|most| exact > most.d() + self.step.d());
        if beyond {
            return None;
        }
        // the label nearest to the exact power, and those beside it
        let labels = (-1..=1).filter_map(|by| self.at(self.steps_to(exact) + f64::from(by)));
        let mut asked = labels.filter_map(|label| Some((label, left(label)?)));
        match rule {
            LabelRule::FirstMyopic => asked.find(|(_, rx)| *rx < 0.0),
            LabelRule::Nearest => asked.reduce(|best, other| {
                let off = |rx: f64| (rx - target.d()).abs();
                if off(other.1) <= off(best.1) { other } else { best }
            }),
        }
    }

    /// The steps from the first label to the one nearest to a power.
    fn steps_to(self, power: f64) -> f64 {
        let least = self.least.map_or(-f64::MAX, LensPower::d);
        let most = self.most.map_or(f64::MAX, LensPower::d);
        round((power.max(least).min(most) - self.first()) / self.step.d())
    }

    /// The label so many steps from the first, where the model comes in it.
    fn at(self, steps: f64) -> Option<LensPower> {
        // labels have two decimals: the sum of steps is brought back to the label as it is typed
        let label = LensPower::from_d(round((self.first() + self.step.d() * steps) * 100.0) / 100.0).ok()?;
        self.reaches(label.d()).then_some(label)
    }

    fn first(self) -> f64 {
        self.least.map_or(0.0, LensPower::d)
    }
}
