//! Desk and device, request by request.

use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::error::Error;
use ocellus_card::id::{EntryId, PartId};
use ocellus_card::schema::HERE;
use ocellus_card::{Subject, entries, readback};
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::collect::{Answer, Collector, Failure, Progress, reply};
use ocellus_link::entries::{case_sum, requests, text};
use ocellus_link::event::{Event, Events};
use ocellus_link::frame::{Frame, VERSION};
use ocellus_link::message::*;
use ocellus_link::receiver::Tally;
use ocellus_link::respond::{LOST, Responder};
use ocellus_link::schema::{CORE, Disagreement, SCHEMA};

use crate::line::{bytes, drafts, frames, pairs, say};
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

/// Why it was refused, and about which numbers: a part or 0, and what stands with the refusal.
fn refused<T>(answer: Result<T, Failure>) -> Option<(Refusal, u8, u8)> {
    match answer.err()? {
        Failure::Refused(Problem { refusal, part, detail }) => {
            Refusal::from_number(refusal).map(|refusal| (refusal, part, detail))
        }
        other => panic!("{other}"),
    }
}

/// The numbers of an entry.
fn numbers(entry: impl Into<EntryId>) -> (u8, u8) {
    let entry = entry.into();
    (entry.part().0, entry.number())
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
    let (mut lacked, mut parts) = (0, Vec::new());
    for (name, draft) in drafts() {
        let mut device = holding(&draft);
        let (sum, case) = (case_sum(&draft), Case::try_from(&draft).unwrap());
        let mut here = Events::default();
        case.plan(&mut here);
        let there = stream(&mut device, Plan { case_sum: sum }).unwrap();
        let bits = |events: &[Event]| {
            events.iter().zip(0..).map(|(event, index)| event.message(index).frame(0)).collect::<Vec<_>>()
        };
        assert_eq!(there.outcome, Outcome::Answered, "{name}");
        assert_eq!(bits(&there.events), bits(&here.0), "{name}");
        for subject in Subject::all() {
            let mut here = Events::default();
            let steps = case.explain(subject, &mut here);
            let (part, subject) = subject.numbers();
            let there = stream(&mut device, Explain { case_sum: sum, part, subject }).unwrap();
            assert_eq!(
                there.outcome,
                if steps { Outcome::Answered } else { Outcome::Nothing },
                "{name} {part}.{subject}"
            );
            assert_eq!(bits(&there.events), bits(&here.0), "{name} {part}.{subject}");
            lacked += there.events.iter().filter(|event| matches!(event, Event::Lacks(_))).count();
        }
        let code: Code = ask(&mut device, ReadBack { case_sum: sum }).unwrap();
        assert_eq!(text(&code.characters), readback::of(&case, None).unwrap().as_str(), "{name}");
        let timed: Timed = ask(&mut device, Time { case_sum: sum }).unwrap();
        let expected = Timed { ticks: u32::MAX / 2, ticks_per_second: 25_000_000, events: here.0.len() as u16 };
        assert_eq!(timed, expected, "{name}");
        parts.extend(here.0.iter().filter_map(|event| if let Event::Part(part) = event { Some(*part) } else { None }));
    }
    // what no case has is not compared
    let shown = |key: &&str| parts.iter().any(|part| part.key().is(key));
    assert!(lacked > 100);
    assert!(["lens", "axis", "turn", "backup", "second", "chamber", "sign_off"].iter().all(shown));
}

/// The sum of a case is that which PROTOCOL.md describes.
#[test]
fn case_sum_as_described() {
    for (name, draft) in drafts() {
        let mut covered = Vec::new();
        let mut all: Vec<EntryId> = EntryId::all().collect();
        all.sort_by_key(|entry| numbers(*entry));
        for entry in all {
            let (part, number) = numbers(entry);
            if let Some(value) = draft.number(entry) {
                covered.extend([part, number]);
                covered.extend(value.to_bits().to_le_bytes());
            }
            if let Some(text) = draft.name(entry).map(|name| name.as_str()) {
                covered.extend([part, number, text.len() as u8]);
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
    assert_eq!((welcome.disagreement(), welcome.core, welcome.parts), (None, CORE, HERE));
    let differs = |welcome: Welcome| welcome.disagreement().unwrap();
    assert_eq!(differs(Welcome { version: 1, ..welcome }), Disagreement::Version(1));
    assert_eq!(differs(Welcome { version: 3, ..welcome }), Disagreement::Version(3));
    assert_eq!(differs(Welcome { schema: !SCHEMA, ..welcome }), Disagreement::Schema(!SCHEMA));
    assert_eq!(differs(Welcome { largest_payload: 81, ..welcome }), Disagreement::LargestPayload(81));
    let built: Built = ask(&mut Responder::new(), Build {}).unwrap();
    assert_eq!((text(&built.build), text(&built.target)), ("0123abcd", "host"));
}

/// Another version is answered only who is here, whatever it adds to the question.
#[test]
fn another_version() {
    let mut device = Responder::new();
    for other in [0, 1, 3, 255] {
        for payload in [&[][..], &[1, 2, 3]] {
            let answer = say(&mut device, &envelope(other, Hello::KIND, 9, payload));
            assert_eq!(reply::<Welcome>(&answer[0], 9).unwrap().disagreement(), None);
        }
        for kind in [Build::KIND, Plan::KIND, 0x7F] {
            let answer = say(&mut device, &envelope(other, kind, 9, &[]));
            assert_eq!(refused(reply::<Ack>(&answer[0], 9)), Some((Refusal::WrongVersion, 0, VERSION)));
        }
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
        let answer = say(&mut device, &envelope(VERSION, kind, 9, payload));
        assert_eq!(refused(reply::<Ack>(&answer[0], 9)), Some((refusal, 0, kind)));
    }
    // a line that gives back what is sent must not keep two devices talking
    for kind in [Ack::KIND, Problem::KIND, PartEvent::KIND, 0xFF] {
        assert_eq!(say(&mut device, &envelope(VERSION, kind, 9, &[])), []);
    }
    let counted: Counted = ask(&mut device, Counters {}).unwrap();
    assert_eq!((counted.frames, counted.refused), (10, 9));
}

#[test]
fn what_is_no_entry() {
    let mut device = Responder::new();
    let none = Enter { count: 0, parts: [0; ENTRIES], entries: [0; ENTRIES], values: [0.0; ENTRIES] };
    let (al, id) = (numbers(entries::AXIAL_LENGTH), numbers(entries::ID));
    let enter = |device: &mut Responder, enter| refused(ask::<Ack>(device, enter));
    assert_eq!(enter(&mut device, Enter { count: 8, ..none }), Some((Refusal::TooMany, 0, 8)));
    // one that is refused takes the others with it
    let known: Vec<_> = EntryId::all().filter(|entry| entry.kind() != Kind::Name).map(numbers).collect();
    assert!(known.contains(&al) && !known.contains(&id));
    for wrong in pairs().filter(|pair| !known.contains(pair)) {
        let (parts, entries) = ([al.0, wrong.0, 0, 0, 0, 0, 0], [al.1, wrong.1, 0, 0, 0, 0, 0]);
        let problem = enter(&mut device, Enter { count: 2, parts, entries, ..none });
        assert_eq!(problem, Some((Refusal::NotAnEntry, wrong.0, wrong.1)));
    }
    assert_eq!(stream(&mut device, Plan { case_sum: 0 }).unwrap().outcome, Outcome::NotACase);
    let mut name = |(part, entry): (u8, u8), text: &str, length| {
        let mut characters = [0; 24];
        characters[..text.len()].copy_from_slice(text.as_bytes());
        refused(ask::<Ack>(&mut device, EnterName { part, entry, length, characters }))
    };
    assert_eq!(name(id, "Demo", 4), None);
    for (text, length) in
        [("Demo", 0), ("Demo", 25), ("Demo", 255), (" Demo", 5), ("Demo ", 5), ("De\u{e9}", 4), ("D\n", 2)]
    {
        assert_eq!(name(id, text, length), Some((Refusal::NotAName, id.0, id.1)), "{text:?} {length}");
    }
    for other in [al, (0, 0), (id.0, 255), (255, 0), (PartId::all().map(|part| part.0).max().unwrap() + 1, 0)] {
        assert_eq!(name(other, "Demo", 4), Some((Refusal::NotAnEntry, other.0, other.1)));
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
        let differs = Some((Refusal::CaseDiffers, 0, 0));
        assert_eq!(refused(stream(&mut device, Plan { case_sum: sum })), differs);
        assert_eq!(refused(stream(&mut device, Explain { case_sum: sum, part: 0, subject: 0 })), differs);
        assert_eq!(refused(ask::<Code>(&mut device, ReadBack { case_sum: sum })), differs);
        assert_eq!(refused(ask::<Timed>(&mut device, Time { case_sum: sum })), differs);
    }
    let mut device = holding(&draft);
    assert_eq!(stream(&mut device, Plan { case_sum: sum }).unwrap().outcome, Outcome::Answered);
    ask::<Ack>(&mut device, Begin {}).unwrap();
    assert_eq!(refused(stream(&mut device, Plan { case_sum: sum })), Some((Refusal::CaseDiffers, 0, 0)));
    assert_eq!(stream(&mut device, Plan { case_sum: case_sum(&Draft::EMPTY) }).unwrap().outcome, Outcome::NotACase);
}

/// Every entry out of its range, one at a time: the device finds what this machine finds, limits included.
#[test]
fn no_case() {
    let (_, whole) = drafts().into_iter().find(|(name, _)| name.contains("long-toric")).unwrap();
    let mut told = 0;
    for entry in EntryId::all() {
        let mut draft = whole.clone();
        match entry.kind() {
            Kind::Number(_, bounds) => draft.set(entry, bounds.max * 2.0 + 1.0),
            Kind::Choice(_) => draft.set(entry, 0.5),
            Kind::Date => draft.set(entry, f64::INFINITY),
            Kind::Name => continue,
        }
        let mut here: Vec<Error> = Vec::new();
        let case = Case::check(&draft, &mut |error| here.push(error)).is_some();
        let mut device = holding(&draft);
        let answer = stream(&mut device, Plan { case_sum: case_sum(&draft) }).unwrap();
        assert_eq!(answer.outcome, if case { Outcome::Answered } else { Outcome::NotACase }, "{entry:?}");
        assert_eq!(answer.wrong().collect::<Vec<_>>(), here, "{entry:?}");
        told += here.len();
        let code = ask::<Code>(&mut device, ReadBack { case_sum: case_sum(&draft) });
        if !case {
            assert_eq!(refused(code), Some((Refusal::NotACase, 0, 0)));
        }
    }
    assert!(told > 50);
}

#[test]
fn no_read_back() {
    let (_, mut draft) = drafts().remove(0);
    draft.set(entries::AXIAL_LENGTH, 23.456);
    let mut device = holding(&draft);
    let code = ask::<Code>(&mut device, ReadBack { case_sum: case_sum(&draft) });
    let (part, number) = numbers(entries::AXIAL_LENGTH);
    assert_eq!(refused(code), Some((Refusal::NoReadBack, part, number)));
}

#[test]
fn no_subject() {
    let (_, draft) = drafts().remove(0);
    let (mut device, case_sum) = (holding(&draft), case_sum(&draft));
    let known: Vec<_> = Subject::all().map(Subject::numbers).collect();
    for (part, subject) in pairs().filter(|pair| !known.contains(pair)) {
        let answer = stream(&mut device, Explain { case_sum, part, subject });
        assert_eq!(refused(answer), Some((Refusal::NotASubject, part, subject)));
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
    assert_eq!(refused(converted(beyond, 0, 1.0)), Some((Refusal::NotAUnit, 0, beyond)));
    assert_eq!(refused(converted(0, 255, 1.0)), Some((Refusal::NotAUnit, 0, 255)));
    for value in [f64::NAN, f64::INFINITY, f64::MAX] {
        assert_eq!(refused(converted(Unit::Atm as u8, Unit::Pa as u8, value)), Some((Refusal::NotFinite, 0, 0)));
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
    // each broken frame may have taken typed text, and leaves its mark there
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
