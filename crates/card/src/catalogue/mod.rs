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
pub mod schema;
mod sign_offs;
mod subjects;
pub mod workings;

pub use entries::{notations, of_section, sections};
pub use subjects::{Named, Subject};

pub(crate) use entries::{NAMES, NUMBERS, Slot, WORDS};

use crate::part::PartRows;
use crate::parts::TABLES;

const PARTS: usize = TABLES.len();

/// The parts by their numbers.
const BY_NUMBER: [&PartRows; PARTS] = {
    let mut sorted = [TABLES[0]; PARTS];
    let mut n = 1;
    while n < PARTS {
        let mut place = n;
        while place > 0 && sorted[place - 1].part.0 >= TABLES[n].part.0 {
            assert!(sorted[place - 1].part.0 != TABLES[n].part.0, "two parts have one number");
            sorted[place] = sorted[place - 1];
            place -= 1;
        }
        sorted[place] = TABLES[n];
        n += 1;
    }
    sorted
};

/// One more than the greatest number of a part.
const MOST: usize = BY_NUMBER[PARTS - 1].part.0 as usize + 1;

/// Whether two texts are one, while the program is compiled.
const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    let mut n = 0;
    while n < one.len() && n < other.len() && one[n] == other[n] {
        n += 1;
    }
    n == one.len() && n == other.len()
}
