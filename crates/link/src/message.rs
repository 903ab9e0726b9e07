//! Every message, in one table. It is append-only: a kind, once given, keeps its number and its fields.
//!
//! All messages have one fixed size: no enum, no option, no length in front. Where a method may be absent it is its number
//! plus 1, or 0; where an entry may be absent it is of part 0, which no part is.

use postcard::experimental::max_size::MaxSize;
use postcard::fixint::le;
use serde::{Deserialize, Serialize, de::DeserializeOwned};

use crate::frame::{Frame, LARGEST_PAYLOAD, Payload};

/// How many entries one [`Enter`] carries.
pub const ENTRIES: usize = 7;
const _: () = assert!(ocellus_card::name::LENGTH == 24);

/// A message that a frame can carry.
pub trait Message: Sized + Serialize + DeserializeOwned + MaxSize {
    /// Its number.
    const KIND: u8;
    /// The bytes of its payload, always so many.
    const SIZE: usize;

    /// The message in a frame, when the frame is of this kind and all of its payload is used.
    ///
    /// ```
    /// use ocellus_link::{frame::Frame, message::{Ack, Message, Plan}};
    /// let frame = Frame::of(1, &Plan { case_sum: 5 });
    /// assert_eq!(Plan::of(&frame), Some(Plan { case_sum: 5 }));
    /// assert_eq!(Ack::of(&frame), None);
    /// ```
    fn of(frame: &Frame) -> Option<Self> {
        if frame.kind() != Self::KIND || frame.payload().len() != Self::SIZE {
            return None;
        }
        postcard::from_bytes(frame.payload()).ok()
    }
}

impl<M: Message> Payload for M {
    fn kind_and_size(&self) -> (u8, usize) {
        (M::KIND, M::SIZE)
    }

    fn write(&self, room: &mut [u8]) {
        // room and size are checked when the table is compiled, so it cannot fail
        let written = postcard::to_slice(self, room).is_ok();
        debug_assert!(written);
    }
}

/// A row of the table of messages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its name.
    pub name: &'static str,
    /// Its number.
    pub kind: u8,
    /// The bytes of its payload.
    pub size: usize,
    /// Its fields in order, each with its type.
    pub fields: &'static [(&'static str, &'static str)],
}

macro_rules! messages {
    ($($(#[$group_about:meta])* $Group:ident {
        $($(#[$about:meta])* $Name:ident = $kind:literal {
            $($(#[$attribute:meta])* $field:ident: $type:ty,)*
        })+
    })+) => {
        $($(
            $(#[$about])*
            #[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, MaxSize)]
            pub struct $Name { $($(#[$attribute])* pub $field: $type,)* }

            impl Message for $Name {
                const KIND: u8 = $kind;
                const SIZE: usize = 0 $(+ size_of::<$type>())*;
            }

            // postcard's own count is for integers of variable length, so it is an upper bound
            const _: () = assert!($Name::SIZE <= $Name::POSTCARD_MAX_SIZE);
            const _: () = assert!($Name::POSTCARD_MAX_SIZE <= LARGEST_PAYLOAD);

            impl From<$Name> for $Group {
                fn from(message: $Name) -> $Group { $Group::$Name(message) }
            }
        )+

        $(#[$group_about])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub enum $Group { $($(#[$about])* $Name($Name),)+ }

        impl $Group {
            /// The message in a frame, when it is one of these.
            #[inline(never)]
            pub fn of(frame: &Frame) -> Option<$Group> {
                match frame.kind() { $($kind => $Name::of(frame).map($Group::$Name),)+ _ => None }
            }

            /// Whether a kind is one of these.
            pub const fn has(kind: u8) -> bool { matches!(kind, $($Name::KIND)|+) }

            /// It in a frame.
            #[inline(never)]
            pub fn frame(&self, sequence: u8) -> Frame {
                let message: &dyn Payload = match self { $($Group::$Name(message) => message,)+ };
                Frame::of(sequence, message)
            }
        })+

        /// Every message, in the order of the table.
        pub const TABLE: &[Row] = &[$($(Row {
            name: stringify!($Name),
            kind: $kind,
            size: $Name::SIZE,
            fields: &[$((stringify!($field), stringify!($type))),*],
        },)+)+];
    };
}

messages! {
    /// What a desk asks. Each is answered by the reply named, or by [`Problem`].
    Request {
        /// Who is there? Answered in any version by [`Welcome`].
        Hello = 0x01 {}
        /// Which program is it? Answered by [`Built`].
        Build = 0x02 {}
        /// Forgets the case being sent. Answered by [`Ack`].
        Begin = 0x03 {}
        /// Enters numbers, words and dates. Answered by [`Ack`].
        Enter = 0x04 {
            /// How many of the seven are meant.
            count: u8,
            /// The parts that the entries are of.
            #[serde(with = "crate::array")]
            parts: [u8; 7],
            /// Their numbers in their parts.
            #[serde(with = "crate::array")]
            entries: [u8; 7],
            /// Their values: a number in the unit of its entry, the place of a word, a date as YYYYMMDD.
            #[serde(with = "crate::array")]
            values: [f64; 7],
        }
        /// Enters a name. Answered by [`Ack`].
        EnterName = 0x05 {
            /// The part that the entry is of.
            part: u8,
            /// Its number in that part.
            entry: u8,
            /// How many of the characters are meant.
            length: u8,
            /// The characters, ASCII.
            #[serde(with = "crate::array")]
            characters: [u8; 24],
        }
        /// Plans the case. Answered by a stream and [`Done`].
        Plan = 0x06 {
            /// The sum of the entries meant: [`crate::entries::case_sum`].
            #[serde(with = "le")]
            case_sum: u32,
        }
        /// Explains a part of it. Answered by a stream and [`Done`].
        Explain = 0x07 {
            /// The sum of the entries meant.
            #[serde(with = "le")]
            case_sum: u32,
            /// The part that has it, or 0 for a method.
            part: u8,
            /// What to explain: its number in that part, or the method's.
            subject: u8,
        }
        /// Asks for the read-back code, without identifiers, which are never sent. Answered by [`Code`].
        ReadBack = 0x08 {
            /// The sum of the entries meant.
            #[serde(with = "le")]
            case_sum: u32,
        }
        /// Converts a pressure. Answered by [`Converted`].
        Convert = 0x09 {
            /// The unit it is in.
            from: u8,
            /// The unit asked for.
            to: u8,
            /// The pressure.
            value: f64,
        }
        /// Plans the case and keeps nothing, to see how long it takes. Answered by [`Timed`].
        Time = 0x0A {
            /// The sum of the entries meant.
            #[serde(with = "le")]
            case_sum: u32,
        }
        /// How is the line, and the stack? Answered by [`Counted`].
        Counters = 0x0B {}
    }

    /// What a device answers.
    Reply {
        /// Who is here. The desk compares all of it before it believes anything else: [`Welcome::disagreement`].
        Welcome = 0x81 {
            /// The version of the protocol.
            version: u8,
            /// What the numbers mean, of its parts and of the rest: [`crate::schema`].
            #[serde(with = "le")]
            schema: u32,
            /// The version of the arithmetic: major, minor, patch.
            #[serde(with = "crate::array")]
            core: [u8; 3],
            /// The most bytes of a payload.
            largest_payload: u8,
            /// The board, ASCII, filled up with zeros.
            #[serde(with = "crate::array")]
            board: [u8; 16],
            /// Which parts it has: for each the bit of its number.
            #[serde(with = "le")]
            parts: u64,
        }
        /// Which program it is.
        Built = 0x82 {
            /// What it was built from, ASCII, filled up with zeros.
            #[serde(with = "crate::array")]
            build: [u8; 16],
            /// What it was built for, ASCII, filled up with zeros.
            #[serde(with = "crate::array")]
            target: [u8; 32],
        }
        /// Done as asked.
        Ack = 0x83 {}
        /// The end of a stream.
        Done = 0x84 {
            /// How many events it had.
            #[serde(with = "le")]
            count: u16,
            /// CRC-32 over kind and payload of each, in order, and then the outcome.
            #[serde(with = "le")]
            crc: u32,
            /// How it came out: [`crate::code::Outcome`].
            outcome: u8,
        }
        /// The read-back code.
        Code = 0x85 {
            /// As it is read out, ASCII, with its hyphen.
            #[serde(with = "crate::array")]
            characters: [u8; 7],
        }
        /// A pressure in the unit asked for.
        Converted = 0x86 {
            /// The pressure.
            value: f64,
        }
        /// How long a plan took.
        Timed = 0x87 {
            /// In ticks of the device's clock.
            #[serde(with = "le")]
            ticks: u32,
            /// How many of them are a second.
            #[serde(with = "le")]
            ticks_per_second: u32,
            /// How many events it had.
            #[serde(with = "le")]
            events: u16,
        }
        /// What was counted since the device started; each number starts again at zero after its last.
        Counted = 0x88 {
            /// Whole frames, this request among them.
            #[serde(with = "le")]
            frames: u32,
            /// Frames dropped for their stuffing, their length or their CRC.
            #[serde(with = "le")]
            bad: u32,
            /// Frames dropped because they were longer than the largest.
            #[serde(with = "le")]
            too_long: u32,
            /// Frames dropped for silence.
            #[serde(with = "le")]
            silences: u32,
            /// Whole frames that were refused.
            #[serde(with = "le")]
            refused: u32,
            /// Bytes lost because they came faster than they were read.
            #[serde(with = "le")]
            overruns: u32,
            /// Bytes of typed text.
            #[serde(with = "le")]
            typed: u32,
            /// The most of the stack that was ever used, bytes.
            #[serde(with = "le")]
            stack_used: u32,
            /// Its size, bytes.
            #[serde(with = "le")]
            stack_size: u32,
        }
        /// Refused.
        Problem = 0x89 {
            /// Why: [`crate::code::Refusal`].
            refusal: u8,
            /// What it is about; its meaning stands with the refusal.
            detail: u8,
            /// The part of the entry or subject that it is about, or 0.
            part: u8,
        }
    }

    /// An event of a stream. Typed: [`crate::event::Event`].
    Streamed {
        /// A part of the card begins.
        PartEvent = 0xC1 {
            /// Its place in the stream, from 0.
            #[serde(with = "le")]
            index: u16,
            /// The part.
            part: u8,
        }
        /// An entry belongs here.
        EntryEvent = 0xC2 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The part that it is of.
            part: u8,
            /// Its number in that part.
            entry: u8,
        }
        /// A computed number.
        ItemEvent = 0xC3 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The part that it is of.
            part: u8,
            /// What it is: its number in that part.
            what: u8,
            /// The method plus 1, or 0.
            method: u8,
            /// The row of its table.
            row: u8,
            /// The value, unrounded.
            value: f64,
        }
        /// A caution.
        CautionEvent = 0xC4 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The part that it is of.
            part: u8,
            /// Which: its number in that part.
            code: u8,
            /// The part of the entry that it is about, or 0.
            entry_part: u8,
            /// The number of that entry in it.
            entry: u8,
            /// The method it is about plus 1, or 0.
            method: u8,
        }
        /// A line for two people to tick.
        SignOffEvent = 0xC5 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The part that it is of.
            part: u8,
            /// The line: its number in that part.
            line: u8,
        }
        /// An intermediate value.
        StepEvent = 0xC6 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The part that has its table, or 0 for a method.
            part: u8,
            /// The table: its number in that part, or the method's.
            table: u8,
            /// Its place in that table.
            step: u8,
            /// The value.
            value: f64,
        }
        /// What is wrong with the entries.
        WrongEvent = 0xC7 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The kind of wrong.
            code: u8,
            /// The part of the entry that is wrong.
            part: u8,
            /// Its number in that part.
            entry: u8,
            /// 1 when there is a value, else 0.
            has_value: u8,
            /// 1 when it broke the limits of its entry, else 0.
            has_bounds: u8,
            /// The value, or 0.
            value: f64,
        }
        /// An entry was asked for and is not there, in an explanation without steps.
        LacksEvent = 0xC8 {
            /// Its place in the stream.
            #[serde(with = "le")]
            index: u16,
            /// The part that it is of.
            part: u8,
            /// Its number in that part.
            entry: u8,
        }
    }
}
