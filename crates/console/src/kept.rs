//! What a console keeps beside the entries of the case.

use crate::barometer::Zero;
use crate::exercise::Learner;
use crate::group::Eyes;
use crate::strip::Strip;
use heapless::Vec;

pub(crate) struct Kept {
    /// What the incisions did in eyes that were added.
    pub(crate) group: Eyes,
    /// A strip chart that runs, if there is one: an empty list is all zeros, and so needs no first value in a device's flash.
    pub(crate) strip: Vec<Strip, 1>,
    /// The question that was asked.
    pub(crate) learner: Learner,
    /// The pressure that others are told against.
    pub(crate) zero: Zero,
}

impl Kept {
    pub(crate) const NOTHING: Kept =
        Kept { group: Eyes::NONE, strip: Vec::new(), learner: Learner::NEW, zero: Zero::NONE };
}
