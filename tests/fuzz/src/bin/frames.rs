//! A line of any bytes, as it is and as a frame whose CRC fits: the receiver never panics, everything that it takes is
//! written again with the same bytes, and a device answers each of its requests with frames that are taken.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_link::frame::{Frame, VERSION};
use ocellus_link::receiver::{Received, Receiver};
use ocellus_link::respond::{Host, Responder};

struct Board;

impl Host for Board {
    fn board(&self) -> &str {
        "fuzzed"
    }
    fn build(&self) -> &str {
        "fuzzed"
    }
    fn target(&self) -> &str {
        "fuzzed"
    }
    fn ticks(&self) -> u32 {
        0
    }
    fn ticks_per_second(&self) -> u32 {
        1
    }
    fn overruns(&self) -> u32 {
        0
    }
    fn stack_used(&self) -> u32 {
        0
    }
    fn stack_size(&self) -> u32 {
        0
    }
}

/// The frames that a receiver takes, each written again as it came.
fn frames(line: &[u8]) -> Vec<Frame> {
    let mut receiver = Receiver::new();
    let (mut frames, mut between) = (Vec::new(), Vec::new());
    for &byte in line {
        if let Received::Frame(frame) = receiver.push(byte, 0) {
            let mut again = Vec::new();
            frame.write(&mut |byte| again.push(byte));
            assert_eq!(again, [&[0, 0], &between[..], &[0]].concat());
            frames.push(frame);
        }
        match byte {
            0 => between.clear(),
            _ => between.push(byte),
        }
    }
    frames
}

/// Bytes as a frame whose CRC fits.
fn wrapped(body: &[u8]) -> Vec<u8> {
    let crc = crc::Crc::<u32>::new(&crc::CRC_32_ISO_HDLC).checksum(body);
    [&[0], &cobs::encode_vec(&[body, &crc.to_le_bytes()].concat())[..], &[0]].concat()
}

fuzz_target!(|bytes: &[u8]| {
    // a case is more than one frame: pieces between 0xFF are bodies of frames of this version, one after the other
    let bodies: Vec<u8> =
        bytes.split(|byte| *byte == 0xFF).flat_map(|body| wrapped(&[&[VERSION], body].concat())).collect();
    let mut device = Responder::new();
    for frame in [frames(bytes), frames(&wrapped(bytes)), frames(&bodies)].concat() {
        let mut answer = Vec::new();
        device.answer(&frame, &Board, &mut |byte| answer.push(byte));
        assert_eq!(frames(&answer).is_empty(), frame.kind() >= 0x80);
        assert!(frames(&answer).iter().all(|reply| reply.sequence() == frame.sequence()));
    }
});
