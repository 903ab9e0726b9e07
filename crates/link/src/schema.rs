//! One number for what all the numbers on the line mean: two programs with the same number mean the same.
//!
//! It is FNV-1a (32 bits) over the bytes of `schema.txt` beside this crate, which lists every number and its meaning. It
//! is computed here from the tables themselves, and a test holds the file to them.

use ocellus_core::caution::Code as CautionCode;
use ocellus_core::error::Code as ErrorCode;
use ocellus_core::explain::Subject;
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::{Part, What};
use ocellus_core::lens::Method;
use ocellus_core::pressure::unit::Unit;
use ocellus_core::sign_off::SignOff;
use ocellus_core::working::Topic;

use crate::code::{Outcome, Refusal};
use crate::frame::{LARGEST_PAYLOAD, VERSION};
use crate::message::{TABLE, Welcome};

/// The version of the arithmetic: one version holds for every package here.
pub const CORE: [u8; 3] = [
    version(env!("CARGO_PKG_VERSION_MAJOR")),
    version(env!("CARGO_PKG_VERSION_MINOR")),
    version(env!("CARGO_PKG_VERSION_PATCH")),
];

/// What all the numbers on the line mean.
pub const SCHEMA: u32 = schema();

/// Why a desk and a device do not understand each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Disagreement {
    /// The device speaks this version of the protocol.
    Version(u8),
    /// The device's numbers mean something else: its schema.
    Schema(u32),
    /// The device's largest payload is another.
    LargestPayload(u8),
}

impl Welcome {
    /// Why nothing else that this device says may be believed; none where its numbers mean what they mean here. That its
    /// arithmetic is of another version ([`CORE`]) is no disagreement about numbers, and worth saying.
    pub const fn disagreement(&self) -> Option<Disagreement> {
        if self.version != VERSION {
            Some(Disagreement::Version(self.version))
        } else if self.schema != SCHEMA {
            Some(Disagreement::Schema(self.schema))
        } else if self.largest_payload as usize != LARGEST_PAYLOAD {
            Some(Disagreement::LargestPayload(self.largest_payload))
        } else {
            None
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

/// FNV-1a (Fowler, Noll, Vo), 32 bits.
#[derive(Clone, Copy)]
struct Fnv(u32);

impl Fnv {
    const fn new() -> Fnv {
        Fnv(0x811C_9DC5)
    }

    const fn byte(self, byte: u8) -> Fnv {
        Fnv((self.0 ^ byte as u32).wrapping_mul(0x0100_0193))
    }

    /// Text without its spaces, in which compilers differ when they write a type.
    const fn text(mut self, text: &str) -> Fnv {
        let mut bytes = text.as_bytes();
        while let [first, rest @ ..] = bytes {
            if *first != b' ' {
                self = self.byte(*first);
            }
            bytes = rest;
        }
        self
    }

    const fn word(self, text: &str) -> Fnv {
        self.byte(b' ').text(text)
    }

    const fn number(self, number: usize) -> Fnv {
        let before = if number >= 10 { self.number(number / 10) } else { self };
        before.byte(b'0' + (number % 10) as u8)
    }

    const fn row(self, table: &str, number: usize) -> Fnv {
        self.text(table).byte(b' ').number(number)
    }

    /// A topic with the symbol and the unit of each of its steps.
    const fn topic(self, number: usize, topic: Topic) -> Fnv {
        let (mut hash, mut lines) = (self.row("topic", number).word(topic.key()), topic.lines());
        while let [line, rest @ ..] = lines {
            hash = hash.word(line.symbol).byte(b':').text(line.unit());
            lines = rest;
        }
        hash.end()
    }

    const fn end(self) -> Fnv {
        self.byte(b'\n')
    }
}

/// A line for each row of a table: its name, the row's number, the row's key.
macro_rules! rows {
    ($hash:ident, $table:literal, $first:literal, $all:expr, $key:ident) => {
        let (mut rows, mut number) = ($all, $first);
        while let [row, rest @ ..] = rows {
            $hash = $hash.row($table, number).word(row.$key()).end();
            (rows, number) = (rest, number + 1);
        }
    };
}

const fn schema() -> u32 {
    let mut hash = Fnv::new().row("protocol", VERSION as usize).end();
    let mut messages = TABLE;
    while let [row, rest @ ..] = messages {
        hash = hash.row("message", row.kind as usize).word(row.name);
        let mut fields = row.fields;
        while let [(name, of), others @ ..] = fields {
            hash = hash.word(name).byte(b':').text(of);
            fields = others;
        }
        (hash, messages) = (hash.end(), rest);
    }
    rows!(hash, "outcome", 0, Outcome::ALL, word);
    rows!(hash, "refusal", 1, Refusal::ALL, word);
    let (mut fields, mut number) = (Field::ALL, 0);
    while let [field, rest @ ..] = fields {
        hash = hash.row("field", number).word(field.key());
        if let Kind::Choice(mut words) = field.kind() {
            while let [word, others @ ..] = words {
                (hash, words) = (hash.word(word), others);
            }
        }
        (hash, fields, number) = (hash.end(), rest, number + 1);
    }
    rows!(hash, "error", 0, ErrorCode::ALL, word);
    rows!(hash, "part", 0, Part::ALL, key);
    rows!(hash, "item", 0, What::ALL, key);
    rows!(hash, "caution", 0, CautionCode::ALL, word);
    rows!(hash, "sign_off", 0, SignOff::ALL, key);
    rows!(hash, "method", 0, Method::ALL, key);
    rows!(hash, "subject", 0, Method::ALL, key);
    rows!(hash, "subject", 128, Subject::OTHERS, key);
    let (mut methods, mut number) = (Method::ALL, 0);
    while let [method, rest @ ..] = methods {
        hash = hash.topic(number, Topic::Method(*method));
        (methods, number) = (rest, number + 1);
    }
    let (mut topics, mut number) = (Topic::OTHERS, 128);
    while let [topic, rest @ ..] = topics {
        hash = hash.topic(number, *topic);
        (topics, number) = (rest, number + 1);
    }
    rows!(hash, "unit", 0, Unit::ALL, word);
    hash.0
}
