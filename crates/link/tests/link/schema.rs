//! What the numbers mean, listed for the other end.

use std::fmt::{Display, Write};

use ocellus_core::explain::Subject;
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::{Part, What};
use ocellus_core::lens::Method;
use ocellus_core::pressure::unit::Unit;
use ocellus_core::sign_off::SignOff;
use ocellus_core::working::Topic;
use ocellus_core::{caution, error};
use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::frame::VERSION;
use ocellus_link::message::TABLE;
use ocellus_link::schema::SCHEMA;

/// Every number and its meaning, made from the tables and without the code that makes the hash.
fn listed() -> String {
    let mut text = format!("protocol {VERSION}\n");
    for row in TABLE {
        let fields = row.fields.iter().map(|(name, of)| format!(" {name}:{}", of.replace(' ', "")));
        writeln!(text, "message {} {}{}", row.kind, row.name, fields.collect::<String>()).unwrap();
    }
    let mut list = |table: &str, rows: Vec<(u8, String)>| {
        rows.iter().for_each(|(number, key)| writeln!(text, "{table} {number} {key}").unwrap());
    };
    fn rows<T: Copy, K: Display>(all: &[T], number: impl Fn(T) -> u8, key: impl Fn(T) -> K) -> Vec<(u8, String)> {
        all.iter().map(|one| (number(*one), key(*one).to_string())).collect()
    }
    list("outcome", rows(Outcome::ALL, Outcome::number, Outcome::word));
    list("refusal", rows(Refusal::ALL, Refusal::number, Refusal::word));
    let words = |field: Field| match field.kind() {
        Kind::Choice(words) => format!("{} {}", field.key(), words.join(" ")),
        _ => field.key().into(),
    };
    list("field", rows(Field::ALL, |field| field as u8, words));
    list("error", rows(error::Code::ALL, |code| code as u8, error::Code::word));
    list("part", rows(Part::ALL, |part| part as u8, Part::key));
    list("item", rows(What::ALL, |what| what as u8, What::key));
    list("caution", rows(caution::Code::ALL, |code| code as u8, caution::Code::word));
    list("sign_off", rows(SignOff::ALL, |line| line as u8, SignOff::key));
    list("method", rows(Method::ALL, |method| method as u8, Method::key));
    list("subject", rows(&Subject::all().collect::<Vec<_>>(), Subject::number, Subject::key));
    let steps = |topic: Topic| {
        let steps = topic.lines().iter().map(|line| format!(" {}:{}", line.symbol, line.unit()).replace(' ', ""));
        [topic.key().to_owned()].into_iter().chain(steps).collect::<Vec<_>>().join(" ")
    };
    list("topic", rows(&Topic::all().collect::<Vec<_>>(), Topic::number, steps));
    list("unit", rows(Unit::ALL, |unit| unit as u8, Unit::word));
    text
}

const FILE: &str = include_str!("../../schema.txt");

/// When this fails, a table has changed. A row that was added at the end of its table is in order: put the list that this
/// prints into schema.txt, the new hash below and a line into the CHANGELOG, since desks and devices from before will
/// refuse each other. A row that moved, vanished or was renamed is a mistake once a version was released, unless VERSION is
/// raised with it; before that the hash alone keeps two programs apart.
#[test]
fn the_list_is_the_tables() {
    assert!(FILE == listed(), "schema.txt should be:\n{}", listed());
}

/// FNV-1a by its published definition (Fowler, Noll, Vo): offset 2166136261, prime 16777619.
fn fnv(bytes: &[u8]) -> u32 {
    bytes.iter().fold(2_166_136_261, |hash: u32, byte| (hash ^ u32::from(*byte)).wrapping_mul(16_777_619))
}

#[test]
fn the_hash_is_that_of_the_list() {
    // the published test vector for "foobar"
    assert_eq!(fnv(b"foobar"), 0xBF9C_F968);
    assert_eq!(SCHEMA, fnv(FILE.as_bytes()), "0x{SCHEMA:08X}");
    assert_eq!(SCHEMA, 0x3DD2_687A, "see above; it is 0x{SCHEMA:08X}");
}
