//! The theatre card: what goes in, what comes out, what to know before using it. Each part of it is one folder in [`parts`].
//!
//! The way that data takes: a reader fills a [`draft::Draft`]; [`case::Case::check`] is the only door, so a case that exists
//! is valid; [`case::Case::plan`] streams the card to a [`sink::Sink`], and [`case::Case::explain`] how a number came about.
//!
//! ```
//! use ocellus_card::{case::Case, caution::Caution, draft::Draft, entries, item::Item, items, sink::Sink};
//!
//! struct Powers(Vec<f64>);
//! impl ocellus_core::working::Steps for Powers {}
//! impl Sink for Powers {
//!     fn item(&mut self, item: Item) {
//!         if item.what == items::EXACT_POWER {
//!             self.0.push(item.value);
//!         }
//!     }
//!     fn caution(&mut self, _: Caution) {}
//! }
//!
//! let mut draft = Draft::default();
//! for (entry, text) in [
//!     (entries::SIDE.id(), "right"), (entries::AXIAL_LENGTH.id(), "23.50"), (entries::K1.id(), "43.25"),
//!     (entries::K2.id(), "44.00"), (entries::K_KIND.id(), "keratometric"), (entries::AL_METHOD.id(), "optical"),
//!     (entries::EYE_STATE.id(), "phakic"), (entries::PREVIOUS_SURGERY.id(), "none"), (entries::TARGET.id(), "-0.25"),
//!     (entries::A_CONSTANT.id(), "118.9"),
//! ] {
//!     draft.enter(entry, text)?;
//! }
//! let mut powers = Powers(Vec::new());
//! Case::try_from(&draft)?.plan(&mut powers);
//! assert!(powers.0.len() >= 4 && powers.0.iter().all(|power| (19.0..25.0).contains(power)));
//! # Ok::<(), ocellus_card::error::Error>(())
//! ```
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
