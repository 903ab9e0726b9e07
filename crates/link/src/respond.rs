//! The device's side: a request in, its answer out. It keeps one draft, and no list of anything.

use core::hint::black_box;

use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::readback;
use ocellus_card::schema::HERE;
use ocellus_card::sink::Sink;
use ocellus_core::fluids::unit::{Unit, convert};

use crate::code::{Outcome, Refusal};
use crate::entries::{case_sum, enter, enter_name, filled};
use crate::event::{Event, Takes};
use crate::frame::{Frame, LARGEST_PAYLOAD, VERSION};
use crate::message::*;
use crate::number::Numbered;
use crate::receiver::{Received, Receiver, Tally};
use crate::schema::{CORE, SCHEMA};
use crate::stream::Stream;

/// What only the machine under it knows.
pub trait Host {
    /// The board's name; up to 16 characters of it are sent.
    fn board(&self) -> &str;
    /// What the program was built from; up to 16 characters of it are sent.
    fn build(&self) -> &str;
    /// What it was built for; up to 32 characters of it are sent.
    fn target(&self) -> &str;
    /// A clock that starts again at zero after its last tick.
    fn ticks(&self) -> u32;
    /// How many of its ticks are a second.
    fn ticks_per_second(&self) -> u32;
    /// Bytes lost because they came faster than they were read.
    fn overruns(&self) -> u32;
    /// The most of the stack that was ever used, bytes.
    fn stack_used(&self) -> u32;
    /// Its size, bytes.
    fn stack_size(&self) -> u32;
}

impl Refusal {
    /// The message that says so.
    ///
    /// ```
    /// use ocellus_link::{code::Refusal, message::Problem};
    /// assert_eq!(Refusal::NotAUnit.about(0, 99), Problem { refusal: 9, part: 0, detail: 99 });
    /// ```
    pub const fn about(self, part: u8, detail: u8) -> Problem {
        Problem { refusal: self.number(), part, detail }
    }
}

/// Stands in typed text for what was lost of it: no text holds it, so that a line with it is refused.
pub const LOST: u8 = 0xFF;

/// Answers a desk.
#[derive(Debug)]
pub struct Responder {
    receiver: Receiver,
    draft: Draft,
    refused: u32,
}

impl Default for Responder {
    fn default() -> Self {
        Self::new()
    }
}

impl Responder {
    /// With nothing entered, at a line that is text.
    pub const fn new() -> Responder {
        Responder { receiver: Receiver::new(), draft: Draft::EMPTY, refused: 0 }
    }

    /// Takes a byte of the line; what is typed text is given back, and [`LOST`] where a broken frame may have taken some.
    // apart, so that the room of a frame is free again for what is typed
    #[inline(never)]
    pub fn push(&mut self, byte: u8, now_ms: u32, host: &dyn Host, send: &mut dyn FnMut(u8)) -> Option<u8> {
        match self.receiver.push(byte, now_ms) {
            Received::Text(byte) => return Some(byte),
            Received::Frame(frame) => self.answer(&frame, host, send),
            Received::Bad(_) => return Some(LOST),
            Received::Nothing => {}
        }
        None
    }

    /// Gives it the time while nothing comes; gives [`LOST`] back as [`Responder::push`] does.
    pub fn tick(&mut self, now_ms: u32) -> Option<u8> {
        matches!(self.receiver.tick(now_ms), Received::Bad(_)).then_some(LOST)
    }

    /// What its receiver has seen.
    pub const fn tally(&self) -> Tally {
        self.receiver.tally()
    }

    /// Answers a frame. A kind from 0x80 is a device's own: no answer to it, or an echo on the line would go on for ever.
    pub fn answer(&mut self, frame: &Frame, host: &dyn Host, send: &mut dyn FnMut(u8)) {
        let reply = self.reply(frame, host, send).unwrap_or_else(|problem| {
            self.refused = self.refused.wrapping_add(1);
            problem.into()
        });
        if frame.kind() < 0x80 {
            reply.frame(frame.sequence()).write(send);
        }
    }

    #[inline(never)]
    fn reply(&mut self, frame: &Frame, host: &dyn Host, send: &mut dyn FnMut(u8)) -> Result<Reply, Problem> {
        let (kind, sequence) = (frame.kind(), frame.sequence());
        let request = match (frame.version() == VERSION, kind) {
            (true, _) => Request::of(frame),
            // whoever asks must learn who is here, whatever else another version adds to the question
            (false, Hello::KIND) => Some(Hello {}.into()),
            (false, _) => return Err(Refusal::WrongVersion.about(0, VERSION)),
        };
        let wrong = if Request::has(kind) { Refusal::WrongSize } else { Refusal::UnknownKind };
        Ok(match request.ok_or(wrong.about(0, kind))? {
            Request::Hello(_) => welcome(host).into(),
            Request::Build(_) => Built { build: filled(host.build()), target: filled(host.target()) }.into(),
            Request::Begin(_) => {
                self.draft.clear_all();
                Ack {}.into()
            }
            Request::Enter(message) => {
                enter(&mut self.draft, &message)?;
                Ack {}.into()
            }
            Request::EnterName(message) => {
                enter_name(&mut self.draft, &message)?;
                Ack {}.into()
            }
            Request::Plan(Plan { case_sum }) => self
                .stream(case_sum, Stream::new(sequence, send), &|case, sink| {
                    case.plan(sink);
                    true
                })?
                .into(),
            Request::Explain(Explain { case_sum, part, subject }) => {
                let of = Subject::from_numbers((part, subject)).ok_or(Refusal::NotASubject.about(part, subject))?;
                self.stream(case_sum, Stream::new(sequence, send), &|case, sink| case.explain(of, sink))?.into()
            }
            Request::ReadBack(ReadBack { case_sum }) => {
                let code = readback::of(&self.case(case_sum)?, None)
                    .map_err(|error| Refusal::NoReadBack.about(error.entry.part().0, error.entry.number()))?;
                Code { characters: filled(code.as_str()) }.into()
            }
            Request::Convert(message) => converted(&message)?.into(),
            Request::Time(Time { case_sum }) => time(&self.case(case_sum)?, host).into(),
            Request::Counters(_) => self.counted(host).into(),
        })
    }

    /// Whether the entries held are those meant.
    fn agree(&self, meant: u32) -> Result<(), Problem> {
        if case_sum(&self.draft) == meant { Ok(()) } else { Err(Refusal::CaseDiffers.about(0, 0)) }
    }

    fn case(&self, meant: u32) -> Result<Case<'_>, Problem> {
        self.agree(meant)?;
        Case::check(&self.draft, &mut |_| {}).ok_or(Refusal::NotACase.about(0, 0))
    }

    fn stream(
        &self,
        meant: u32,
        mut stream: Stream<'_>,
        follow: &dyn Fn(&Case<'_>, &mut dyn Sink) -> bool,
    ) -> Result<Done, Problem> {
        self.agree(meant)?;
        let case = Case::check(&self.draft, &mut |error| stream.event(Event::Wrong(error)));
        let outcome = match &case {
            None => Outcome::NotACase,
            Some(case) if follow(case, &mut stream) => Outcome::Answered,
            Some(_) => Outcome::Nothing,
        };
        Ok(stream.done(outcome))
    }

    fn counted(&self, host: &dyn Host) -> Counted {
        let Tally { frames, bad, too_long, silences, typed } = self.tally();
        Counted {
            frames,
            bad,
            too_long,
            silences,
            refused: self.refused,
            overruns: host.overruns(),
            typed,
            stack_used: host.stack_used(),
            stack_size: host.stack_size(),
        }
    }
}

fn welcome(host: &dyn Host) -> Welcome {
    Welcome {
        version: VERSION,
        schema: SCHEMA,
        parts: HERE,
        core: CORE,
        largest_payload: LARGEST_PAYLOAD as u8,
        board: filled(host.board()),
    }
}

fn converted(message: &Convert) -> Result<Converted, Problem> {
    let unit = |number| Unit::from_number(number).ok_or(Refusal::NotAUnit.about(0, number));
    let value = convert(message.value, unit(message.from)?, unit(message.to)?);
    if value.is_finite() { Ok(Converted { value }) } else { Err(Refusal::NotFinite.about(0, 0)) }
}

fn time(case: &Case<'_>, host: &dyn Host) -> Timed {
    let mut events = Count(0);
    let before = host.ticks();
    case.plan(&mut events);
    let ticks = host.ticks().wrapping_sub(before);
    Timed { ticks, ticks_per_second: host.ticks_per_second(), events: events.0 }
}

/// Counts events and keeps none; that a value was wanted at all must not be lost on the optimiser.
pub(crate) struct Count(u16);

impl Takes for Count {
    fn take(&mut self, event: Event) {
        black_box(&event);
        self.0 = self.0.wrapping_add(1);
    }
}
