//! Questions and answers over a line that may lose, damage or add bytes: an answer is whole and checked, or it is none.

use super::port::{self, PATIENCE, Port};
use ocellus_card::Subject;
use ocellus_card::draft::Draft;
use ocellus_core::fluids::unit::Unit;
use ocellus_link::code::Refusal;
use ocellus_link::collect::{Answer, Collector, Failure, Progress, reply};
use ocellus_link::entries;
use ocellus_link::frame::{Frame, LARGEST_PAYLOAD, VERSION};
use ocellus_link::message::*;
use ocellus_link::receiver::{Received, Receiver, SILENCE_MS};
use ocellus_link::schema::{Disagreement, SCHEMA};
use std::fmt;
use std::io;
use std::time::{Duration, Instant};

/// How often a question is asked before the line is given up.
pub const ATTEMPTS: u32 = 8;

/// How long a device may be silent in the middle of an answer: the slowest computes for less than half of it.
const SILENT: Duration = Duration::from_secs(2);

/// How long one answer may take in all; the longest takes a second of a serial line.
const LONGEST: Duration = Duration::from_secs(20);

/// A device that has just started may not hear at once.
const SILENT_AT_START: Duration = Duration::from_millis(400);

/// Why there is no answer.
#[derive(Debug)]
pub enum Trouble {
    /// There is no such line, or it is taken.
    NotOpened(io::Error),
    /// The line failed while it was used.
    Line(io::Error),
    /// Nothing that could be used came, however often it was asked; the last thing that went wrong.
    NoAnswer(Option<Failure>),
    /// The device's numbers do not mean the same as here.
    Other(Disagreement),
    /// The device refused, for a reason that asking again does not change.
    Refused(Failure),
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::NotOpened(error) => write!(f, "{error}"),
            Trouble::Line(error) => write!(f, "{error}; what came before it is not used"),
            Trouble::NoAnswer(None) => {
                write!(f, "no answer, asked {ATTEMPTS} times: is an ocellus device on this line, and no other program?")
            }
            Trouble::NoAnswer(Some(failure)) => {
                write!(f, "no answer that could be used, asked {ATTEMPTS} times; at last: {failure}")
            }
            Trouble::Other(disagreement) => {
                match disagreement {
                    Disagreement::Version(other) => {
                        write!(f, "the device speaks version {other} of the protocol, this program {VERSION}")
                    }
                    Disagreement::Schema(other) => {
                        write!(f, "the device's tables ({other:08X}) differ from this program's ({SCHEMA:08X})")
                    }
                    Disagreement::Parts(other) => {
                        write!(f, "the device has parts of the card that this program does not know ({other:X})")
                    }
                    Disagreement::LargestPayload(other) => {
                        write!(f, "the device's largest message has {other} bytes, this program's {LARGEST_PAYLOAD}")
                    }
                }?;
                write!(f, ": nothing it says is used. Build both from the same sources")
            }
            Trouble::Refused(failure) => write!(f, "{failure}"),
        }
    }
}

impl std::error::Error for Trouble {}

impl From<io::Error> for Trouble {
    fn from(error: io::Error) -> Trouble {
        Trouble::Line(error)
    }
}

/// A line to a device whose numbers were found to mean the same as here.
pub struct Line {
    port: Box<dyn Port>,
    receiver: Receiver,
    started: Instant,
    sequence: u8,
    welcome: Welcome,
    silent: Duration,
    asked_again: u64,
}

impl Line {
    /// Says hello, and continues only with a device of the same version and the same tables.
    ///
    /// # Errors
    /// When none answers, or another.
    pub fn open(port: Box<dyn Port>) -> Result<Line, Trouble> {
        let started = Instant::now();
        // a sequence that a line used before is not likely to have stopped at
        let sequence = std::process::id() as u8;
        let welcome = Welcome { version: 0, schema: 0, core: [0; 3], largest_payload: 0, board: [0; 16], parts: 0 };
        let (receiver, silent) = (Receiver::new(), SILENT_AT_START);
        let mut line = Line { port, receiver, started, sequence, welcome, silent, asked_again: 0 };
        line.welcome = line.ask(&Hello {}.into()).map_err(|trouble| match trouble {
            Trouble::Refused(Failure::Version(other)) => Trouble::Other(Disagreement::Version(other)),
            other => other,
        })?;
        line.silent = SILENT;
        match line.welcome.disagreement() {
            Some(disagreement) => Err(Trouble::Other(disagreement)),
            None => Ok(line),
        }
    }

    /// The same line, given up after another silence: an emulator answers sooner than a slow device.
    #[must_use]
    pub fn patient(self, silent: Duration) -> Line {
        Line { silent, ..self }
    }

    /// What the device said of itself.
    pub fn welcome(&self) -> &Welcome {
        &self.welcome
    }

    /// How often something had to be asked again.
    pub fn asked_again(&self) -> u64 {
        self.asked_again
    }

    /// The one message that answers a request.
    ///
    /// # Errors
    /// See [`Trouble`].
    pub fn ask<M: Message>(&mut self, request: &Request) -> Result<M, Trouble> {
        self.attempts(|line| {
            let sequence = line.send(request)?;
            line.until(|frame| match reply(frame, sequence) {
                // an answer to what was asked before, late
                Err(Failure::Sequence { .. }) => Ok(None),
                other => other.map(Some),
            })
        })
    }

    /// Enters a case; nothing follows from it yet.
    fn enter(&mut self, draft: &Draft) -> Result<(), Trouble> {
        let mut requests = Vec::new();
        entries::requests(draft, &mut |request| requests.push(request));
        requests.iter().try_for_each(|request| self.ask::<Ack>(request).map(drop))
    }

    /// Asks about what of a case the device has parts for, and enters it first where the device holds another.
    fn about<T>(
        &mut self,
        draft: &Draft,
        mut ask: impl FnMut(&mut Line, u32) -> Result<T, Trouble>,
    ) -> Result<T, Trouble> {
        let draft = &entries::for_device(draft, &self.welcome);
        let sum = entries::case_sum(draft);
        for _ in 0..ATTEMPTS {
            match ask(self, sum) {
                Err(Trouble::Refused(Failure::Refused(problem)))
                    if Refusal::from_number(problem.refusal) == Some(Refusal::CaseDiffers) =>
                {
                    self.enter(draft)?;
                }
                other => return other,
            }
        }
        Err(Trouble::NoAnswer(Some(Failure::Refused(Refusal::CaseDiffers.about(0, 0)))))
    }

    /// The whole card of a case.
    ///
    /// # Errors
    /// See [`Trouble`].
    pub fn plan(&mut self, draft: &Draft) -> Result<Answer, Trouble> {
        self.about(draft, |line, case_sum| line.stream(&Plan { case_sum }.into()))
    }

    /// How one number of a case came about.
    ///
    /// # Errors
    /// See [`Trouble`].
    pub fn explain(&mut self, subject: Subject, draft: &Draft) -> Result<Answer, Trouble> {
        let (part, subject) = subject.numbers();
        self.about(draft, |line, case_sum| line.stream(&Explain { case_sum, part, subject }.into()))
    }

    /// The read-back of a case, without patient identifiers, which are never sent; `None` where it can have none.
    ///
    /// # Errors
    /// See [`Trouble`].
    pub fn read_back(&mut self, draft: &Draft) -> Result<Option<Code>, Trouble> {
        match self.about(draft, |line, case_sum| line.ask::<Code>(&ReadBack { case_sum }.into())) {
            Ok(code) => Ok(Some(code)),
            Err(Trouble::Refused(Failure::Refused(problem)))
                if matches!(Refusal::from_number(problem.refusal), Some(Refusal::NoReadBack | Refusal::NotACase)) =>
            {
                Ok(None)
            }
            Err(trouble) => Err(trouble),
        }
    }

    /// A plan of a case, timed and not sent.
    ///
    /// # Errors
    /// See [`Trouble`].
    pub fn time(&mut self, draft: &Draft) -> Result<Timed, Trouble> {
        self.about(draft, |line, case_sum| line.ask::<Timed>(&Time { case_sum }.into()))
    }

    /// A pressure in another unit.
    ///
    /// # Errors
    /// See [`Trouble`].
    pub fn convert(&mut self, value: f64, from: Unit, to: Unit) -> Result<f64, Trouble> {
        let request = Convert { from: from as u8, to: to as u8, value }.into();
        Ok(self.ask::<Converted>(&request)?.value)
    }

    /// A stream of events, whole and checked.
    fn stream(&mut self, request: &Request) -> Result<Answer, Trouble> {
        self.attempts(|line| {
            let sequence = line.send(request)?;
            let mut collector = Some(Collector::new(sequence));
            line.until(|frame| {
                if frame.sequence() != sequence {
                    return Ok(None);
                }
                let Some(collecting) = collector.take() else { return Ok(None) };
                match collecting.take(frame)? {
                    Progress::More(more) => {
                        collector = Some(more);
                        Ok(None)
                    }
                    Progress::Whole(answer) => Ok(Some(answer)),
                }
            })
        })
    }

    /// Asks until there is an answer, or a reason to stop.
    fn attempts<T>(
        &mut self,
        mut ask: impl FnMut(&mut Line) -> Result<Result<T, Option<Failure>>, Trouble>,
    ) -> Result<T, Trouble> {
        let mut last = None;
        for attempt in 0..ATTEMPTS {
            if attempt > 0 {
                self.asked_again += 1;
                self.wait_for_silence()?;
            }
            match ask(self)? {
                Ok(answer) => return Ok(answer),
                Err(Some(failure)) if !failure.ask_again() => return Err(Trouble::Refused(failure)),
                Err(failure) => last = failure,
            }
        }
        Err(Trouble::NoAnswer(last))
    }

    fn send(&mut self, request: &Request) -> Result<u8, Trouble> {
        self.sequence = self.sequence.wrapping_add(1);
        let mut bytes = Vec::new();
        request.frame(self.sequence).write(&mut |byte| bytes.push(byte));
        self.port.write_all(&bytes)?;
        self.port.flush()?;
        Ok(self.sequence)
    }

    /// Reads until a frame decides, the line is silent, or a frame is damaged.
    fn until<T>(
        &mut self,
        mut decide: impl FnMut(&Frame) -> Result<Option<T>, Failure>,
    ) -> Result<Result<T, Option<Failure>>, Trouble> {
        let (asked, mut heard) = (Instant::now(), Instant::now());
        let mut bytes = [0; 4096];
        while heard.elapsed() < self.silent && asked.elapsed() < LONGEST {
            let count = port::read(&mut *self.port, &mut bytes)?;
            let now = self.started.elapsed().as_millis() as u32;
            if count == 0 {
                self.receiver.tick(now);
                continue;
            }
            heard = Instant::now();
            let mut decided = None;
            for &byte in &bytes[..count] {
                match self.receiver.push(byte, now) {
                    Received::Frame(frame) if decided.is_none() => match decide(&frame) {
                        Ok(Some(answer)) => decided = Some(Ok(answer)),
                        Ok(None) => {}
                        Err(failure) => decided = Some(Err(Some(failure))),
                    },
                    // text is for a person; a damaged frame leaves a gap that the next frame shows, or silence
                    _ => {}
                }
            }
            if let Some(decided) = decided {
                return Ok(decided);
            }
        }
        Ok(Err(None))
    }

    /// Lets what is still on its way go by, so that the next answer is not taken for an old one.
    fn wait_for_silence(&mut self) -> Result<(), Trouble> {
        let (started, mut heard) = (Instant::now(), Instant::now());
        let mut bytes = [0; 4096];
        let silent = Duration::from_millis(u64::from(SILENCE_MS)) + 2 * PATIENCE;
        while heard.elapsed() < silent && started.elapsed() < LONGEST {
            if port::read(&mut *self.port, &mut bytes)? > 0 {
                heard = Instant::now();
            }
        }
        self.receiver = Receiver::new();
        Ok(())
    }
}
