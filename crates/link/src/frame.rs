//! One frame: version, kind, sequence, payload and CRC-32, stuffed so that no byte of it is zero, between zeros.

use cobs::CobsEncoder;
use heapless::Vec;

use crate::crc32;

/// The version of the protocol, the first byte of every frame.
pub const VERSION: u8 = 2;
/// The most bytes of a payload.
pub const LARGEST_PAYLOAD: usize = 80;
/// The bytes before a payload: version, kind, sequence.
const HEAD: usize = 3;
/// The bytes after it: the CRC.
const TAIL: usize = 4;
/// The most bytes of a frame before it is stuffed. Below 254 stuffing adds one byte and is one to one.
pub(crate) const LARGEST: usize = HEAD + LARGEST_PAYLOAD + TAIL;
const _: () = assert!(LARGEST < 254);

/// Why bytes between two zeros are not a frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// They end in the middle of a block.
    Stuffing,
    /// Fewer than version, kind, sequence and CRC.
    TooShort,
    /// More than the largest frame.
    TooLong,
    /// The CRC does not fit.
    Crc,
    /// Nothing came for [`crate::receiver::SILENCE_MS`].
    Silence,
}

/// What a frame can carry.
pub trait Payload {
    /// Which kind of message it is, and how many bytes it has.
    fn kind_and_size(&self) -> (u8, usize);

    /// Writes them, where there is exactly room for them.
    fn write(&self, room: &mut [u8]);
}

/// A frame that is whole: its CRC fits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frame {
    version: u8,
    kind: u8,
    sequence: u8,
    payload: Vec<u8, LARGEST_PAYLOAD>,
}

impl Frame {
    /// A message in a frame of this version.
    ///
    /// ```
    /// use ocellus_link::{frame::{Frame, VERSION}, message::{Hello, Message}};
    /// let frame = Frame::of(7, &Hello {});
    /// assert_eq!((frame.version(), frame.kind(), frame.sequence()), (VERSION, Hello::KIND, 7));
    /// assert_eq!(frame.payload(), b"");
    /// ```
    // not generic: a device would carry a copy for each message
    #[inline(never)]
    pub fn of(sequence: u8, message: &dyn Payload) -> Frame {
        let (kind, size) = message.kind_and_size();
        let mut frame = Frame { version: VERSION, kind, sequence, payload: Vec::new() };
        // there is room for every message: that is checked when their table is compiled
        if frame.payload.resize_default(size).is_ok() {
            message.write(&mut frame.payload);
        }
        frame
    }

    /// The version it was sent in.
    pub fn version(&self) -> u8 {
        self.version
    }

    /// The kind of its message, as in [`crate::message::TABLE`].
    pub fn kind(&self) -> u8 {
        self.kind
    }

    /// The number of the request that it is, or answers.
    pub fn sequence(&self) -> u8 {
        self.sequence
    }

    /// The bytes of its message.
    pub fn payload(&self) -> &[u8] {
        &self.payload
    }

    /// Sends it: two zeros, so that the loss of one opens it all the same; the stuffed bytes; one zero.
    ///
    /// ```
    /// use ocellus_link::{frame::Frame, message::Hello};
    /// let mut sent = Vec::new();
    /// Frame::of(7, &Hello {}).write(&mut |byte| sent.push(byte));
    /// assert_eq!(sent, [0, 0, 8, 2, 1, 7, 0x9E, 0xA9, 0xBA, 0x7B, 0]);
    /// ```
    pub fn write(&self, send: &mut dyn FnMut(u8)) {
        let head = [self.version, self.kind, self.sequence];
        let mut sum = crc32::Crc32::new();
        sum.update(&head);
        sum.update(&self.payload);
        let mut stuffed = [0; LARGEST + 1];
        let mut encoder = CobsEncoder::new(&mut stuffed);
        // it has room for the largest frame, so none of these can fail
        let fits = [&head, self.payload(), &sum.finish().to_le_bytes()].iter().all(|piece| encoder.push(piece).is_ok());
        let length = encoder.finalize();
        debug_assert!(fits);
        [0, 0].into_iter().chain(stuffed.into_iter().take(length)).chain([0]).for_each(send);
    }

    /// Reads unstuffed bytes; length and CRC are checked before anything else is looked at.
    pub(crate) fn read(bytes: &[u8]) -> Result<Frame, Fault> {
        let (body, crc) = bytes.split_last_chunk::<TAIL>().ok_or(Fault::TooShort)?;
        let (&[version, kind, sequence], payload) = body.split_first_chunk::<HEAD>().ok_or(Fault::TooShort)?;
        if crc32::of(body) != u32::from_le_bytes(*crc) {
            return Err(Fault::Crc);
        }
        let payload = Vec::from_slice(payload).map_err(|_| Fault::TooLong)?;
        Ok(Frame { version, kind, sequence, payload })
    }
}
