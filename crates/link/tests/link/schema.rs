//! What the numbers mean, listed for the other end.

use std::fmt::Display;

use ocellus_card::Subject;
use ocellus_card::entry::Kind;
use ocellus_card::error::Wrong;
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use ocellus_card::schema::{HERE, MEANING, of_parts};
use ocellus_card::workings;
use ocellus_core::fluids::unit::Unit;
use ocellus_core::lens::method::Method;
use ocellus_core::working::Table;
use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::frame::{LARGEST_PAYLOAD, VERSION};
use ocellus_link::message::{TABLE, Welcome};
use ocellus_link::schema::{CORE, Disagreement, SCHEMA};

/// A line: what it is about, its number, the rest.
fn line(about: &str, number: impl Display, rest: impl Display) -> String {
    format!("{about} {number} {rest}\n")
}

/// The symbols of a table, and the unit of each.
fn steps(table: &Table) -> String {
    (0..table.count()).fold(format!("{}:", table.symbols()), |text, step| text + " " + table.unit(step))
}

/// What is of no part.
fn rest() -> String {
    let mut text = format!("protocol {VERSION}\n");
    for row in TABLE {
        let fields = row.fields.iter().map(|(name, of)| format!(" {name}:{}", of.replace(' ', "")));
        text += &line("message", row.kind, row.name.to_owned() + &fields.collect::<String>());
    }
    Outcome::ALL.iter().for_each(|one| text += &line("outcome", one.number(), one.word()));
    Refusal::ALL.iter().for_each(|one| text += &line("refusal", one.number(), one.word()));
    Wrong::ALL.iter().for_each(|one| text += &line("error", *one as u8, one.word()));
    Method::ALL.iter().for_each(|one| text += &line("method", *one as u8, one.key()));
    Method::ALL.iter().for_each(|one| text += &line("steps of method", *one as u8, steps(one.table())));
    Unit::ALL.iter().for_each(|one| text += &line("unit", *one as u8, one.word()));
    text
}

/// What is of a part.
fn of(part: PartId) -> String {
    let number = |number: u8| format!("{}.{number}", part.0);
    let mut text = line("part", part.0, part.key());
    for entry in EntryId::all().filter(|entry| entry.part() == part) {
        let words = if let Kind::Choice(words) = entry.kind() { *words } else { &[] };
        let words: String = words.iter().map(|word| format!(" {word}")).collect();
        text += &line("entry", number(entry.number()), entry.key().to_string() + &words);
    }
    for item in ItemId::all().filter(|item| item.part() == part) {
        text += &line("item", number(item.number()), format!("{} {}", item.key(), item.unit()));
    }
    for caution in CautionId::all().filter(|caution| caution.part() == part) {
        text += &line("caution", number(caution.number()), caution.word());
    }
    for sign_off in SignOffId::all().filter(|sign_off| sign_off.part() == part) {
        text += &line("sign_off", number(sign_off.number()), sign_off.key());
    }
    for (subject, (_, place)) in Subject::all().map(|one| (one, one.numbers())).filter(|(_, of)| of.0 == part.0) {
        text += &line("subject", number(place), subject.key());
    }
    for (table, (of, place)) in workings::all().map(|table| (table, workings::numbers(table).unwrap())) {
        if of == part.0 {
            text += &line("steps", number(place), steps(table));
        }
    }
    text
}

/// The parts by their numbers.
fn parts() -> Vec<PartId> {
    let mut parts: Vec<_> = PartId::all().collect();
    parts.sort();
    parts
}

/// Every number and its meaning, made from the tables and without the code that makes the hashes: a block for what is of no
/// part, and one for each part.
fn listed() -> String {
    let blocks: Vec<_> = [rest()].into_iter().chain(parts().into_iter().map(of)).collect();
    blocks.join("\n")
}

const FILE: &str = include_str!("../../schema.txt");

/// The blocks of the file: what is of no part, and what is of each, with the number that its first line says.
fn blocks() -> (String, Vec<(u8, String)>) {
    let mut blocks = FILE.split_inclusive("\n\n").map(|block| format!("{}\n", block.trim_end()));
    let rest = blocks.next().unwrap();
    let number = |block: &str| block.split(' ').nth(1).unwrap().parse().unwrap();
    (rest, blocks.map(|block| (number(&block), block)).collect())
}

/// Of these no row moves, goes, or is called otherwise; one of a few words may gain others.
const KEPT: [&str; 7] = ["method", "part", "entry", "item", "caution", "sign_off", "subject"];

/// When this fails, a table has changed. A row that was added at the end of its table is in order: `BLESS=1` takes it into
/// schema.txt, and a line into the CHANGELOG says so, since desks and devices from before that have this part will refuse each
/// other. A row that moved or went is a mistake, unless VERSION is raised with it.
#[test]
fn the_list_is_the_tables() {
    let now = listed();
    let is_there = |kept: &str| now.lines().any(|line| line == kept || line.starts_with(&format!("{kept} ")));
    let kept = FILE.lines().filter(|line| line.split(' ').next().is_some_and(|about| KEPT.contains(&about)));
    let moved: Vec<_> = kept.filter(|line| !is_there(line)).collect();
    assert!(moved.is_empty() || now.lines().next() != FILE.lines().next(), "moved or gone: {moved:#?}");
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(concat!(env!("CARGO_MANIFEST_DIR"), "/schema.txt"), &now).unwrap();
        return;
    }
    assert!(FILE == now, "schema.txt, to be made by BLESS=1, should be:\n{now}");
}

/// FNV-1a by its published definition (Fowler, Noll, Vo): offset 2166136261, prime 16777619.
fn fnv(bytes: &[u8]) -> u32 {
    bytes.iter().fold(2_166_136_261, |hash: u32, byte| (hash ^ u32::from(*byte)).wrapping_mul(16_777_619))
}

/// The published test vector for "foobar".
#[test]
fn the_hash_is_the_published_one() {
    assert_eq!(fnv(b"foobar"), 0xBF9C_F968);
}

#[test]
fn the_schema_is_the_sum_over_the_list() {
    let (rest, parts) = blocks();
    assert_eq!(SCHEMA.wrapping_sub(MEANING), fnv(rest.as_bytes()), "what is of no part");
    for (number, block) in &parts {
        assert_eq!(of_parts(1 << number), Some(fnv(block.as_bytes())), "part {number}");
    }
    assert_eq!(HERE, parts.iter().fold(0, |bits, (number, _)| bits | 1 << number));
    assert_eq!(SCHEMA, summed(&rest, &parts), "0x{SCHEMA:08X}");
}

/// The schema of a device with these parts, from their lines alone.
fn summed(rest: &str, parts: &[(u8, String)]) -> u32 {
    parts.iter().fold(fnv(rest.as_bytes()), |sum, (_, block)| sum.wrapping_add(fnv(block.as_bytes())))
}

/// What a device with these parts says.
fn welcome(rest: &str, parts: &[(u8, String)]) -> Welcome {
    Welcome {
        version: VERSION,
        schema: summed(rest, parts),
        core: CORE,
        largest_payload: LARGEST_PAYLOAD as u8,
        board: [0; 16],
        parts: parts.iter().fold(0, |bits, (number, _)| bits | 1 << number),
    }
}

/// A device may have fewer parts: all but one, one alone, none, the first of them, every other.
#[test]
fn a_device_with_fewer_parts() {
    let (rest, all) = blocks();
    let some = |has: &dyn Fn(usize) -> bool| -> Vec<_> {
        all.iter().enumerate().filter(|(place, _)| has(*place)).map(|(_, part)| part.clone()).collect()
    };
    for one in 0..=all.len() {
        for parts in [some(&|n| n != one), some(&|n| n == one), some(&|n| n < one), some(&|n| n % 2 == one % 2)] {
            let said = welcome(&rest, &parts);
            assert_eq!(said.disagreement(), None, "{:X}", said.parts);
            // as its own program computes it
            assert_eq!(
                Some(said.schema),
                of_parts(said.parts).map(|sum| SCHEMA.wrapping_sub(MEANING).wrapping_add(sum))
            );
        }
    }
}

/// Bits of parts that are not here, whatever the schema says of them.
#[test]
fn a_device_with_a_part_that_is_unknown_here() {
    let (rest, all) = blocks();
    for bit in (0..64).filter(|bit| HERE & 1 << bit == 0) {
        let unknown = (bit as u8, format!("part {bit} new\n"));
        for parts in [vec![unknown.clone()], [&all[..], &[unknown]].concat()] {
            let said = welcome(&rest, &parts);
            assert_eq!(said.disagreement(), Some(Disagreement::Parts(1 << bit)));
            let believed = Welcome { schema: SCHEMA, ..said };
            assert_eq!(believed.disagreement(), Some(Disagreement::Parts(1 << bit)));
        }
    }
    let many = Welcome { parts: u64::MAX, ..welcome(&rest, &all) };
    assert_eq!(many.disagreement(), Some(Disagreement::Parts(!HERE)));
}

/// One line of a block said in another way, left out, or changed places with the next: in each block, whatever other parts
/// the device has.
#[test]
fn a_device_that_means_something_else() {
    let (rest, all) = blocks();
    let otherwise = |block: &str| -> Vec<String> {
        let lines: Vec<_> = block.split_inclusive('\n').collect();
        let mut others = Vec::new();
        for place in 0..lines.len() {
            let mut other = lines.clone();
            let longer = lines[place].replace('\n', "x\n");
            other[place] = &longer;
            others.push(other.concat());
            other.remove(place);
            others.push(other.concat());
        }
        // what stands behind the numbers of two lines, each behind the other's
        for (place, two) in lines.windows(2).enumerate() {
            let [Some(one), Some(next)] = [two[0], two[1]].map(|line| line.splitn(3, ' ').nth(2)) else { continue };
            let swapped = two[0].replace(one, next) + &two[1].replace(next, one);
            // some tables have the same steps
            if one != next {
                others.push(lines[..place].concat() + &swapped + &lines[place + 2..].concat());
            }
        }
        others
    };
    let differs = |rest: &str, parts: &[(u8, String)]| {
        let said = welcome(rest, parts);
        assert_eq!(said.disagreement(), Some(Disagreement::Schema(said.schema)));
    };
    for other in otherwise(&rest) {
        [&all[..], &[]].iter().for_each(|parts| differs(&other, parts));
    }
    for (place, (number, block)) in all.iter().enumerate() {
        for other in otherwise(block) {
            let mut parts = all.clone();
            parts[place].1 = other.clone();
            differs(&rest, &parts);
            differs(&rest, &[(*number, other)]);
        }
        // it says that it has a part more than it sums, or one less
        let whole = welcome(&rest, &all);
        let less = Welcome { parts: HERE & !(1 << number), ..whole };
        let more = Welcome { parts: HERE, ..welcome(&rest, &[&all[..place], &all[place + 1..]].concat()) };
        [less, more].iter().for_each(|said| assert_eq!(said.disagreement(), Some(Disagreement::Schema(said.schema))));
    }
}
