//! The conversation with a person at any plain terminal: the same words, answers and numbers on a microcontroller and on
//! a desk.
//!
//! **Not a medical device.** Teaching and independent arithmetic check only: the surgeon, the label, the pharmacy and
//! local rules decide.
//!
//! A [`Console`] is fed byte by byte and answers in pieces of text; it holds the entries of one case and two lines, and
//! nothing else. All numbers come from [`ocellus_card`] and are printed by its one rule; nothing is computed here but
//! where a character goes in a drawing.
//!
//! ```
//! use ocellus_console::{Around, Console};
//! struct Desk;
//! impl Around for Desk {
//!     fn millis(&self) -> u32 { 0 }
//! }
//! let (mut console, mut said) = (Console::new(), String::new());
//! for byte in *b"al 23.46 mm\r" {
//!     console.byte(byte, 0, &Desk, &mut |text| said.push_str(text));
//! }
//! assert!(said.contains("al          23.46 mm"));
//! ```
#![no_std]
#![cfg_attr(not(feature = "all"), allow(dead_code, reason = "what one verb has for another that is left out"))]

mod around;
#[cfg(feature = "barometer")]
mod barometer;
mod card;
mod case;
mod cautions;
mod clear;
mod command;
mod console;
#[cfg(feature = "convert")]
mod convert;
#[cfg(feature = "draw")]
mod draw;
mod entry;
#[cfg(feature = "exercise")]
mod exercise;
mod explain;
#[cfg(feature = "group")]
mod group;
mod head;
mod help;
mod identify;
mod keys;
mod line;
mod nearest;
#[cfg(feature = "nudge")]
mod nudge;
mod number;
mod outcome;
mod page;
#[cfg(any(feature = "draw", feature = "sweep"))]
mod picked;
#[cfg(any(feature = "draw", feature = "strip"))]
mod place;
#[cfg(feature = "exercise")]
pub mod question;
mod readback;
mod session;
mod show;
#[cfg(feature = "strip")]
mod strip;
#[cfg(feature = "sweep")]
mod sweep;
mod table;
mod verb;
mod word;
mod wrong;

pub use around::{Air, Around};
pub use card::print_card;
pub use console::Console;
pub use head::Wanted;
pub use identify::PROMPTS;
pub use page::Desk;
