//! One number for what the numbers of each part mean: two programs with the same number mean the same by an entry, an item, a
//! caution.

use super::rows::{BY_NUMBER, PARTS};
use crate::entry::Kind;
use crate::id::PartId;
use crate::part::PartRows;
use ocellus_core::working::Table;

/// FNV-1a (Fowler, Noll, Vo), 32 bits.
#[derive(Clone, Copy, Debug)]
pub struct Hash(u32);

impl Hash {
    /// Of nothing.
    pub const NOTHING: Hash = Hash(0x811C_9DC5);

    /// The number.
    pub const fn value(self) -> u32 {
        self.0
    }

    const fn byte(self, byte: u8) -> Hash {
        Hash((self.0 ^ byte as u32).wrapping_mul(0x0100_0193))
    }

    /// With these bytes.
    pub const fn text(mut self, text: &str) -> Hash {
        let mut bytes = text.as_bytes();
        while let [first, rest @ ..] = bytes {
            self = self.byte(*first);
            bytes = rest;
        }
        self
    }

    /// With a space and these.
    pub const fn word(self, text: &str) -> Hash {
        self.byte(b' ').text(text)
    }

    /// With the digits of a number.
    pub const fn number(self, number: usize) -> Hash {
        let before = if number >= 10 { self.number(number / 10) } else { self };
        before.byte(b'0' + (number % 10) as u8)
    }

    /// With the end of a line.
    pub const fn end(self) -> Hash {
        self.byte(b'\n')
    }

    /// With the symbols of a table and the unit of each.
    pub const fn steps(self, table: &Table) -> Hash {
        let (mut hash, mut n) = (self.word(table.symbols()).byte(b':'), 0);
        while n < table.count() {
            hash = hash.word(table.unit(n));
            n += 1;
        }
        hash
    }

    /// The beginning of a line about the row of a part.
    const fn row(self, table: &str, part: PartId, number: usize) -> Hash {
        self.text(table).byte(b' ').number(part.0 as usize).byte(b'.').number(number)
    }
}

const fn of(part: &PartRows) -> u32 {
    let mut hash = Hash::NOTHING.text("part").byte(b' ').number(part.part.0 as usize).word(part.key).end();
    let mut n = 0;
    while n < part.entries.len() {
        hash = hash.row("entry", part.part, n).word(part.entries[n].key);
        if let Kind::Choice(words) = part.entries[n].kind {
            let mut words = *words;
            while let [word, others @ ..] = words {
                (hash, words) = (hash.word(word), others);
            }
        }
        (hash, n) = (hash.end(), n + 1);
    }
    n = 0;
    while n < part.items.len() {
        let item = &part.items[n];
        (hash, n) = (hash.row("item", part.part, n).word(item.key).word(item.unit).end(), n + 1);
    }
    n = 0;
    while n < part.cautions.len() {
        (hash, n) = (hash.row("caution", part.part, n).word(part.cautions[n].word).end(), n + 1);
    }
    n = 0;
    while n < part.sign_offs.len() {
        (hash, n) = (hash.row("sign_off", part.part, n).word(part.sign_offs[n].key).end(), n + 1);
    }
    n = 0;
    while n < part.subjects.len() {
        (hash, n) = (hash.row("subject", part.part, n).word(part.subjects[n].0).end(), n + 1);
    }
    n = 0;
    while n < part.tables.len() {
        (hash, n) = (hash.row("steps", part.part, n).steps(part.tables[n]).end(), n + 1);
    }
    hash.value()
}

const EACH: [(PartId, u32); PARTS] = {
    let (mut each, mut n) = ([(PartId(0), 0); PARTS], 0);
    while n < PARTS {
        each[n] = (BY_NUMBER[n].part, of(BY_NUMBER[n]));
        n += 1;
    }
    each
};

/// Which parts there are: for each the bit of its number.
pub const HERE: u64 = {
    let (mut here, mut n) = (0, 0);
    while n < PARTS {
        here |= 1 << EACH[n].0.0;
        n += 1;
    }
    here
};

/// What the numbers of all of them mean.
pub const MEANING: u32 = {
    let (mut sum, mut n) = (0u32, 0);
    while n < PARTS {
        sum = sum.wrapping_add(EACH[n].1);
        n += 1;
    }
    sum
};

/// What the numbers of some parts mean; nothing where one of them is not here.
///
/// ```
/// use ocellus_card::schema::{HERE, MEANING, of_parts};
/// assert_eq!(of_parts(HERE), Some(MEANING));
/// assert_eq!(of_parts(0), Some(0));
/// assert_eq!(of_parts(1 << 63), None);
/// ```
pub fn of_parts(parts: u64) -> Option<u32> {
    let some = EACH.iter().filter(|(part, _)| parts & 1 << part.0 != 0);
    (parts & !HERE == 0).then(|| some.fold(0, |sum: u32, (_, hash)| sum.wrapping_add(*hash)))
}
