//! The parts of the card, one folder each. A part is known to everything by its line in `parts!`.

#[cfg(feature = "after")]
pub mod after;
#[cfg(feature = "axis")]
pub mod axis;
#[cfg(feature = "backup")]
pub mod backup;
#[cfg(feature = "certainty")]
pub mod certainty;
#[cfg(feature = "chamber")]
pub mod chamber;
#[cfg(feature = "cornea")]
pub mod cornea;
#[cfg(feature = "end_of_case")]
pub mod end_of_case;
#[cfg(feature = "eye")]
pub mod eye;
pub mod general;
pub mod identity;
#[cfg(feature = "laser")]
pub mod laser;
#[cfg(feature = "lens")]
pub mod lens;
#[cfg(feature = "pressure")]
pub mod pressure;
#[cfg(feature = "rhexis")]
pub mod rhexis;
#[cfg(feature = "risks")]
pub mod risks;
#[cfg(feature = "second")]
pub mod second;
#[cfg(feature = "second_eye")]
pub mod second_eye;
pub mod set_up;
pub mod sign_off;
#[cfg(feature = "surge")]
pub mod surge;
#[cfg(feature = "target")]
pub mod target;
#[cfg(feature = "thick")]
pub mod thick;
#[cfg(feature = "toric")]
pub mod toric;
#[cfg(feature = "tube")]
pub mod tube;
#[cfg(feature = "turn")]
pub mod turn;
pub mod unused;
#[cfg(feature = "wound")]
pub mod wound;

use crate::entered::Entered;
use crate::id::{EntryId, PartId, SignOffId};
use crate::part::{PartRows, Stands};
use crate::rule::Rule;
use crate::sink::Sink;

/// What a card is about.
pub struct Known<'a> {
    /// Everything that was entered.
    pub entered: &'a Entered<'a>,
    /// The eye, where there is one.
    #[cfg(feature = "eye")]
    pub eye: Option<&'a eye::Eye<'a>>,
    /// What the methods say of it.
    #[cfg(feature = "lens")]
    pub lens: Option<&'a lens::Lens<'a>>,
}

impl Known<'_> {
    fn has_eye(&self) -> bool {
        #[cfg(feature = "eye")]
        return self.eye.is_some();
        #[cfg(not(feature = "eye"))]
        false
    }

    /// Whether a part that needs no eye is shown: beside an eye always; in a set-up where it has an entry, or begins the card.
    fn shows(&self, part: PartId, stands: Stands, entries: u8) -> bool {
        let made = || (0..entries).any(|number| self.entered.has(EntryId::new(part, number)));
        self.has_eye() || stands == Stands::Beside || made()
    }

    /// Begins a part that needs no eye; a card without one begins as a set-up.
    fn begin(&self, part: PartId, sink: &mut dyn Sink) {
        let heads = part == identity::table::PART && !self.has_eye();
        sink.part(if heads { set_up::table::PART } else { part });
    }
}

// In the order of the card: what it is about, and what it does besides planning. A part of nothing has entries alone.
parts! {
    general of nothing;
    set_up of nothing;
    identity of entered: signs;
    #[cfg(feature = "target")] target of nothing: rules;
    #[cfg(feature = "laser")] laser of nothing: rules;
    #[cfg(feature = "toric")] toric of nothing: rules;
    #[cfg(feature = "lens")] lens of lens: rules, explains, signs;
    #[cfg(feature = "certainty")] certainty of lens: explains;
    #[cfg(feature = "second_eye")] second_eye of lens: rules;
    #[cfg(feature = "second")] second of lens: rules, explains;
    #[cfg(feature = "thick")] thick of lens: rules, explains;
    #[cfg(feature = "backup")] backup of lens: rules, explains, signs;
    #[cfg(feature = "cornea")] cornea of eye: rules;
    #[cfg(feature = "axis")] axis of lens: explains, signs;
    #[cfg(feature = "turn")] turn of lens: explains;
    #[cfg(feature = "wound")] wound of eye;
    #[cfg(feature = "rhexis")] rhexis of eye: rules, explains;
    #[cfg(feature = "pressure")] pressure of entered: rules, explains;
    #[cfg(feature = "chamber")] chamber of entered: rules, explains;
    #[cfg(feature = "surge")] surge of entered: explains;
    #[cfg(feature = "tube")] tube of entered: rules, explains;
    #[cfg(feature = "end_of_case")] end_of_case of eye;
    #[cfg(feature = "after")] after of lens: rules, explains;
    #[cfg(feature = "risks")] risks of eye: signs;
    #[cfg(feature = "eye")] eye of eye: rules, signs;
    unused of nothing;
    sign_off of nothing;
}
