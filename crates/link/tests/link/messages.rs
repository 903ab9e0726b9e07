//! Any message there is, to bytes and back.

use ocellus_link::event::Event;
use ocellus_link::frame::{Frame, LARGEST_PAYLOAD};
use ocellus_link::message::*;
use ocellus_link::receiver::{Received, Receiver};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

use crate::line::{bytes, frames};
use crate::outside::envelope;

/// The message of a frame, whichever it is, framed again.
fn again(frame: &Frame) -> Option<Frame> {
    let sequence = frame.sequence();
    let request = Request::of(frame).map(|message| message.frame(sequence));
    let reply = Reply::of(frame).map(|message| message.frame(sequence));
    let streamed = Streamed::of(frame).map(|message| message.frame(sequence));
    request.or(reply).or(streamed)
}

/// A row of the table from this kind on, and a payload of its size, zeros among it.
fn message(first: u8) -> impl Strategy<Value = (Row, Vec<u8>)> {
    let rows: Vec<Row> = TABLE.iter().copied().filter(|row| row.kind >= first).collect();
    select(rows).prop_flat_map(|row| (Just(row), vec(prop_oneof![any::<u8>(), Just(0)], row.size)))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4096))]

    /// Every payload of the right size is a message, and that message has this payload and no other: bit patterns of any
    /// f64 among them.
    #[test]
    fn to_bytes_and_back((row, payload) in message(0), sequence: u8) {
        let wire = envelope(1, row.kind, sequence, &payload);
        let [frame] = &frames(&wire)[..] else { panic!("{wire:?}") };
        prop_assert_eq!((frame.kind(), frame.sequence(), frame.payload()), (row.kind, sequence, &payload[..]));
        prop_assert_eq!(again(frame), Some(frame.clone()));
        prop_assert_eq!(bytes(frame), wire);
    }

    /// A payload of any other size is no message.
    #[test]
    fn another_size_is_no_message(row in select(TABLE), payload in vec(any::<u8>(), 0..=LARGEST_PAYLOAD), sequence: u8) {
        prop_assume!(payload.len() != row.size);
        let [frame] = &frames(&envelope(1, row.kind, sequence, &payload))[..] else { panic!() };
        prop_assert_eq!(again(frame), None);
    }

    /// An event that is taken is the event that was sent, bit for bit.
    #[test]
    fn events_to_messages_and_back((row, payload) in message(0xC0)) {
        let [frame] = &frames(&envelope(1, row.kind, 0, &payload))[..] else { panic!() };
        let sent = Streamed::of(frame).unwrap();
        if let Some((index, event)) = Event::of(&sent) {
            let returned = event.message(index).frame(0);
            // the value of an error that has none is not looked at
            if !matches!(sent, Streamed::WrongEvent(WrongEvent { has_value: 0, .. })) {
                prop_assert_eq!(&returned, frame);
            }
        }
    }
}

#[test]
fn kinds_say_who_sends_them() {
    let kinds: Vec<u8> = TABLE.iter().map(|row| row.kind).collect();
    assert!(kinds.is_sorted_by(|a, b| a < b), "append-only, each once: {kinds:02X?}");
    for row in TABLE {
        let expected = (row.kind < 0x80, (0x80..0xC0).contains(&row.kind), row.kind >= 0xC0);
        assert_eq!((Request::has(row.kind), Reply::has(row.kind), Streamed::has(row.kind)), expected, "{row:?}");
    }
}

/// Messages of one size are told apart by their kind alone.
#[test]
fn another_kind_is_another_message() {
    let sum = Frame::of(1, &Plan { case_sum: 7 });
    assert_eq!((Plan::of(&sum).is_some(), ReadBack::of(&sum), Time::of(&sum)), (true, None, None));
    let empty = Frame::of(1, &Ack {});
    assert_eq!((Ack::of(&empty).is_some(), Hello::of(&empty), Begin::of(&empty)), (true, None, None));
}

/// The largest there can be is taken, one byte more is not.
#[test]
fn largest_payload() {
    for (size, taken) in [(LARGEST_PAYLOAD, true), (LARGEST_PAYLOAD + 1, false), (200, false)] {
        assert_eq!(frames(&envelope(1, 0x7F, 0, &vec![5; size])).len(), usize::from(taken), "{size}");
    }
    let largest = TABLE.iter().map(|row| row.size).max().unwrap();
    assert_eq!(largest, 73, "eight entries");
}

#[test]
fn frames_of_another_version_are_told_apart() {
    let mut receiver = Receiver::new();
    let last = envelope(2, 1, 0, &[]).iter().map(|byte| receiver.push(*byte, 0)).last();
    let Some(Received::Frame(frame)) = last else { panic!("{last:?}") };
    assert_eq!(frame.version(), 2);
}
