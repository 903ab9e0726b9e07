//! The desk's side: answers that are whole and checked, or none.

use alloc::vec::Vec;
use core::fmt;

use ocellus_card::error::Error;
use ocellus_card::sink::Sink;

use crate::code::{Outcome, Refusal};
use crate::event::Event;
use crate::frame::{Frame, VERSION};
use crate::message::*;
use crate::stream::Sum;

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Failure {
    /// A frame of another version.
    Version(u8),
    /// The answer to another request.
    Sequence {
        /// The request's number.
        expected: u8,
        /// The frame's.
        got: u8,
    },
    /// A message that does not belong here, or of another size than its kind has.
    Kind(u8),
    /// An event is missing, or came twice.
    Index {
        /// The place that was next.
        expected: u16,
        /// The event's.
        got: u16,
    },
    /// The count or the sum at the end of a stream is not that of its events.
    Sum,
    /// An event or an outcome with a number that means nothing here.
    Number,
    /// The device refused.
    Refused(Problem),
}

impl Failure {
    /// Whether the line may be at fault, so that asking again may help. What has come of the answer is worth nothing: wait
    /// until the line is silent, then ask again with the next sequence.
    ///
    /// ```
    /// use ocellus_link::{code::Refusal, collect::Failure};
    /// assert!(Failure::Sum.ask_again());
    /// assert!(!Failure::Refused(Refusal::NotACase.about(0, 0)).ask_again());
    /// ```
    pub const fn ask_again(self) -> bool {
        match self {
            Failure::Sequence { .. } | Failure::Kind(_) | Failure::Index { .. } | Failure::Sum => true,
            Failure::Version(_) | Failure::Number | Failure::Refused(_) => false,
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Failure::Version(got) => write!(f, "a frame of version {got}; this is version {VERSION}"),
            Failure::Sequence { expected, got } => write!(f, "an answer to request {got}, not to {expected}"),
            Failure::Kind(kind) => write!(f, "an unexpected message of kind 0x{kind:02X}"),
            Failure::Index { expected, got } => write!(f, "event {got} came where {expected} was next"),
            Failure::Sum => write!(f, "the events are not those that the device sent"),
            Failure::Number => write!(f, "a number that means nothing here"),
            Failure::Refused(Problem { refusal, detail, part }) => {
                f.write_str("the device refused (")?;
                match Refusal::from_number(refusal) {
                    Some(refusal) => f.write_str(refusal.word())?,
                    None => write!(f, "number {refusal}")?,
                }
                match part {
                    // about no part: a version, a count
                    0 => write!(f, ", {detail})")?,
                    _ => write!(f, ", {part}.{detail})")?,
                }
                Refusal::from_number(refusal).map_or(Ok(()), |refusal| write!(f, ": {}", refusal.text()))
            }
        }
    }
}

impl core::error::Error for Failure {}

/// Checks that a frame answers a request, and is not a refusal.
fn expect(frame: &Frame, sequence: u8) -> Result<(), Failure> {
    if frame.version() != VERSION {
        return Err(Failure::Version(frame.version()));
    }
    if frame.sequence() != sequence {
        return Err(Failure::Sequence { expected: sequence, got: frame.sequence() });
    }
    match Problem::of(frame) {
        Some(problem) => Err(Failure::Refused(problem)),
        None => Ok(()),
    }
}

/// The one message that answers a request.
///
/// # Errors
/// Says what came instead.
///
/// ```
/// use ocellus_link::{collect::{Failure, reply}, frame::Frame, message::Ack};
/// let frame = Frame::of(7, &Ack {});
/// assert_eq!(reply::<Ack>(&frame, 7), Ok(Ack {}));
/// assert_eq!(reply::<Ack>(&frame, 8), Err(Failure::Sequence { expected: 8, got: 7 }));
/// ```
pub fn reply<M: Message>(frame: &Frame, sequence: u8) -> Result<M, Failure> {
    expect(frame, sequence)?;
    M::of(frame).ok_or(Failure::Kind(frame.kind()))
}

/// A stream that is whole: every event came once, in order, and their count and sum are those that the device sent.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// How it came out.
    pub outcome: Outcome,
    /// Every event, in order.
    pub events: Vec<Event>,
}

impl Answer {
    /// Streams it, as the device's own plan or explanation did.
    pub fn play(&self, sink: &mut dyn Sink) {
        self.events.iter().for_each(|event| event.play(sink));
    }

    /// What is wrong with the entries, where they are not a case.
    pub fn wrong(&self) -> impl Iterator<Item = Error> + '_ {
        self.events.iter().filter_map(|event| match event {
            Event::Wrong(error) => Some(*error),
            _ => None,
        })
    }
}

/// Gathers the events that answer one request. It gives none of them out before the last, and none at all after a failure:
/// taking a frame uses the collector up.
///
/// ```
/// use ocellus_link::{collect::*, code::Outcome, frame::Frame, message::Done};
/// let done = Frame::of(7, &Done { count: 0, crc: 0xD202_EF8D, outcome: 0 });
/// let Progress::Whole(answer) = Collector::new(7).take(&done)? else { panic!() };
/// assert_eq!(answer, Answer { outcome: Outcome::Answered, events: vec![] });
///
/// let lost = Frame::of(7, &Done { count: 1, crc: 0xD202_EF8D, outcome: 0 });
/// assert_eq!(Collector::new(7).take(&lost).err(), Some(Failure::Sum));
/// # Ok::<(), Failure>(())
/// ```
///
/// After a failure there is nothing left to ask:
///
/// ```compile_fail,E0382
/// use ocellus_link::{collect::Collector, frame::Frame, message::Ack};
/// let (collector, frame) = (Collector::new(7), Frame::of(7, &Ack {}));
/// let failed = collector.take(&frame);
/// let again = collector.take(&frame);
/// ```
pub struct Collector {
    sequence: u8,
    sum: Sum,
    events: Vec<Event>,
}

/// How far a stream has come.
pub enum Progress {
    /// More is to come.
    More(Collector),
    /// It is whole.
    Whole(Answer),
}

impl Collector {
    /// For the answer to the request of this sequence.
    pub fn new(sequence: u8) -> Collector {
        Collector { sequence, sum: Sum::new(), events: Vec::new() }
    }

    /// Takes the next frame.
    ///
    /// # Errors
    /// Says what is wrong; see [`Failure::ask_again`].
    pub fn take(mut self, frame: &Frame) -> Result<Progress, Failure> {
        expect(frame, self.sequence)?;
        if let Some(done) = Done::of(frame) {
            if self.sum.done(done.outcome) != done {
                return Err(Failure::Sum);
            }
            let outcome = Outcome::from_number(done.outcome).ok_or(Failure::Number)?;
            return Ok(Progress::Whole(Answer { outcome, events: self.events }));
        }
        let message = Streamed::of(frame).ok_or(Failure::Kind(frame.kind()))?;
        let (got, event) = Event::of(&message).ok_or(Failure::Number)?;
        let expected = self.sum.count;
        if got != expected {
            return Err(Failure::Index { expected, got });
        }
        self.sum.add(frame);
        self.events.push(event);
        Ok(Progress::More(self))
    }
}
