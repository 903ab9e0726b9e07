//! The arithmetic of a cataract operation, made to give the same 64 bits on a handheld, on a laptop and in a test.
//!
//! **Not a medical device.** Teaching and independent arithmetic check only: the surgeon, the label, the pharmacy and
//! local rules decide.
//!
//! # The way data takes
//!
//! ```text
//! text, table, line, frame -> draft -> case -> plan -> sink -> text, JSON, table, frame, drawing
//! ```
//!
//! Two tables are the heart of it. [`field`] names everything that goes in, [`item`] everything that comes out. A
//! [`draft::Draft`] holds what was typed; [`case::Case`] is the only door out of it, so a case that exists is valid
//! ([`bench::Bench`] where there is no eye, [`sheet::Sheet`] where there may be either); and [`plan::plan`] streams what follows from it to a [`sink::Sink`], which prints, keeps or compares but never computes.
//!
//! # The rooms
//!
//! | module | holds |
//! |---|---|
//! | [`eye`] | the cornea, and whether a printout can be believed |
//! | [`lens`] | one file per published method, the optics under them, constants into each other |
//! | [`astigmatism`] | power vectors, the incision, the toric lens |
//! | [`pressure`] | units, the column, the air and what it allows; tubes and needles; chamber and surge as illustrations |
//! | [`table_side`] | rhexis and wound |
//! | [`plan`], [`explain`] | a case to its card; a number to its working |
//! | [`readback`] | the code two people compare by voice |
//! | [`quantity`], [`bounds`], [`choice`], [`name`], [`date`] | what an entry can be |
//! | [`constant`], [`source`], [`working`], [`caution`] | where a number comes from, and what speaks against it |
//! | [`sign_off`] | lines that two people tick |
//! | [`exercise`] | questions with numbers at random, and their working |
//! | [`decimal`], [`words`] | numbers as text and as speech |
#![no_std]

#[cfg(test)]
extern crate std;

mod math;

#[macro_use]
mod packed;
#[macro_use]
pub mod working;

pub mod astigmatism;
pub mod bench;
pub mod bounds;
pub mod case;
pub mod caution;
pub mod choice;
pub mod constant;
pub mod date;
pub mod decimal;
pub mod draft;
pub mod error;
pub mod exercise;
pub mod explain;
pub mod eye;
pub mod field;
pub mod item;
pub mod lens;
pub mod name;
pub mod plan;
pub mod pressure;
pub mod quantity;
pub mod readback;
pub mod sheet;
pub mod sign_off;
pub mod sink;
pub mod source;
pub mod table_side;
pub mod words;
