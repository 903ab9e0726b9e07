//! The tables of all parts, as the compiler sees them.

use crate::part::PartRows;

macro_rules! tables {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// The table of every part, in the order of the card.
        pub(super) const TABLES: &[&PartRows] = &[$($(#[$cfg])* &crate::parts::$name::table::ROWS,)*];
    };
}

parts!(tables);

pub(super) const PARTS: usize = TABLES.len();

/// The parts by their numbers; 0 is none of them.
pub(super) const BY_NUMBER: [&PartRows; PARTS] = {
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
    assert!(sorted[0].part.0 > 0, "0 is the number of no part");
    sorted
};

/// One more than the greatest number of a part.
pub(super) const MOST: usize = BY_NUMBER[PARTS - 1].part.0 as usize + 1;

/// Whether two texts are one, while the program is compiled.
pub(super) const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    let mut n = 0;
    while n < one.len() && n < other.len() && one[n] == other[n] {
        n += 1;
    }
    n == one.len() && n == other.len()
}
