//! What was entered and found valid: the case of an eye, or a set-up of fluids alone.

use crate::bench::Bench;
use crate::case::Case;
use crate::draft::Draft;
use crate::error::Error;
use crate::explain::{self, Subject};
use crate::plan;
use crate::sink::Sink;

/// What a card is made of.
#[derive(Clone, Debug, PartialEq)]
pub enum Sheet<'a> {
    /// One operated eye.
    Eye(Case<'a>),
    /// A set-up of fluids, without any eye.
    Bench(Bench<'a>),
}

impl<'a> Sheet<'a> {
    /// Checks a draft: reports everything that is wrong with it, and gives what it is when nothing is. A draft is a set-up
    /// where it has entries of `[pressure]`, `[flow]` or `[tube]` and none of an eye; else it is a case.
    ///
    /// ```
    /// use ocellus_core::{draft::Draft, field::Field, sheet::Sheet};
    /// let mut draft = Draft::default();
    /// draft.enter(Field::Altitude, "1600")?;
    /// assert!(matches!(Sheet::check(&draft, &mut |_| {}), Some(Sheet::Bench(_))));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn check(draft: &'a Draft, report: &mut dyn FnMut(Error)) -> Option<Sheet<'a>> {
        if Bench::alone(draft) {
            Bench::check(draft, report).map(Sheet::Bench)
        } else {
            Case::check(draft, report).map(Sheet::Eye)
        }
    }

    /// What was entered.
    pub fn draft(&self) -> &'a Draft {
        match self {
            Sheet::Eye(case) => case.draft(),
            Sheet::Bench(bench) => bench.draft(),
        }
    }

    /// Streams the whole card.
    pub fn plan(&self, sink: &mut dyn Sink) {
        match self {
            Sheet::Eye(case) => plan::plan(case, sink),
            Sheet::Bench(bench) => plan::plan_bench(bench, sink),
        }
    }

    /// Streams the entries, cautions and steps of one subject; the answer says whether there were steps.
    pub fn explain(&self, subject: Subject, sink: &mut dyn Sink) -> bool {
        match self {
            Sheet::Eye(case) => explain::explain(subject, case, sink),
            Sheet::Bench(bench) => explain::explain_bench(subject, bench, sink),
        }
    }
}
