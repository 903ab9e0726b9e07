//! Everything that the parts declare, in one place: which there are, by number and by name, and what is printed of each.
//!
//! The tables of the parts are for people and for the compiler. While the program is compiled they are turned into columns,
//! with their texts folded, so that a device carries no row of them.

#![expect(clippy::indexing_slicing, reason = "only while the program is compiled")]

#[macro_use]
mod columns;

mod cautions;
mod entries;
mod items;
mod parts;
mod rows;
pub mod schema;
mod sign_offs;
mod subjects;
pub mod workings;

pub use entries::{notations, of_section, sections};
pub use subjects::{Named, Subject};

pub(crate) use entries::{NAMES, NUMBERS, Slot, WORDS};
