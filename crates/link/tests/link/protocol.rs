//! PROTOCOL.md says what the crate does: its tables and its bytes are read here.

use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::event::Event;
use ocellus_link::frame::Frame;
use ocellus_link::message::*;

use crate::line::{bytes, frames};

const TEXT: &str = include_str!("../../PROTOCOL.md");

/// The rows of the table below these headings.
fn rows(headings: &str) -> Vec<&'static str> {
    let (_, table) = TEXT.split_once(headings).unwrap();
    table.lines().skip(2).take_while(|line| line.starts_with('|')).collect()
}

#[test]
fn tables() {
    let messages: Vec<_> = TABLE
        .iter()
        .map(|row| {
            let fields = row.fields.iter().map(|(name, of)| format!("`{name}` {of}")).collect::<Vec<_>>().join(", ");
            format!("| 0x{:02X} | `{}` | {} | {fields} |", row.kind, row.name, row.size).replace("|  |", "| |")
        })
        .collect();
    assert_eq!(rows("| kind | message | bytes | fields |"), messages);
    let row = |number, word, text| format!("| {number} | `{word}` | {text} |");
    let outcomes: Vec<_> = Outcome::ALL.iter().map(|one| row(one.number(), one.word(), one.text())).collect();
    assert_eq!(rows("| number | outcome | means |"), outcomes);
    let refusals: Vec<_> = Refusal::ALL.iter().map(|one| row(one.number(), one.word(), one.text())).collect();
    assert_eq!(rows("| number | refusal | means |"), refusals);
}

/// The bytes below each heading that names a message.
fn examples() -> Vec<(&'static str, Vec<u8>)> {
    let (_, text) = TEXT.split_once("## Examples").unwrap();
    let example = |section: &'static str| {
        let (name, rest) = section.split_once('`').unwrap();
        let hex = rest.split_once("```hex").unwrap().1.split_once("```").unwrap().0;
        (name, hex.split_whitespace().map(|byte| u8::from_str_radix(byte, 16).unwrap()).collect())
    };
    text.split("### `").skip(1).map(example).collect()
}

fn filled<const N: usize>(text: &str) -> [u8; N] {
    let mut bytes = [0; N];
    bytes[..text.len()].copy_from_slice(text.as_bytes());
    bytes
}

/// What the examples say in words.
fn meant() -> Vec<(&'static str, Frame)> {
    const SUM: u32 = 0x89AB_CDEF;
    let two = Enter {
        count: 2,
        parts: [3, 4, 0, 0, 0, 0, 0],
        entries: [0; 7],
        values: [23.45, -0.25, 0.0, 0.0, 0.0, 0.0, 0.0],
    };
    let welcome = Welcome {
        version: 2,
        schema: 0x1234_5678,
        core: [0, 1, 0],
        largest_payload: 80,
        board: filled("demo"),
        parts: [1, 2, 16, 25, 26, 27].iter().fold(0, |bits, part| bits | 1 << part),
    };
    let built = Built { build: filled("0123abcd"), target: filled("thumbv6m-none-eabi") };
    let counted = Counted {
        frames: 1,
        bad: 2,
        too_long: 3,
        silences: 4,
        refused: 5,
        overruns: 6,
        typed: 7,
        stack_used: 2900,
        stack_size: 4096,
    };
    let wrong = WrongEvent { index: 6, code: 1, part: 3, entry: 0, has_value: 1, has_bounds: 1, value: 99.0 };
    let caution = CautionEvent { index: 3, part: 1, code: 0, entry_part: 4, entry: 2, method: 0 };
    vec![
        ("Hello", Frame::of(1, &Hello {})),
        ("Build", Frame::of(2, &Build {})),
        ("Begin", Frame::of(3, &Begin {})),
        ("Enter", Frame::of(4, &two)),
        ("EnterName", Frame::of(5, &EnterName { part: 2, entry: 0, length: 4, characters: filled("Demo") })),
        ("Plan", Frame::of(6, &Plan { case_sum: SUM })),
        ("Explain", Frame::of(7, &Explain { case_sum: SUM, part: 9, subject: 1 })),
        ("ReadBack", Frame::of(8, &ReadBack { case_sum: SUM })),
        ("Convert", Frame::of(9, &Convert { from: 4, to: 2, value: 500.0 })),
        ("Time", Frame::of(10, &Time { case_sum: SUM })),
        ("Counters", Frame::of(11, &Counters {})),
        ("Welcome", Frame::of(1, &welcome)),
        ("Built", Frame::of(2, &built)),
        ("Ack", Frame::of(3, &Ack {})),
        ("Done", Frame::of(6, &Done { count: 300, crc: 0xA1B2_C3D4, outcome: 0 })),
        ("Code", Frame::of(8, &Code { characters: *b"K7QM-4T" })),
        ("Converted", Frame::of(9, &Converted { value: 66.5 })),
        ("Timed", Frame::of(10, &Timed { ticks: 70_000, ticks_per_second: 25_000_000, events: 300 })),
        ("Counted", Frame::of(11, &counted)),
        ("Problem", Frame::of(4, &Refusal::NotAnEntry.about(3, 200))),
        ("PartEvent", Frame::of(6, &PartEvent { index: 0, part: 2 })),
        ("EntryEvent", Frame::of(6, &EntryEvent { index: 1, part: 3, entry: 0 })),
        ("ItemEvent", Frame::of(6, &ItemEvent { index: 258, part: 6, what: 7, method: 2, row: 0, value: 21.5 })),
        ("CautionEvent", Frame::of(6, &caution)),
        ("SignOffEvent", Frame::of(6, &SignOffEvent { index: 4, part: 2, line: 1 })),
        ("StepEvent", Frame::of(7, &StepEvent { index: 5, part: 9, table: 1, step: 2, value: -0.5 })),
        ("WrongEvent", Frame::of(6, &wrong)),
        ("LacksEvent", Frame::of(7, &LacksEvent { index: 7, part: 21, entry: 4 })),
    ]
}

/// The golden bytes of every message there is, both ways. They were made without this crate; they change only with the
/// version of the protocol.
#[test]
fn every_message_to_the_byte() {
    let (examples, meant) = (examples(), meant());
    let names: Vec<_> = TABLE.iter().map(|row| row.name).collect();
    assert_eq!(examples.iter().map(|(name, _)| *name).collect::<Vec<_>>(), names);
    assert_eq!(meant.iter().map(|(name, _)| *name).collect::<Vec<_>>(), names);
    for (((name, golden), (_, frame)), row) in examples.iter().zip(&meant).zip(TABLE) {
        assert_eq!(frame.kind(), row.kind, "{name}");
        assert_eq!(&bytes(frame), golden, "{name}");
        assert_eq!(frames(golden), std::slice::from_ref(frame), "{name}");
    }
}

/// Read as messages, they say what was meant.
#[test]
fn every_message_read() {
    for (name, frame) in meant() {
        let request = Request::of(&frame).map(|message| message.frame(frame.sequence()));
        let reply = Reply::of(&frame).map(|message| message.frame(frame.sequence()));
        let streamed = Streamed::of(&frame).map(|message| message.frame(frame.sequence()));
        let read: Vec<_> = [request, reply, streamed].into_iter().flatten().collect();
        assert_eq!(read, std::slice::from_ref(&frame), "{name}");
        // and what they name is there
        let event = Streamed::of(&frame).map(|message| Event::of(&message).map(|(index, event)| event.message(index)));
        assert_eq!(event, Streamed::of(&frame).map(Some), "{name}");
    }
}
