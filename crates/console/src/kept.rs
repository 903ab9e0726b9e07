//! What a console keeps beside the entries of the case.

use crate::barometer::Zero;
use crate::exercise::Learner;
use crate::group::Eyes;
use crate::strip::Strip;

pub(crate) struct Kept {
    /// What the incisions did in eyes that were added.
    pub(crate) group: Eyes,
    /// A strip chart that runs.
    pub(crate) strip: Option<Strip>,
    /// The question that was asked.
    pub(crate) learner: Learner,
    /// The pressure that others are told against.
    pub(crate) zero: Zero,
}

impl Kept {
    pub(crate) const NOTHING: Kept = Kept { group: Eyes::NONE, strip: None, learner: Learner::NEW, zero: Zero::NONE };
}
