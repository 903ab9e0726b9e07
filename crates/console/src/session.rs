//! What a console keeps beside the entries of the case.

#[cfg(feature = "barometer")]
use crate::barometer::Zero;
#[cfg(feature = "exercise")]
use crate::exercise::Learner;
#[cfg(feature = "group")]
use crate::group::Eyes;
#[cfg(feature = "strip")]
use crate::strip::Strip;
#[cfg(feature = "strip")]
use heapless::Vec;

pub(crate) struct Session {
    /// What the incisions did in eyes that were added.
    #[cfg(feature = "group")]
    pub(crate) group: Eyes,
    /// A strip chart that runs, if there is one: an empty list is all zeros, and so needs no first value in a device's flash.
    #[cfg(feature = "strip")]
    pub(crate) strip: Vec<Strip, 1>,
    /// The question that was asked.
    #[cfg(feature = "exercise")]
    pub(crate) learner: Learner,
    /// The pressure that others are compared with.
    #[cfg(feature = "barometer")]
    pub(crate) zero: Zero,
}

impl Session {
    pub(crate) const NEW: Session = Session {
        #[cfg(feature = "group")]
        group: Eyes::NONE,
        #[cfg(feature = "strip")]
        strip: Vec::new(),
        #[cfg(feature = "exercise")]
        learner: Learner::NEW,
        #[cfg(feature = "barometer")]
        zero: Zero::NONE,
    };

    /// A byte was typed: when that happens cannot be predicted.
    pub(crate) fn stir(&mut self, _with: u32) {
        #[cfg(feature = "exercise")]
        self.learner.stir(_with);
    }

    /// Whether a chart runs, which takes every key itself.
    pub(crate) fn is_running(&self) -> bool {
        #[cfg(feature = "strip")]
        return !self.strip.is_empty();
        #[cfg(not(feature = "strip"))]
        false
    }

    /// Gives a key to the chart that runs; the answer is whether it goes on.
    pub(crate) fn key(&mut self, _byte: u8, _page: &mut crate::page::Page) -> bool {
        #[cfg(feature = "strip")]
        if let Some(strip) = self.strip.first_mut() {
            return strip.key(_byte, _page);
        }
        false
    }

    /// Time passes for the chart that runs; the answer is whether it goes on.
    pub(crate) fn tick(&mut self, _now: u32, _page: &mut crate::page::Page) -> bool {
        #[cfg(feature = "strip")]
        if let Some(strip) = self.strip.first_mut() {
            return strip.tick(_now, _page);
        }
        false
    }

    /// No chart runs any more.
    pub(crate) fn end(&mut self) {
        #[cfg(feature = "strip")]
        self.strip.clear();
    }
}
