//! Bytes of a line to text and frames.
//!
//! ```text
//!            not 0: text                  not 0: kept
//!              +---+                        +---+
//!              v   |          0             v   |       0, all of it whole: frame, to Idle
//!             [ Idle ] ----------------> [ Collecting ] ---------------------------------->
//!                ^                         ^       |
//!                |      250 ms silent      |       | too long, or 0 and not whole: bad
//!                +-------------------------+       v
//!                |                         +--- [ Discarding ]   not 0: dropped
//!                |                          0      |
//!                +---------------------------------+
//!                            250 ms silent
//! ```

use cobs::{DecodeResult, DecoderState};
use heapless::Vec;

use crate::frame::{Fault, Frame, LARGEST};

/// A frame that is silent for so long is dropped, and the line is text again.
pub const SILENCE_MS: u32 = 250;

/// What a byte led to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Received {
    /// Nothing to do yet.
    Nothing,
    /// A byte of typed text.
    Text(u8),
    /// A whole frame. Its version is the sender's: see [`Frame::version`].
    Frame(Frame),
    /// A frame was dropped.
    Bad(Fault),
}

/// What a receiver has seen; each number starts again at zero after its last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Whole frames.
    pub frames: u32,
    /// Frames dropped for their stuffing, their length or their CRC.
    pub bad: u32,
    /// Frames dropped because they were longer than the largest.
    pub too_long: u32,
    /// Frames dropped for silence.
    pub silences: u32,
    /// Bytes of text.
    pub typed: u32,
}

impl Tally {
    const NONE: Tally = Tally { frames: 0, bad: 0, too_long: 0, silences: 0, typed: 0 };

    fn count(&mut self, received: &Received) {
        let number = match received {
            Received::Nothing => return,
            Received::Text(_) => &mut self.typed,
            Received::Frame(_) => &mut self.frames,
            Received::Bad(Fault::TooLong) => &mut self.too_long,
            Received::Bad(Fault::Silence) => &mut self.silences,
            Received::Bad(Fault::Stuffing | Fault::TooShort | Fault::Crc) => &mut self.bad,
        };
        *number = number.wrapping_add(1);
    }
}

#[derive(Debug)]
enum State {
    /// The line is text.
    Idle,
    /// After an opener.
    Collecting,
    /// After a frame that was none. What follows may be its rest, and is neither frame nor text.
    Discarding,
}

/// Turns the bytes of a line into text and frames.
///
/// ```
/// use ocellus_link::{frame::Frame, message::Hello, receiver::{Received, Receiver}};
/// let mut line = b"hi".to_vec();
/// Frame::of(1, &Hello {}).write(&mut |byte| line.push(byte));
/// let mut receiver = Receiver::new();
/// let received: Vec<_> = line.iter().map(|byte| receiver.push(*byte, 0)).collect();
/// assert_eq!(received[1], Received::Text(b'i'));
/// assert_eq!(received.last(), Some(&Received::Frame(Frame::of(1, &Hello {}))));
/// ```
#[derive(Debug)]
pub struct Receiver {
    state: State,
    /// Of the frame being collected; idle until its first byte comes.
    decoder: DecoderState,
    bytes: Vec<u8, LARGEST>,
    last_ms: u32,
    tally: Tally,
}

impl Default for Receiver {
    fn default() -> Self {
        Self::new()
    }
}

impl Receiver {
    /// At a line that is text.
    pub const fn new() -> Receiver {
        Receiver { state: State::Idle, decoder: DecoderState::Idle, bytes: Vec::new(), last_ms: 0, tally: Tally::NONE }
    }

    /// What it has seen.
    pub const fn tally(&self) -> Tally {
        self.tally
    }

    /// Takes a byte, at a time in milliseconds that may start again at zero. A frame that was silent before it is dropped
    /// first, and counted in the [`Tally`].
    #[inline(never)]
    pub fn push(&mut self, byte: u8, now_ms: u32) -> Received {
        self.tick(now_ms);
        self.last_ms = now_ms;
        let received = self.take(byte);
        if let Received::Bad(_) = received {
            self.state = State::Discarding;
        }
        self.tally.count(&received);
        received
    }

    /// Gives it the time while nothing comes: a silent frame is dropped, and the line is text again.
    ///
    /// ```
    /// use ocellus_link::{frame::Fault, receiver::{Received, Receiver, SILENCE_MS}};
    /// let mut receiver = Receiver::new();
    /// receiver.push(0, 1000); // a stray zero
    /// assert_eq!(receiver.tick(1000 + SILENCE_MS - 1), Received::Nothing);
    /// assert_eq!(receiver.tick(1000 + SILENCE_MS), Received::Bad(Fault::Silence));
    /// assert_eq!(receiver.push(b'a', 1300), Received::Text(b'a'));
    /// ```
    pub fn tick(&mut self, now_ms: u32) -> Received {
        if now_ms.wrapping_sub(self.last_ms) < SILENCE_MS {
            return Received::Nothing;
        }
        let received = match core::mem::replace(&mut self.state, State::Idle) {
            State::Collecting => Received::Bad(Fault::Silence),
            State::Idle | State::Discarding => Received::Nothing,
        };
        self.tally.count(&received);
        received
    }

    fn take(&mut self, byte: u8) -> Received {
        match (&self.state, byte) {
            (State::Idle, 1..) => Received::Text(byte),
            (State::Discarding, 1..) => Received::Nothing,
            (State::Idle | State::Discarding, 0) => {
                self.state = State::Collecting;
                self.decoder = DecoderState::Idle;
                self.bytes.clear();
                Received::Nothing
            }
            (State::Collecting, _) => match self.decoder.feed(byte) {
                Ok(DecodeResult::NoData | DecodeResult::DataStart) => Received::Nothing,
                Ok(DecodeResult::DataContinue(data)) => match self.bytes.push(data) {
                    Ok(()) => Received::Nothing,
                    Err(_) => Received::Bad(Fault::TooLong),
                },
                Ok(DecodeResult::DataComplete) => match Frame::read(&self.bytes) {
                    Ok(frame) => {
                        self.state = State::Idle;
                        Received::Frame(frame)
                    }
                    Err(fault) => Received::Bad(fault),
                },
                Err(_) => Received::Bad(Fault::Stuffing),
            },
        }
    }
}
