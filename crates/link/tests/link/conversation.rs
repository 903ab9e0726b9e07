//! Desk and device, request by request.

use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::error::Error;
use ocellus_core::explain::{Subject, explain};
use ocellus_core::field::{Field, Kind};
use ocellus_core::plan::plan;
use ocellus_core::pressure::unit::{Unit, convert};
use ocellus_core::readback;
use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::collect::{Answer, Collector, Failure, Progress, reply};
use ocellus_link::entries::{case_sum, requests, text};
use ocellus_link::event::Events;
use ocellus_link::frame::Frame;
use ocellus_link::message::*;
use ocellus_link::receiver::Tally;
use ocellus_link::respond::{LOST, Responder};
use ocellus_link::schema::{CORE, Disagreement, SCHEMA};

use crate::line::{bytes, drafts, frames, say};
use crate::outside::{crc32, envelope};

/// Asks for one message.
fn ask<M: Message>(device: &mut Responder, request: impl Into<Request>) -> Result<M, Failure> {
    let frames = say(device, &bytes(&request.into().frame(9)));
    assert_eq!(frames.len(), 1);
    reply(&frames[0], 9)
}

/// Asks for a stream.
fn stream(device: &mut Responder, request: impl Into<Request>) -> Result<Answer, Failure> {
    let mut collector = Collector::new(9);
    for frame in say(device, &bytes(&request.into().frame(9))) {
        match collector.take(&frame)? {
            Progress::More(more) => collector = more,
            Progress::Whole(answer) => return Ok(answer),
        }
    }
    panic!("a stream without an end")
}

fn refused<T>(answer: Result<T, Failure>) -> Option<(Refusal, u8)> {
    match answer.err()? {
        Failure::Refused(Problem { refusal, detail }) => Refusal::from_number(refusal).map(|refusal| (refusal, detail)),
        other => panic!("{other}"),
    }
}

/// A device that holds this draft.
fn holding(draft: &Draft) -> Responder {
    let mut device = Responder::new();
    requests(draft, &mut |request| assert_eq!(ask(&mut device, request), Ok(Ack {})));
    device
}

/// Everything is what this machine computes from the same draft, bit for bit: values are compared as core's own types, and
/// none of them is NaN or a zero with a sign of its own.
#[test]
fn demo_cases() {
    for (name, draft) in drafts() {
        let mut device = holding(&draft);
        let (sum, case) = (case_sum(&draft), Case::try_from(&draft).unwrap());
        let mut here = Events::default();
        plan(&case, &mut here);
        let there = stream(&mut device, Plan { case_sum: sum }).unwrap();
        let bits = |events: &[ocellus_link::event::Event]| {
            events.iter().zip(0..).map(|(event, index)| event.message(index).frame(0)).collect::<Vec<_>>()
        };
        assert_eq!(there.outcome, Outcome::Answered, "{name}");
        assert_eq!(bits(&there.events), bits(&here.0), "{name}");
        for subject in Subject::all() {
            let mut here = Events::default();
            let steps = explain(subject, &case, &mut here);
            let there = stream(&mut device, Explain { case_sum: sum, subject: subject.number() }).unwrap();
            assert_eq!(there.outcome, if steps { Outcome::Answered } else { Outcome::Nothing }, "{name} {subject:?}");
            assert_eq!(bits(&there.events), bits(&here.0), "{name} {subject:?}");
        }
        let code: Code = ask(&mut device, ReadBack { case_sum: sum }).unwrap();
        assert_eq!(text(&code.characters), readback::of(&case, None).unwrap().as_str(), "{name}");
        let timed: Timed = ask(&mut device, Time { case_sum: sum }).unwrap();
        let expected = Timed { ticks: u32::MAX / 2, ticks_per_second: 25_000_000, events: here.0.len() as u16 };
        assert_eq!(timed, expected, "{name}");
    }
}

/// The sum of a case is that which PROTOCOL.md describes.
#[test]
fn case_sum_as_described() {
    for (name, draft) in drafts() {
        let mut covered = Vec::new();
        for (&field, number) in Field::ALL.iter().zip(0..) {
            if let Some(value) = draft.number(field) {
                covered.push(number);
                covered.extend(value.to_bits().to_le_bytes());
            }
            if let Some(text) = draft.name(field).map(|name| name.as_str()) {
                covered.extend([number, text.len() as u8]);
                covered.extend(text.as_bytes());
            }
        }
        assert_eq!(case_sum(&draft), crc32(&covered), "{name}");
    }
}

#[test]
fn who_is_there() {
    let welcome: Welcome = ask(&mut Responder::new(), Hello {}).unwrap();
    assert_eq!(text(&welcome.board), "a board whose na");
    assert_eq!((welcome.disagreement(), welcome.core), (None, CORE));
    let differs = |welcome: Welcome| welcome.disagreement().unwrap();
    assert_eq!(differs(Welcome { version: 2, ..welcome }), Disagreement::Version(2));
    assert_eq!(differs(Welcome { schema: !SCHEMA, ..welcome }), Disagreement::Schema(!SCHEMA));
    assert_eq!(differs(Welcome { largest_payload: 81, ..welcome }), Disagreement::LargestPayload(81));
    let built: Built = ask(&mut Responder::new(), Build {}).unwrap();
    assert_eq!((text(&built.build), text(&built.target)), ("0123abcd", "host"));
}

/// Only who is here is told to another version, whatever it adds to the question.
#[test]
fn another_version() {
    let mut device = Responder::new();
    for payload in [&[][..], &[1, 2, 3]] {
        let answer = say(&mut device, &envelope(2, Hello::KIND, 9, payload));
        assert_eq!(reply::<Welcome>(&answer[0], 9).unwrap().disagreement(), None);
    }
    for kind in [Build::KIND, Plan::KIND, 0x7F] {
        let answer = say(&mut device, &envelope(2, kind, 9, &[]));
        assert_eq!(refused(reply::<Ack>(&answer[0], 9)), Some((Refusal::WrongVersion, 1)));
    }
}

#[test]
fn what_is_no_request() {
    let mut device = Responder::new();
    for (kind, payload, refusal) in [
        (0x7F, &[][..], Refusal::UnknownKind),
        (0x00, &[], Refusal::UnknownKind),
        (Plan::KIND, &[1, 2, 3], Refusal::WrongSize),
        (Plan::KIND, &[1, 2, 3, 4, 5], Refusal::WrongSize),
        (Hello::KIND, &[0], Refusal::WrongSize),
    ] {
        let answer = say(&mut device, &envelope(1, kind, 9, payload));
        assert_eq!(refused(reply::<Ack>(&answer[0], 9)), Some((refusal, kind)));
    }
    // a line that gives back what is sent must not keep two devices talking
    for kind in [Ack::KIND, Problem::KIND, PartEvent::KIND, 0xFF] {
        assert_eq!(say(&mut device, &envelope(1, kind, 9, &[])), []);
    }
    let counted: Counted = ask(&mut device, Counters {}).unwrap();
    assert_eq!((counted.frames, counted.refused), (10, 9));
}

#[test]
fn what_is_no_entry() {
    let mut device = Responder::new();
    let none = Enter { count: 0, fields: [0; ENTRIES], values: [0.0; ENTRIES] };
    let al = Field::AxialLength as u8;
    let enter = |device: &mut Responder, enter| refused(ask::<Ack>(device, enter));
    assert_eq!(enter(&mut device, Enter { count: 9, ..none }), Some((Refusal::TooMany, 9)));
    // one that is refused takes the others with it
    for wrong in [Field::COUNT as u8, 255, Field::Id as u8, Field::LensModel as u8] {
        let fields = [al, wrong, 0, 0, 0, 0, 0, 0];
        assert_eq!(enter(&mut device, Enter { count: 2, fields, ..none }), Some((Refusal::NotAnEntry, wrong)));
        assert_eq!(stream(&mut device, Plan { case_sum: 0 }).unwrap().outcome, Outcome::NotACase);
    }
    let mut name = |field: u8, text: &str, length| {
        let mut characters = [0; 24];
        characters[..text.len()].copy_from_slice(text.as_bytes());
        refused(ask::<Ack>(&mut device, EnterName { field, length, characters }))
    };
    let id = Field::Id as u8;
    assert_eq!(name(id, "Demo", 4), None);
    for (text, length) in
        [("Demo", 0), ("Demo", 25), ("Demo", 255), (" Demo", 5), ("Demo ", 5), ("De\u{e9}", 4), ("D\n", 2)]
    {
        assert_eq!(name(id, text, length), Some((Refusal::NotAName, id)), "{text:?} {length}");
    }
    for field in [al, 255] {
        assert_eq!(name(field, "Demo", 4), Some((Refusal::NotAnEntry, field)));
    }
}

/// A device that was reset, or missed an entry, plans nothing.
#[test]
fn another_case() {
    let (_, draft) = drafts().remove(0);
    let sum = case_sum(&draft);
    let mut missed = Responder::new();
    let mut count = 0;
    requests(&draft, &mut |request| {
        count += 1;
        if count != 3 {
            ask::<Ack>(&mut missed, request).unwrap();
        }
    });
    for mut device in [Responder::new(), missed] {
        let differs = Some((Refusal::CaseDiffers, 0));
        assert_eq!(refused(stream(&mut device, Plan { case_sum: sum })), differs);
        assert_eq!(refused(stream(&mut device, Explain { case_sum: sum, subject: 0 })), differs);
        assert_eq!(refused(ask::<Code>(&mut device, ReadBack { case_sum: sum })), differs);
        assert_eq!(refused(ask::<Timed>(&mut device, Time { case_sum: sum })), differs);
    }
    let mut device = holding(&draft);
    assert_eq!(stream(&mut device, Plan { case_sum: sum }).unwrap().outcome, Outcome::Answered);
    ask::<Ack>(&mut device, Begin {}).unwrap();
    assert_eq!(refused(stream(&mut device, Plan { case_sum: sum })), Some((Refusal::CaseDiffers, 0)));
    assert_eq!(stream(&mut device, Plan { case_sum: case_sum(&Draft::EMPTY) }).unwrap().outcome, Outcome::NotACase);
}

/// Every entry out of its range, one at a time: the device finds what this machine finds, limits included.
#[test]
fn no_case() {
    let (_, whole) = drafts().into_iter().find(|(name, _)| name.contains("long-toric")).unwrap();
    let mut told = 0;
    for &field in Field::ALL {
        let mut draft = whole.clone();
        match field.kind() {
            Kind::Number(_, bounds) => draft.set(field, bounds.max * 2.0 + 1.0),
            Kind::Choice(_) => draft.set(field, 0.5),
            Kind::Date => draft.set(field, f64::INFINITY),
            Kind::Name => continue,
        }
        let mut here: Vec<Error> = Vec::new();
        let case = Case::check(&draft, &mut |error| here.push(error)).is_some();
        let mut device = holding(&draft);
        let answer = stream(&mut device, Plan { case_sum: case_sum(&draft) }).unwrap();
        assert_eq!(answer.outcome, if case { Outcome::Answered } else { Outcome::NotACase }, "{field:?}");
        assert_eq!(answer.wrong().collect::<Vec<_>>(), here, "{field:?}");
        told += here.len();
        let code = ask::<Code>(&mut device, ReadBack { case_sum: case_sum(&draft) });
        if !case {
            assert_eq!(refused(code), Some((Refusal::NotACase, 0)));
        }
    }
    assert!(told > 50);
}

#[test]
fn no_read_back() {
    let (_, mut draft) = drafts().remove(0);
    draft.set(Field::AxialLength, 23.456);
    let mut device = holding(&draft);
    let code = ask::<Code>(&mut device, ReadBack { case_sum: case_sum(&draft) });
    assert_eq!(refused(code), Some((Refusal::NoReadBack, Field::AxialLength as u8 + 1)));
}

#[test]
fn no_subject() {
    let (_, draft) = drafts().remove(0);
    for subject in [11, 127, 200, 255] {
        let answer = stream(&mut holding(&draft), Explain { case_sum: case_sum(&draft), subject });
        assert_eq!(refused(answer), Some((Refusal::NotASubject, subject)));
    }
}

#[test]
fn pressures() {
    let mut device = Responder::new();
    let mut converted = |from, to, value| ask::<Converted>(&mut device, Convert { from, to, value });
    for &from in Unit::ALL {
        for &to in Unit::ALL {
            let answer = converted(from as u8, to as u8, 123.456).unwrap();
            assert_eq!(answer.value.to_bits(), convert(123.456, from, to).to_bits());
        }
    }
    let beyond = Unit::ALL.len() as u8;
    assert_eq!(refused(converted(beyond, 0, 1.0)), Some((Refusal::NotAUnit, beyond)));
    assert_eq!(refused(converted(0, 255, 1.0)), Some((Refusal::NotAUnit, 255)));
    for value in [f64::NAN, f64::INFINITY, f64::MAX] {
        assert_eq!(refused(converted(Unit::Atm as u8, Unit::Pa as u8, value)), Some((Refusal::NotFinite, 0)));
    }
}

/// The device hands on what is typed, marks what may be missing of it, and counts everything.
#[test]
fn counters() {
    let mut device = Responder::new();
    let board = crate::line::Board::default();
    let damaged: Vec<u8> =
        bytes(&Frame::of(1, &Hello {})).into_iter().map(|byte| if byte == 8 { 7 } else { byte }).collect();
    let (mut now, mut typed, mut answer) = (0, Vec::new(), Vec::new());
    let too_long = [[0].as_slice(), &[0xFF; 100]].concat();
    for piece in [&b"al 23"[..], &[0, 5], b".45", &damaged, &too_long, &bytes(&Frame::of(1, &Counters {}))] {
        typed.extend(piece.iter().filter_map(|byte| device.push(*byte, now, &board, &mut |byte| answer.push(byte))));
        now += 250;
        typed.extend(device.tick(now));
    }
    // each broken frame may have swallowed typed text, and leaves its mark there
    assert_eq!(typed, [b"al 23", &[LOST][..], b".45", &[LOST, LOST]].concat());
    let counted: Counted = reply(&frames(&answer)[0], 1).unwrap();
    assert_eq!(device.tally(), Tally { frames: 1, bad: 1, too_long: 1, silences: 1, typed: 8 });
    let expected = Counted {
        frames: 1,
        bad: 1,
        too_long: 1,
        silences: 1,
        refused: 0,
        overruns: 3,
        typed: 8,
        stack_used: 2900,
        stack_size: 4096,
    };
    assert_eq!(counted, expected);
}
