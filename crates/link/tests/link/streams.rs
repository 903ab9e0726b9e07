//! A stream is whole, or there is none.

use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::{Subject, cautions, entries, items, sign_offs, workings};
use ocellus_link::code::{Outcome, Refusal};
use ocellus_link::collect::{Answer, Collector, Failure, Progress};
use ocellus_link::entries::{case_sum, requests};
use ocellus_link::event::{Event, Events};
use ocellus_link::frame::{Frame, VERSION};
use ocellus_link::message::*;
use ocellus_link::respond::Responder;

use crate::line::{bytes, draft, say};
use crate::outside::{crc32, envelope};

const CASE: &str = include_str!("../../../../demo-data/long-toric.toml");

/// What a device that holds this draft says to a request of this sequence.
fn asked(draft: &Draft, sequence: u8, request: impl Into<Request>) -> Vec<Frame> {
    let mut device = Responder::new();
    requests(draft, &mut |request| {
        say(&mut device, &bytes(&request.frame(0)));
    });
    say(&mut device, &bytes(&request.into().frame(sequence)))
}

/// The frames of a plan, in answer to a request of this sequence.
fn planned(sequence: u8) -> Vec<Frame> {
    let draft = draft(CASE);
    asked(&draft, sequence, Plan { case_sum: case_sum(&draft) })
}

/// What the case lacks: nothing was found yet that a turn could correct.
fn turn() -> Subject {
    Subject::of_key("turn").unwrap()
}

/// The frames of an explanation for which entries are missing.
fn lacked(sequence: u8) -> Vec<Frame> {
    let (draft, (part, subject)) = (draft(CASE), turn().numbers());
    asked(&draft, sequence, Explain { case_sum: case_sum(&draft), part, subject })
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
    crate::line::frames(&envelope(VERSION, frame.kind(), frame.sequence(), payload)).remove(0)
}

#[test]
fn whole() {
    let (draft, mut here) = (draft(CASE), Events::default());
    Case::try_from(&draft).unwrap().plan(&mut here);
    let answer = collect(&planned(5)).unwrap().unwrap();
    assert_eq!(answer.outcome, Outcome::Answered);
    assert_eq!(answer.events, here.0);
    assert!(answer.events.len() > 200);
    let mut played = Events::default();
    answer.play(&mut played);
    assert_eq!(played.0, here.0);
}

/// A stream that says which entries are missing.
#[test]
fn what_lacks() {
    let (draft, mut here) = (draft(CASE), Events::default());
    assert!(!Case::try_from(&draft).unwrap().explain(turn(), &mut here));
    let answer = collect(&lacked(5)).unwrap().unwrap();
    assert_eq!(answer.outcome, Outcome::Nothing);
    assert_eq!(answer.events, here.0);
    let lacks: Vec<_> = answer.events.iter().filter(|event| matches!(event, Event::Lacks(_))).copied().collect();
    assert!(lacks.contains(&Event::Lacks(entries::AFTER_SPHERE.id())), "{lacks:?}");
    assert!(!lacks.contains(&Event::Lacks(entries::AXIAL_LENGTH.id())) && lacks.len() < answer.events.len());
    let mut played = Events::default();
    answer.play(&mut played);
    assert_eq!(played.0, here.0);
}

/// The sum at the end is that which PROTOCOL.md describes.
#[test]
fn done_as_described() {
    for (mut frames, outcome) in [(planned(5), Outcome::Answered), (lacked(5), Outcome::Nothing)] {
        let done = Done::of(&frames.pop().unwrap()).unwrap();
        let mut covered: Vec<u8> =
            frames.iter().flat_map(|frame| [&[frame.kind()], frame.payload()].concat()).collect();
        covered.push(done.outcome);
        assert_eq!(done, Done { count: frames.len() as u16, crc: crc32(&covered), outcome: outcome.number() });
    }
}

#[test]
fn a_frame_lost_doubled_or_moved() {
    [planned(5), lacked(5)].iter().for_each(|frames| lose_double_or_move(frames));
}

fn lose_double_or_move(frames: &[Frame]) {
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
            let mut moved = frames.to_vec();
            moved.swap(place, place + 1);
            assert!(collect(&moved).unwrap_err().ask_again());
        }
    }
}

/// A frame altered on its way whose CRC fits all the same is caught by the sum over all of them.
#[test]
fn a_frame_altered() {
    [planned(5), lacked(5)].iter().for_each(|frames| alter(frames));
}

fn alter(frames: &[Frame]) {
    for (place, frame) in frames.iter().enumerate() {
        for byte in 0..frame.payload().len() {
            let mut payload = frame.payload().to_vec();
            payload[byte] ^= 1;
            let (altered, (before, after)) = (forged(frame, &payload), frames.split_at(place));
            let stream = before.iter().chain([&altered]).chain(&after[1..]);
            assert!(collect(stream).is_err(), "byte {byte} of event {place}");
        }
    }
}

#[test]
fn what_does_not_belong_here() {
    let frames = planned(5);
    assert_eq!(collect(&planned(6)), Err(Failure::Sequence { expected: 5, got: 6 }));
    assert_eq!(collect(frames[..3].iter().chain(&[Frame::of(5, &Ack {})])), Err(Failure::Kind(Ack::KIND)));
    assert_eq!(collect(frames[..3].iter().chain(&planned(4)[3..])), Err(Failure::Sequence { expected: 5, got: 4 }));
    let refused = Refusal::CaseDiffers.about(0, 0);
    assert_eq!(collect(&[Frame::of(5, &refused)]), Err(Failure::Refused(refused)));
    let wrong_size = forged(&frames[0], &[0; 20]);
    assert_eq!(collect(&[wrong_size]), Err(Failure::Kind(frames[0].kind())));
    let no_outcome = Frame::of(5, &Done { count: 0, crc: crc32(&[99]), outcome: 99 });
    assert_eq!(collect(&[no_outcome]), Err(Failure::Number));
    for other in [1, 3] {
        let frame = crate::line::frames(&envelope(other, frames[0].kind(), 5, frames[0].payload())).remove(0);
        assert_eq!(collect(&[frame]), Err(Failure::Version(other)));
    }
}

/// A refusal names an entry or a subject by part and number, and anything else by its number alone.
#[test]
fn refusals_in_words() {
    let words = |problem: Problem| Failure::Refused(problem).to_string();
    let about = [Refusal::NotAnEntry.about(3, 200), Refusal::WrongVersion.about(0, 2)].map(words);
    assert!(about[0].starts_with("the device refused (not_an_entry, 3.200): no part"), "{about:?}");
    assert!(about[1].starts_with("the device refused (wrong_version, 2): a frame"), "{about:?}");
    assert_eq!(words(Problem { refusal: 99, detail: 7, part: 0 }), "the device refused (number 99, 7)");
}

/// Numbers that a table here does not have, one in each place where a number stands.
#[test]
fn what_means_nothing_here() {
    let of = entries::AXIAL_LENGTH.id();
    let (entry_part, entry) = (of.part().0, of.number());
    let part = PartEvent { index: 0, part: entry_part };
    let belongs = EntryEvent { index: 0, part: entry_part, entry };
    let lacks = LacksEvent { index: 0, part: entry_part, entry };
    let (what, code, line) = (items::EXACT_POWER, cautions::DEFAULT_USED, sign_offs::SIDE);
    let item = ItemEvent { index: 0, part: what.part().0, what: what.number(), method: 0, row: 0, value: 1.0 };
    let caution =
        CautionEvent { index: 0, part: code.part().0, code: code.number(), entry_part: 0, entry: 0, method: 0 };
    let about = CautionEvent { entry_part, entry, ..caution };
    let sign_off = SignOffEvent { index: 0, part: line.part().0, line: line.number() };
    let step = StepEvent { index: 0, part: 0, table: 0, step: 0, value: 1.0 };
    let (table_part, table) = workings::all().filter_map(workings::numbers).find(|numbers| numbers.0 != 0).unwrap();
    let of_part = StepEvent { part: table_part, table, ..step };
    let wrong = WrongEvent { index: 0, code: 0, part: entry_part, entry, has_value: 0, has_bounds: 0, value: 0.0 };
    let (id, side) = (entries::ID.id(), entries::SIDE.id());
    let known: [Streamed; 12] = [
        part.into(),
        belongs.into(),
        lacks.into(),
        item.into(),
        ItemEvent { method: 1, ..item }.into(),
        caution.into(),
        about.into(),
        sign_off.into(),
        step.into(),
        of_part.into(),
        wrong.into(),
        WrongEvent { has_value: 1, has_bounds: 1, ..wrong }.into(),
    ];
    assert!(known.iter().all(|message| collect(&[message.frame(5)]) == Ok(None)));
    let unknown: [Streamed; 36] = [
        PartEvent { part: 0, ..part }.into(),
        PartEvent { part: 250, ..part }.into(),
        EntryEvent { part: 0, ..belongs }.into(),
        EntryEvent { part: 250, ..belongs }.into(),
        EntryEvent { entry: 250, ..belongs }.into(),
        LacksEvent { part: 0, ..lacks }.into(),
        LacksEvent { part: 250, ..lacks }.into(),
        LacksEvent { entry: 250, ..lacks }.into(),
        SignOffEvent { part: 0, ..sign_off }.into(),
        SignOffEvent { part: 250, ..sign_off }.into(),
        SignOffEvent { line: 250, ..sign_off }.into(),
        ItemEvent { part: 0, ..item }.into(),
        ItemEvent { part: 250, ..item }.into(),
        ItemEvent { what: 250, ..item }.into(),
        ItemEvent { method: 250, ..item }.into(),
        CautionEvent { part: 0, ..caution }.into(),
        CautionEvent { part: 250, ..caution }.into(),
        CautionEvent { code: 250, ..caution }.into(),
        CautionEvent { method: 250, ..caution }.into(),
        CautionEvent { entry_part: 250, ..about }.into(),
        CautionEvent { entry: 250, ..about }.into(),
        // no part, and an entry all the same
        CautionEvent { entry: 1, ..caution }.into(),
        StepEvent { part: 250, ..step }.into(),
        StepEvent { table: 250, ..step }.into(),
        StepEvent { step: 250, ..step }.into(),
        StepEvent { table: 250, ..of_part }.into(),
        StepEvent { step: 250, ..of_part }.into(),
        WrongEvent { code: 250, ..wrong }.into(),
        WrongEvent { part: 0, ..wrong }.into(),
        WrongEvent { part: 250, ..wrong }.into(),
        WrongEvent { entry: 250, ..wrong }.into(),
        WrongEvent { has_value: 2, ..wrong }.into(),
        WrongEvent { has_bounds: 2, ..wrong }.into(),
        // limits of no entry, and of entries that have none: the label of the case, the side
        WrongEvent { has_bounds: 1, part: 0, entry: 0, ..wrong }.into(),
        WrongEvent { has_bounds: 1, part: id.part().0, entry: id.number(), ..wrong }.into(),
        WrongEvent { has_bounds: 1, part: side.part().0, entry: side.number(), ..wrong }.into(),
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
