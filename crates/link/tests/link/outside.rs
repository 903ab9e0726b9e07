//! What others printed, and what an independent transcription of it says about our frames.

use ocellus_link::frame::{Frame, VERSION};
use ocellus_link::message::*;

/// Consistent overhead byte stuffing, after the algorithm of S. Cheshire and M. Baker, "Consistent Overhead Byte
/// Stuffing", IEEE/ACM Transactions on Networking 7 (1999) 159-172.
pub(crate) fn stuffed(data: &[u8]) -> Vec<u8> {
    let mut out = Vec::new();
    let mut block = Vec::new();
    let mut finish = |block: &mut Vec<u8>| {
        out.push(block.len() as u8 + 1);
        out.append(block);
    };
    for &byte in data {
        match byte {
            0 => finish(&mut block),
            _ => block.push(byte),
        }
        assert!(block.len() < 254, "longer than any frame here");
    }
    finish(&mut block);
    out
}

/// CRC-32/ISO-HDLC bit by bit, after its parameters in the published catalogue of parametrised CRC algorithms: polynomial
/// 0x04C11DB7, reflected in and out, starting at all ones, all ones added at the end.
pub(crate) fn crc32(data: &[u8]) -> u32 {
    let mut register = u32::MAX;
    for byte in data {
        for bit in 0..8 {
            let out = (register & 1) ^ u32::from(byte >> bit & 1);
            register = (register >> 1) ^ (out * 0x04C1_1DB7_u32.reverse_bits());
        }
    }
    !register
}

/// The bytes of a frame, made without the crate.
pub(crate) fn envelope(version: u8, kind: u8, sequence: u8, payload: &[u8]) -> Vec<u8> {
    let mut body = [&[version, kind, sequence], payload].concat();
    body.extend(crc32(&body).to_le_bytes());
    [&[0, 0][..], &stuffed(&body), &[0]].concat()
}

/// The check value of the catalogue (memory; it is also that of any text on this CRC).
#[test]
fn crc_check_value() {
    assert_eq!(crc32(b"123456789"), 0xCBF4_3926);
}

/// The example of figure 3 of the paper (memory), and the shortest cases, which follow from its definition.
#[test]
fn stuffing_as_published() {
    const EXAMPLES: [(&[u8], &[u8]); 6] = [
        (
            &[0x45, 0x00, 0x00, 0x2C, 0x4C, 0x79, 0x00, 0x00, 0x40, 0x06, 0x4F, 0x37],
            &[0x02, 0x45, 0x01, 0x04, 0x2C, 0x4C, 0x79, 0x01, 0x05, 0x40, 0x06, 0x4F, 0x37],
        ),
        (&[], &[0x01]),
        (&[0x00], &[0x01, 0x01]),
        (&[0x11], &[0x02, 0x11]),
        (&[0x00, 0x00], &[0x01, 0x01, 0x01]),
        (&[0x11, 0x00], &[0x02, 0x11, 0x01]),
    ];
    for (plain, expected) in EXAMPLES {
        assert_eq!(stuffed(plain), expected, "our transcription");
        let mut encoded = [0; 32];
        let length = cobs::try_encode(plain, &mut encoded).unwrap();
        assert_eq!(&encoded[..length], expected, "the library");
        let mut decoded = [0; 32];
        let mut decoder = cobs::CobsDecoder::new(&mut decoded);
        let fed = expected.iter().chain(&[0]).map(|byte| decoder.feed(*byte).unwrap()).last();
        assert_eq!(fed, Some(Some(plain.len())), "{expected:?}");
        assert_eq!(&decoded[..plain.len()], plain);
    }
}

#[test]
fn frames_are_what_the_transcription_makes() {
    let (parts, entries) = ([3, 4, 0, 0, 0, 0, 0], [0; ENTRIES]);
    let enter = Enter { count: 2, parts, entries, values: [23.45, 0.0, 1.0, 0.0, 0.0, 0.0, -0.0] };
    let frames = [Frame::of(0, &Hello {}), Frame::of(255, &enter), Frame::of(9, &Plan { case_sum: 0xFF00_0000 })];
    for frame in frames {
        let mut sent = Vec::new();
        frame.write(&mut |byte| sent.push(byte));
        assert_eq!(sent, envelope(VERSION, frame.kind(), frame.sequence(), frame.payload()));
    }
}
