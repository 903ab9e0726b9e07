//! Frames and messages between a device and a desk.
//!
//! One line carries two conversations: a byte 0x00 opens a frame, everything else is typed text. `PROTOCOL.md` beside
//! this crate says every byte; `schema.txt` says what every number means.
//!
//! | module | holds |
//! |---|---|
//! | [`frame`] | one frame: COBS, version, kind, sequence, payload, CRC-32 |
//! | [`receiver`] | bytes of a line to text and frames |
//! | [`message`] | every message, in one table |
//! | [`code`] | outcomes, and why a device refuses |
//! | [`entries`] | a draft on the line, and its sum |
//! | [`event`] | what a plan or an explanation streams |
//! | [`respond`] | the device's side |
//! | `collect` | the desk's side: whole, checked streams only (feature `alloc`) |
//! | [`schema`] | one number for what all the numbers mean |
//!
//! A desk's request and a device's answer:
//!
//! ```
//! use ocellus_link::{collect, frame::Frame, message::{Hello, Welcome}, receiver::{Received, Receiver}, respond::*};
//!
//! struct Board;
//! impl Host for Board {
//!     fn board(&self) -> &str { "demo" }
//!     fn build(&self) -> &str { "0123abcd" }
//!     fn target(&self) -> &str { "host" }
//!     fn ticks(&self) -> u32 { 0 }
//!     fn ticks_per_second(&self) -> u32 { 1000 }
//!     fn overruns(&self) -> u32 { 0 }
//!     fn stack_used(&self) -> u32 { 0 }
//!     fn stack_size(&self) -> u32 { 0 }
//! }
//!
//! let (mut request, mut answer) = (Vec::new(), Vec::new());
//! Frame::of(1, &Hello {}).write(&mut |byte| request.push(byte));
//!
//! let mut device = Responder::new();
//! for byte in request {
//!     let typed = device.push(byte, 0, &Board, &mut |byte| answer.push(byte));
//!     assert_eq!(typed, None);
//! }
//!
//! let mut desk = Receiver::new();
//! for byte in answer {
//!     if let Received::Frame(frame) = desk.push(byte, 0) {
//!         let welcome: Welcome = collect::reply(&frame, 1)?;
//!         assert_eq!(welcome.disagreement(), None);
//!     }
//! }
//! # Ok::<(), collect::Failure>(())
//! ```
#![no_std]

#[cfg(any(test, feature = "alloc"))]
extern crate alloc;

#[cfg(feature = "alloc")]
pub mod collect;

pub mod code;
pub mod entries;
pub mod event;
pub mod frame;
pub mod message;
pub mod receiver;
pub mod respond;
pub mod schema;

mod array;
mod crc32;
mod number;
mod stream;
