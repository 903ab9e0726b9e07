//! Any message there is, to bytes and back.

use std::collections::{BTreeMap, BTreeSet, HashSet};

use ocellus_card::caution::Caution;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use ocellus_card::item::Item;
use ocellus_card::workings;
use ocellus_core::lens::method::Method;
use ocellus_core::working::Step;
use ocellus_link::event::Event;
use ocellus_link::frame::{Frame, LARGEST_PAYLOAD, VERSION};
use ocellus_link::message::*;
use ocellus_link::receiver::{Received, Receiver};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

use crate::line::{bytes, frames, pairs};
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
        let wire = envelope(VERSION, row.kind, sequence, &payload);
        let [frame] = &frames(&wire)[..] else { panic!("{wire:?}") };
        prop_assert_eq!((frame.kind(), frame.sequence(), frame.payload()), (row.kind, sequence, &payload[..]));
        prop_assert_eq!(again(frame), Some(frame.clone()));
        prop_assert_eq!(bytes(frame), wire);
    }

    /// A payload of any other size is not a message.
    #[test]
    fn another_size_is_no_message(row in select(TABLE), payload in vec(any::<u8>(), 0..=LARGEST_PAYLOAD), sequence: u8) {
        prop_assume!(payload.len() != row.size);
        let [frame] = &frames(&envelope(VERSION, row.kind, sequence, &payload))[..] else { panic!() };
        prop_assert_eq!(again(frame), None);
    }

    /// An event that is taken is the event that was sent, bit for bit.
    #[test]
    fn events_to_messages_and_back((row, payload) in message(0xC0)) {
        let [frame] = &frames(&envelope(VERSION, row.kind, 0, &payload))[..] else { panic!() };
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

/// Every event there is but for its values and rows: of every part, entry, number, caution, line to tick and step, with every
/// method, and every way in which every entry can be wrong.
fn every_event() -> Vec<Event> {
    let values = [0.0, -0.0, 23.45, f64::MIN_POSITIVE, f64::MAX, -1e-300];
    let mut values = values.into_iter().cycle();
    let mut next = || values.next().unwrap();
    let methods = || [None].into_iter().chain(Method::ALL.iter().copied().map(Some));
    let mut events: Vec<Event> = PartId::all().map(Event::Part).collect();
    events.extend(EntryId::all().flat_map(|entry| [Event::Entry(entry), Event::Lacks(entry)]));
    events.extend(SignOffId::all().map(Event::SignOff));
    for what in ItemId::all() {
        let item = |(row, method)| Event::Item(Item { what, method, row, value: next() });
        events.extend((0..=u8::MAX).step_by(17).flat_map(|row| methods().map(move |method| (row, method))).map(item));
    }
    for code in CautionId::all() {
        events.extend(methods().map(|method| Event::Caution(Caution { code, entry: None, method })));
        events.extend(EntryId::all().map(|entry| Event::Caution(Caution { code, entry: Some(entry), method: None })));
    }
    // methods may share a table
    let tables: BTreeMap<_, _> = workings::all().map(|table| (workings::numbers(table), table)).collect();
    for table in tables.into_values() {
        events.extend((0..table.count()).map(|step| Event::Step(Step { table, index: step as u8, value: next() })));
    }
    for entry in EntryId::all() {
        let limits = match entry.kind() {
            Kind::Number(_, bounds) => vec![None, Some(bounds)],
            _ => vec![None],
        };
        for (wrong, bounds) in Wrong::ALL.iter().flat_map(|wrong| limits.iter().map(|bounds| (*wrong, *bounds))) {
            let error = |value| Event::Wrong(Error { wrong, entry, value, bounds });
            events.extend([error(None), error(Some(next()))]);
        }
    }
    events
}

/// Over the line and back each is the same, bit for bit, and no two are one message.
#[test]
fn every_event_over_the_line() {
    let all = every_event();
    let mut seen = HashSet::new();
    for (event, index) in all.iter().zip((0..=u16::MAX).cycle()) {
        let message = event.message(index);
        let [frame] = &frames(&bytes(&message.frame(3)))[..] else { panic!("{event:?}") };
        assert_eq!(Streamed::of(frame), Some(message), "{event:?}");
        assert_eq!(Event::of(&message), Some((index, *event)));
        assert_eq!(Event::of(&message).unwrap().1.message(index).frame(3), *frame, "{event:?}");
        assert!(seen.insert((frame.kind(), event.message(0).frame(0).payload().to_vec())), "{event:?}");
    }
}

/// What no table here has is not an event: of all parts and numbers just those are taken that there are.
#[test]
fn just_what_there_is() {
    let taken = |message: &dyn Fn(u8, u8) -> Streamed| -> BTreeSet<(u8, u8)> {
        pairs().filter(|(part, number)| Event::of(&message(*part, *number)).is_some()).collect()
    };
    let entries: BTreeSet<_> = EntryId::all().map(|of| (of.part().0, of.number())).collect();
    let items: BTreeSet<_> = ItemId::all().map(|of| (of.part().0, of.number())).collect();
    let cautions: BTreeSet<_> = CautionId::all().map(|of| (of.part().0, of.number())).collect();
    let lines: BTreeSet<_> = SignOffId::all().map(|of| (of.part().0, of.number())).collect();
    let tables: BTreeSet<_> = workings::all().map(|table| workings::numbers(table).unwrap()).collect();
    assert_eq!(taken(&|part, entry| EntryEvent { index: 0, part, entry }.into()), entries);
    assert_eq!(taken(&|part, entry| LacksEvent { index: 0, part, entry }.into()), entries);
    let wrong = WrongEvent { index: 0, code: 0, part: 0, entry: 0, has_value: 0, has_bounds: 0, value: 0.0 };
    assert_eq!(taken(&|part, entry| WrongEvent { part, entry, ..wrong }.into()), entries);
    let item = |part, what| ItemEvent { index: 0, part, what, method: 0, row: 0, value: 0.0 }.into();
    assert_eq!(taken(&item), items);
    let (part, code) = *cautions.first().unwrap();
    let about = CautionEvent { index: 0, part, code, entry_part: 0, entry: 0, method: 0 };
    assert_eq!(taken(&|part, code| CautionEvent { part, code, ..about }.into()), cautions);
    let or_none = entries.iter().copied().chain([(0, 0)]).collect();
    assert_eq!(taken(&|entry_part, entry| CautionEvent { entry_part, entry, ..about }.into()), or_none);
    assert_eq!(taken(&|part, line| SignOffEvent { index: 0, part, line }.into()), lines);
    assert_eq!(taken(&|part, table| StepEvent { index: 0, part, table, step: 0, value: 0.0 }.into()), tables);
    for (part, table) in tables {
        let count = workings::find((part, table)).unwrap().count();
        let taken = (0..=u8::MAX)
            .filter(|step| Event::of(&StepEvent { index: 0, part, table, step: *step, value: 0.0 }.into()).is_some());
        assert!(taken.map(usize::from).eq(0..count), "{part}.{table}");
    }
    let taken = (0..=u8::MAX).filter(|part| Event::of(&PartEvent { index: 0, part: *part }.into()).is_some());
    assert_eq!(taken.collect::<BTreeSet<_>>(), PartId::all().map(|part| part.0).collect());
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

/// Messages of one size differ by their kind alone.
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
        assert_eq!(frames(&envelope(VERSION, 0x7F, 0, &vec![5; size])).len(), usize::from(taken), "{size}");
    }
    let largest = TABLE.iter().map(|row| row.size).max().unwrap();
    assert_eq!(largest, 71, "seven entries");
}

#[test]
fn frames_of_another_version_are_distinguished() {
    let mut receiver = Receiver::new();
    for version in [0, 1, 2, 3, 255] {
        let last = envelope(version, 1, 0, &[]).iter().map(|byte| receiver.push(*byte, 0)).last();
        let Some(Received::Frame(frame)) = last else { panic!("{last:?}") };
        assert_eq!(frame.version(), version);
    }
}
