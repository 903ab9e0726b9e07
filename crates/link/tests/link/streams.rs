//! A stream is whole, or there is none.

use ocellus_core::case::Case;
use ocellus_core::plan::plan;
use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::collect::{Answer, Collector, Failure, Progress};
use ocellus_link::entries::{case_sum, requests};
use ocellus_link::event::Events;
use ocellus_link::frame::Frame;
use ocellus_link::message::*;
use ocellus_link::respond::Responder;

use crate::line::{bytes, draft, say};
use crate::outside::{crc32, envelope};

const CASE: &str = include_str!("../../../../demo-data/long-toric.toml");

/// The frames of a plan, in answer to a request of this sequence.
fn planned(sequence: u8) -> Vec<Frame> {
    let draft = draft(CASE);
    let mut device = Responder::new();
    requests(&draft, &mut |request| {
        say(&mut device, &bytes(&request.frame(0)));
    });
    say(&mut device, &bytes(&Frame::of(sequence, &Plan { case_sum: case_sum(&draft) })))
}

fn collect<'a>(frames: impl IntoIterator<Item = &'a Frame>) -> Result<Option<Answer>, Failure> {
    let mut collector = Collector::new(5);
    for frame in frames {
        match collector.take(frame)? {
            Progress::More(more) => collector = more,
            Progress::Whole(answer) => return Ok(Some(answer)),
        }
    }
    Ok(None)
}

/// A frame with another payload and a CRC that fits.
fn forged(frame: &Frame, payload: &[u8]) -> Frame {
    crate::line::frames(&envelope(1, frame.kind(), frame.sequence(), payload)).remove(0)
}

#[test]
fn whole() {
    let (draft, mut here) = (draft(CASE), Events::default());
    plan(&Case::try_from(&draft).unwrap(), &mut here);
    let answer = collect(&planned(5)).unwrap().unwrap();
    assert_eq!(answer.outcome, Outcome::Answered);
    assert_eq!(answer.events, here.0);
    assert!(answer.events.len() > 200);
    let mut played = Events::default();
    answer.play(&mut played);
    assert_eq!(played.0, here.0);
}

/// The sum at the end is that which PROTOCOL.md describes.
#[test]
fn done_as_described() {
    let mut frames = planned(5);
    let done = Done::of(&frames.pop().unwrap()).unwrap();
    let mut covered: Vec<u8> = frames.iter().flat_map(|frame| [&[frame.kind()], frame.payload()].concat()).collect();
    covered.push(done.outcome);
    assert_eq!(done, Done { count: frames.len() as u16, crc: crc32(&covered), outcome: Outcome::Answered.number() });
}

#[test]
fn a_frame_lost_doubled_or_moved() {
    let frames = planned(5);
    let last = frames.len() - 1;
    for place in 0..frames.len() {
        let (before, after) = frames.split_at(place);
        let lost = collect(before.iter().chain(&after[1..]));
        let doubled = collect(before.iter().chain(&after[..1]).chain(after));
        match place {
            // without its end there is no stream; an end that comes twice finds it whole the first time
            _ if place == last => assert!(matches!((lost, doubled), (Ok(None), Ok(Some(_))))),
            _ if place == last - 1 => assert_eq!((lost, doubled.unwrap_err().ask_again()), (Err(Failure::Sum), true)),
            _ => {
                let (expected, next) = (place as u16, place as u16 + 1);
                assert_eq!(lost, Err(Failure::Index { expected, got: next }));
                assert_eq!(doubled, Err(Failure::Index { expected: next, got: expected }));
            }
        }
        if place < last {
            let mut moved = frames.clone();
            moved.swap(place, place + 1);
            assert!(collect(&moved).unwrap_err().ask_again());
        }
    }
}

/// A frame altered on its way whose CRC fits all the same is caught by the sum over all of them.
#[test]
fn a_frame_altered() {
    let frames = planned(5);
    for (place, frame) in frames.iter().enumerate() {
        for byte in 0..frame.payload().len() {
            let mut payload = frame.payload().to_vec();
            payload[byte] ^= 1;
            let mut altered = frames.clone();
            altered[place] = forged(frame, &payload);
            assert!(collect(&altered).is_err(), "byte {byte} of event {place}");
        }
    }
}

#[test]
fn what_does_not_belong_here() {
    let frames = planned(5);
    assert_eq!(collect(&planned(6)), Err(Failure::Sequence { expected: 5, got: 6 }));
    assert_eq!(collect(frames[..3].iter().chain(&[Frame::of(5, &Ack {})])), Err(Failure::Kind(Ack::KIND)));
    assert_eq!(collect(frames[..3].iter().chain(&planned(4)[3..])), Err(Failure::Sequence { expected: 5, got: 4 }));
    let refused = Refusal::CaseDiffers.about(0);
    assert_eq!(collect(&[Frame::of(5, &refused)]), Err(Failure::Refused(refused)));
    let wrong_size = forged(&frames[0], &[0; 20]);
    assert_eq!(collect(&[wrong_size]), Err(Failure::Kind(frames[0].kind())));
    let no_outcome = Frame::of(5, &Done { count: 0, crc: crc32(&[99]), outcome: 99 });
    assert_eq!(collect(&[no_outcome]), Err(Failure::Number));
    let other_version = crate::line::frames(&envelope(2, frames[0].kind(), 5, frames[0].payload())).remove(0);
    assert_eq!(collect(&[other_version]), Err(Failure::Version(2)));
}

/// Numbers that a table here does not have, one in each place where a number stands.
#[test]
fn what_means_nothing_here() {
    let item = ItemEvent { index: 0, what: 0, method: 0, row: 0, value: 1.0 };
    let caution = CautionEvent { index: 0, code: 0, field: 0, method: 0 };
    let step = StepEvent { index: 0, topic: 0, step: 0, value: 1.0 };
    let wrong = WrongEvent { index: 0, code: 0, field: 0, has_value: 0, has_bounds: 0, value: 0.0 };
    let known: [Streamed; 4] = [item.into(), caution.into(), step.into(), wrong.into()];
    assert!(known.iter().all(|message| collect(&[message.frame(5)]) == Ok(None)));
    let unknown: [Streamed; 16] = [
        PartEvent { index: 0, part: 250 }.into(),
        EntryEvent { index: 0, field: 250 }.into(),
        SignOffEvent { index: 0, line: 250 }.into(),
        ItemEvent { what: 250, ..item }.into(),
        ItemEvent { method: 250, ..item }.into(),
        CautionEvent { code: 250, ..caution }.into(),
        CautionEvent { field: 250, ..caution }.into(),
        CautionEvent { method: 250, ..caution }.into(),
        StepEvent { topic: 250, ..step }.into(),
        StepEvent { step: 250, ..step }.into(),
        WrongEvent { code: 250, ..wrong }.into(),
        WrongEvent { field: 250, ..wrong }.into(),
        WrongEvent { has_value: 2, ..wrong }.into(),
        WrongEvent { has_bounds: 2, ..wrong }.into(),
        // limits of no field, and of a field that has none: the label of the case
        WrongEvent { has_bounds: 1, ..wrong }.into(),
        WrongEvent { has_bounds: 1, field: 1, ..wrong }.into(),
    ];
    for message in unknown {
        assert_eq!(collect(&[message.frame(5)]), Err(Failure::Number), "{message:?}");
    }
}

/// The line cut at any byte, and the rest of it lost: no answer, at any place but the last.
#[test]
fn a_line_cut_off() {
    let line: Vec<u8> = planned(5).iter().flat_map(bytes).collect();
    for length in (0..line.len()).step_by(7).chain([line.len() - 1]) {
        assert_eq!(collect(&crate::line::frames(&line[..length])), Ok(None));
    }
}
