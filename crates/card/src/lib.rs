//! The theatre card: what goes in, what comes out, what to know before using it. `no_std`, no allocator, no unsafe code, no
//! panic; the formulas are `ocellus-core`'s.
//!
//! **Not a medical device.** Teaching and independent arithmetic check only: the surgeon, the label, the pharmacy and local
//! rules decide.
//!
//! # The way data takes
//!
//! ```text
//! text -> Draft -> Case -> plan, explain -> Sink -> text, JSON, a frame, a drawing
//!                       -> read-back
//! ```
//!
//! A reader fills a [`Draft`](draft::Draft) and does nothing else. [`Case::check`](case::Case::check) is the only door: it says
//! everything that is wrong, and a case that exists is valid. [`Case::plan`](case::Case::plan) streams the card to a
//! [`Sink`](sink::Sink), numbers and cautions as they are found; [`Case::explain`](case::Case::explain) streams how one of them
//! came about. Nothing is collected, so a device needs no room for a card. A sink computes nothing.
//!
//! ```
//! use ocellus_card::{case::Case, caution::Caution, draft::Draft, id::EntryId, item::Item, readback, sink::Sink};
//! use ocellus_card::{cautions, entries, items};
//!
//! /// The lens that each method asks for, and what to know first.
//! #[derive(Default)]
//! struct Lenses { powers: Vec<String>, cautions: Vec<String> }
//!
//! impl ocellus_core::working::Steps for Lenses {}
//! impl Sink for Lenses {
//!     fn item(&mut self, item: Item) {
//!         if let (items::EXACT_POWER, Some(method)) = (item.what, item.method) {
//!             self.powers.push(format!("{} {:+.2} {}", method.name(), item.value, item.what.unit()));
//!         }
//!     }
//!     fn caution(&mut self, caution: Caution) {
//!         self.cautions.push(format!("{}: {}", caution.code.severity().word(), caution.code.text()));
//!     }
//! }
//!
//! let mut draft = Draft::default();
//! for (key, text) in [
//!     ("eye", "right"), ("axial_length_mm", "26.20"), ("k1_d", "43.25"), ("k2_d", "44.00"), ("k_kind", "keratometric"),
//!     ("al_method", "optical"), ("eye_state", "phakic"), ("previous_surgery", "none"), ("target_d", "-0.25"),
//! ] {
//!     draft.enter(EntryId::of_key(key).unwrap(), text)?;
//! }
//! draft.enter(entries::A_CONSTANT, "118.9")?;
//!
//! let case = Case::try_from(&draft)?;
//! let mut lenses = Lenses::default();
//! case.plan(&mut lenses);
//! assert_eq!(lenses.powers[0], "SRK/T +13.04 D");
//! assert!(lenses.cautions.iter().any(|text| *text == format!("CAUTION: {}", cautions::LONG_EYE.text())));
//! // the first four symbols cover the entries, the last two the answers
//! assert!(readback::of(&case, None)?.as_str().starts_with("G46P-"));
//! # Ok::<(), ocellus_card::error::Error>(())
//! ```
//!
//! # To find something
//!
//! | what | where |
//! |---|---|
//! | an entry, number, caution or line to tick by its name in the program | [`entries`], [`items`], [`cautions`], [`sign_offs`], as [`cautions::LONG_EYE`] |
//! | by its name in a file, and what is printed of it | [`EntryId`](id::EntryId), [`ItemId`](id::ItemId), [`CautionId`](id::CautionId), [`SignOffId`](id::SignOffId), as [`CautionId::text`](id::CautionId::text) |
//! | what an entry accepts | [`EntryId::kind`](id::EntryId::kind) |
//! | what can be explained | [`Subject`] |
//! | the limits beyond which there is a caution | [`limits()`] |
//! | the read-back, byte by byte, with its CRCs | [`readback`] |
//! | all that one part has | its folder in [`parts`] |
//!
//! # Rooms
//!
//! Each stands on those before it; a test reads the sources and holds them to that.
//!
//! | room | holds |
//! |---|---|
//! | [`id`], [`entry`], [`item`], [`caution`], [`sign_off`], [`layout`], [`part`], [`sink`], [`error`], [`name`], [`date`], [`words`] | what each kind of thing is |
//! | tables of [`parts`] | which parts there are, and what each has |
//! | `catalogue` | these tables as columns, with their texts folded: what is asked of an id |
//! | [`draft`], [`Entered`] | what was entered; it is noted when it is read, so that nobody lists what a number rests on |
//! | [`parts`] | what each part shows, explains and demands |
//! | [`case`] | the door |
//! | `plan`, `explain`, [`readback`] | what is done with a case |
//!
//! # Features
//!
//! Each part is a feature, and asks for those that the trade does not have without it; `all` (default) is every part. What
//! is left has the same ids as before.

#![no_std]
#![allow(long_running_const_eval)]
#![cfg_attr(
    not(feature = "all"),
    allow(
        dead_code,
        unused_imports,
        unused_macros,
        unused_variables,
        reason = "what one part has for another that is left out"
    )
)]

#[cfg(test)]
extern crate std;

#[macro_use]
pub mod entry;
#[macro_use]
pub mod item;
#[macro_use]
pub mod caution;
#[macro_use]
pub mod sign_off;
#[macro_use]
pub mod layout;
#[macro_use]
pub mod part;
#[macro_use]
pub mod parts;
#[macro_use]
mod known;

pub mod case;
mod catalogue;
mod check;
mod crc;
pub mod date;
pub mod draft;
mod entered;
mod entry_set;
pub mod error;
mod explain;
pub mod id;
mod limits;
pub mod name;
mod names;
mod out;
mod plan;
pub mod readback;
mod rule;
pub mod sink;
pub mod words;

pub use catalogue::{Named, Subject, notations, of_section, schema, sections, workings};
pub use entered::Entered;
pub use known::Known;
pub use limits::limits;
pub use names::{cautions, entries, items, sign_offs};
