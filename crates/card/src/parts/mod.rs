//! The parts of the card, one folder each.
//!
//! A part is known to everything by its line in `parts!`: to case files, card, console, device, explanations and read-back.

/// Hands every part to another macro, in the order of the card: what it is about, and what it has besides its plan. A part of
/// nothing has entries alone.
macro_rules! parts {
    ($then:ident) => {
        $then! {
            general of nothing;
            set_up of nothing;
            identity of entered: signs;
            #[cfg(feature = "target")] target of nothing: rules;
            #[cfg(feature = "laser")] laser of nothing: rules, limits;
            #[cfg(feature = "toric")] toric of nothing: rules;
            #[cfg(feature = "lens")] lens of lens: rules, explains, signs, limits;
            #[cfg(feature = "certainty")] certainty of lens: explains, limits;
            #[cfg(feature = "second_eye")] second_eye of lens: rules, limits;
            #[cfg(feature = "second")] second of lens: rules, explains, limits;
            #[cfg(feature = "thick")] thick of lens: rules, explains;
            #[cfg(feature = "backup")] backup of lens: rules, explains, signs, limits;
            #[cfg(feature = "cornea")] cornea of eye: rules, limits;
            #[cfg(feature = "axis")] axis of lens: explains, signs, limits;
            #[cfg(feature = "turn")] turn of lens: explains, limits;
            #[cfg(feature = "wound")] wound of eye: limits;
            #[cfg(feature = "rhexis")] rhexis of eye: rules, explains;
            #[cfg(feature = "pressure")] pressure of entered: rules, explains, limits;
            #[cfg(feature = "chamber")] chamber of entered: rules, explains, limits;
            #[cfg(feature = "surge")] surge of entered: explains, limits;
            #[cfg(feature = "tube")] tube of entered: rules, explains, limits;
            #[cfg(feature = "end_of_case")] end_of_case of eye;
            #[cfg(feature = "after")] after of lens: rules, explains, limits;
            #[cfg(feature = "risks")] risks of eye: signs;
            #[cfg(feature = "eye")] eye of eye: rules, limits;
            also_used of nothing;
            unused of nothing;
            sign_off of nothing;
        }
    };
}

#[cfg(feature = "after")]
pub mod after;
pub mod also_used;
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
