//! One number for what all the numbers on the line mean: two programs with the same number mean the same.
//!
//! It is a sum of numbers, one for each part that a program has and one for all that is of no part; each is FNV-1a (32 bits)
//! over its lines of `schema.txt` beside this crate, which lists every number and its meaning. They are computed here from the
//! tables themselves, and a test compares the file with them. So a desk knows what a device with fewer parts means, and believes
//! none with a part that it does not know.

use ocellus_card::error::Wrong;
use ocellus_card::id::PartId;
use ocellus_card::schema::{Hash, MEANING, of_parts};
use ocellus_core::fluids::unit::Unit;
use ocellus_core::lens::method::Method;

use crate::code::{Outcome, Refusal};
use crate::frame::{LARGEST_PAYLOAD, VERSION};
use crate::message::{TABLE, Welcome};

/// The version of the arithmetic: one version holds for every package here.
pub const CORE: [u8; 3] = [
    version(env!("CARGO_PKG_VERSION_MAJOR")),
    version(env!("CARGO_PKG_VERSION_MINOR")),
    version(env!("CARGO_PKG_VERSION_PATCH")),
];

/// What all the numbers on the line mean, with all the parts that are here.
pub const SCHEMA: u32 = REST.wrapping_add(MEANING);

/// Why a desk and a device do not understand each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Disagreement {
    /// The device speaks this version of the protocol.
    Version(u8),
    /// The device's numbers mean something else: its schema.
    Schema(u32),
    /// The device has parts that are not known here: their bits.
    Parts(u64),
    /// The device's largest payload is another.
    LargestPayload(u8),
}

impl Welcome {
    /// Whether it has a part of the card.
    pub const fn has(&self, part: PartId) -> bool {
        part.0 < 64 && self.parts >> part.0 & 1 != 0
    }

    /// The parts that are here and that it does not have.
    pub fn lacks(&self) -> impl Iterator<Item = PartId> + '_ {
        PartId::all().filter(|part| !self.has(*part))
    }

    /// Why nothing else that this device says may be believed; none where its numbers mean what they mean here. That its
    /// arithmetic is of another version ([`CORE`]) is not a disagreement about numbers, but is worth saying.
    pub fn disagreement(&self) -> Option<Disagreement> {
        if self.version != VERSION {
            return Some(Disagreement::Version(self.version));
        }
        match of_parts(self.parts) {
            None => Some(Disagreement::Parts(self.parts & !ocellus_card::schema::HERE)),
            Some(meaning) if REST.wrapping_add(meaning) != self.schema => Some(Disagreement::Schema(self.schema)),
            _ if self.largest_payload as usize != LARGEST_PAYLOAD => {
                Some(Disagreement::LargestPayload(self.largest_payload))
            }
            _ => None,
        }
    }
}

#[expect(clippy::panic, reason = "it runs while this is compiled, and never after")]
const fn version(text: &str) -> u8 {
    match u8::from_str_radix(text, 10) {
        Ok(number) => number,
        Err(_) => panic!("a version is three numbers below 256"),
    }
}

/// The beginning of a line about a row of a table.
const fn row(hash: Hash, table: &str, number: usize) -> Hash {
    hash.text(table).word("").number(number)
}

/// A line for each row of a table: its name, the row's number, the row's key.
macro_rules! rows {
    ($hash:ident, $table:literal, $first:literal, $all:expr, $key:ident) => {
        let (mut rows, mut number) = ($all, $first);
        while let [one, rest @ ..] = rows {
            $hash = row($hash, $table, number).word(one.$key()).end();
            (rows, number) = (rest, number + 1);
        }
    };
}

/// Text without its spaces, in which compilers differ when they write a type.
const fn without_spaces(mut hash: Hash, text: &str) -> Hash {
    let mut text = text;
    while let Some((first, rest)) = text.split_at_checked(1) {
        if let [1..=31 | 33..] = first.as_bytes() {
            hash = hash.text(first);
        }
        text = rest;
    }
    hash
}

/// What is of no part.
const REST: u32 = {
    let mut hash = row(Hash::NOTHING, "protocol", VERSION as usize).end();
    let mut messages = TABLE;
    while let [message, rest @ ..] = messages {
        hash = row(hash, "message", message.kind as usize).word(message.name);
        let mut fields = message.fields;
        while let [(name, of), others @ ..] = fields {
            hash = without_spaces(hash.word(name).text(":"), of);
            fields = others;
        }
        (hash, messages) = (hash.end(), rest);
    }
    rows!(hash, "outcome", 0, Outcome::ALL, word);
    rows!(hash, "refusal", 1, Refusal::ALL, word);
    rows!(hash, "error", 0, Wrong::ALL, word);
    rows!(hash, "method", 0, Method::ALL, key);
    let (mut methods, mut number) = (Method::ALL, 0);
    while let [method, rest @ ..] = methods {
        hash = row(hash, "steps of method", number).steps(method.table()).end();
        (methods, number) = (rest, number + 1);
    }
    rows!(hash, "unit", 0, Unit::ALL, word);
    hash.value()
};
