//! Damaged frames: none is ever taken for another message, and the next good one is taken.

use ocellus_link::frame::{Fault, Frame, VERSION};
use ocellus_link::message::*;
use ocellus_link::receiver::{Received, Receiver, SILENCE_MS, Tally};

use crate::line::bytes;
use crate::outside::{crc32, envelope, stuffed};

/// A frame of every kind.
fn every_kind() -> Vec<Frame> {
    let payload = |row: &Row| (0..row.size as u8).map(|place| place.wrapping_mul(37) % 5 * 41).collect::<Vec<_>>();
    TABLE.iter().flat_map(|row| crate::line::frames(&envelope(VERSION, row.kind, 200, &payload(row)))).collect()
}

fn good() -> Frame {
    Frame::of(77, &Hello {})
}

/// The frames taken from damaged bytes with a good frame right after them. The good one must be the last.
fn taken(damaged: &[u8]) -> Vec<Frame> {
    let mut taken = crate::line::frames(&[damaged, &bytes(&good())].concat());
    assert_eq!(taken.pop(), Some(good()), "after {damaged:02X?}");
    taken
}

/// Each of these either is the frame that was sent or is none.
fn never_another(sent: &Frame, damaged: &[u8]) {
    let taken = taken(damaged);
    assert!(taken.iter().all(|frame| frame == sent), "{damaged:02X?} was taken for {taken:?}");
    assert!(taken.len() <= 1);
}

#[test]
fn one_bit_flipped() {
    for frame in every_kind() {
        let whole = bytes(&frame);
        for place in 0..whole.len() {
            for bit in 0..8 {
                let mut damaged = whole.clone();
                damaged[place] ^= 1 << bit;
                never_another(&frame, &damaged);
                if (2..whole.len() - 1).contains(&place) {
                    assert_eq!(taken(&damaged), [], "bit {bit} of byte {place} of {whole:02X?}");
                }
            }
        }
    }
}

#[test]
fn bytes_dropped_doubled_inserted_or_cut_off() {
    for frame in every_kind() {
        let whole = bytes(&frame);
        for place in 0..whole.len() {
            let mut dropped = whole.clone();
            dropped.remove(place);
            never_another(&frame, &dropped);
            let mut doubled = whole.clone();
            doubled.insert(place, whole[place]);
            never_another(&frame, &doubled);
            for byte in [0, 1, 2, 0x55, 0xFF] {
                let mut inserted = whole.clone();
                inserted.insert(place, byte);
                never_another(&frame, &inserted);
            }
            never_another(&frame, &whole[..place]);
            never_another(&frame, &whole[place..]);
        }
    }
}

/// Either of the two openers may be lost, or the closer if another frame follows.
#[test]
fn an_opener_or_the_closer_lost_loses_no_frame() {
    let whole = bytes(&every_kind()[3]);
    for lost in [0, 1, whole.len() - 1] {
        let mut damaged = whole.clone();
        damaged.remove(lost);
        assert_eq!(taken(&damaged), [every_kind()[3].clone()]);
    }
}

/// What comes after the largest length is dropped up to the next zero, even if it is a frame by itself.
#[test]
fn the_tail_of_a_frame_too_long_is_no_frame() {
    let tail = bytes(&good());
    let tail = &tail[2..];
    for (before, fill) in
        [81, 88, 89, 90, 91, 170, 300, 5000].into_iter().flat_map(|before| [(before, 1), (before, 0xFF)])
    {
        let mut receiver = Receiver::new();
        let too_long = [&[0, 0][..], &vec![fill; before], tail].concat();
        let received: Vec<_> = too_long.iter().map(|byte| receiver.push(*byte, 0)).collect();
        assert!(!received.iter().any(|received| matches!(received, Received::Frame(_))), "{before}");
        assert_eq!(receiver.tally(), Tally { too_long: 1, ..Tally::default() }, "{before} {fill}");
        assert_eq!(taken(&too_long), []);
    }
}

/// Whole in itself, with a good CRC, and too long all the same.
#[test]
fn too_long_and_whole() {
    let body = [[VERSION, 1, 0].as_slice(), &[7; 81]].concat();
    let body = [&body[..], &crc32(&body).to_le_bytes()].concat();
    let mut receiver = Receiver::new();
    let received: Vec<_> = [0].iter().chain(&stuffed(&body)).chain(&[0]).map(|byte| receiver.push(*byte, 0)).collect();
    assert_eq!(received.iter().filter(|received| **received != Received::Nothing).count(), 1);
    assert_eq!(receiver.tally(), Tally { too_long: 1, ..Tally::default() });
}

#[test]
fn faults_are_distinguished() {
    let whole = bytes(&good());
    let fault = |bytes: &[u8]| {
        let mut receiver = Receiver::new();
        let faults = bytes.iter().map(|byte| receiver.push(*byte, 0)).filter_map(|received| match received {
            Received::Bad(fault) => Some(fault),
            _ => None,
        });
        faults.collect::<Vec<_>>()
    };
    assert_eq!(fault(&whole), []);
    assert_eq!(fault(&[0, 9, 1, 0]), [Fault::Stuffing]);
    assert_eq!(fault(&[0, 7, 1, 1, 1, 1, 1, 1, 0]), [Fault::TooShort]);
    assert_eq!(fault(&[0, 1, 0]), [Fault::TooShort]);
    assert_eq!(fault(&[0, 8, 1, 1, 1, 1, 1, 1, 1, 0]), [Fault::Crc]);
    assert_eq!(fault(&[&[0][..], &[0xFF; 100]].concat()), [Fault::TooLong]);
}

#[test]
fn text_and_frames_in_turn() {
    let mut receiver = Receiver::new();
    let (mut text, mut frames) = (Vec::new(), Vec::new());
    let line: Vec<u8> = every_kind()
        .iter()
        .flat_map(|frame| [b"plan\r".to_vec(), bytes(frame), b"al 23.45\r\n".to_vec()].concat())
        .collect();
    for byte in line {
        match receiver.push(byte, 0) {
            Received::Text(byte) => text.push(byte),
            Received::Frame(frame) => frames.push(frame),
            Received::Nothing => {}
            Received::Bad(fault) => panic!("{fault:?}"),
        }
    }
    assert_eq!(frames, every_kind());
    assert_eq!(text, b"plan\ral 23.45\r\n".repeat(frames.len()));
    let expected = Tally { frames: frames.len() as u32, typed: text.len() as u32, ..Tally::default() };
    assert_eq!(receiver.tally(), expected);
}

/// A stray zero stops typed text for a quarter of a second and no longer, whatever the clock says.
#[test]
fn a_silent_frame_is_dropped() {
    for start in [0, 12_345, u32::MAX - 100] {
        let at = |ms: u32| start.wrapping_add(ms);
        let mut receiver = Receiver::new();
        // a line that was quiet long before the first byte is no frame gone silent
        assert_eq!(receiver.tick(at(0)), Received::Nothing);
        assert_eq!(receiver.push(0, at(0)), Received::Nothing);
        assert_eq!(receiver.push(b'a', at(200)), Received::Nothing);
        assert_eq!(receiver.tick(at(200 + SILENCE_MS - 1)), Received::Nothing);
        assert_eq!(receiver.tick(at(200 + SILENCE_MS)), Received::Bad(Fault::Silence));
        assert_eq!(receiver.push(b'b', at(460)), Received::Text(b'b'));
        // and without a tick in between
        receiver.push(0, at(500));
        receiver.push(3, at(510));
        assert_eq!(receiver.push(b'c', at(510 + SILENCE_MS)), Received::Text(b'c'));
        // after a bad frame too
        assert_eq!([0, 9, 9, 0].map(|byte| receiver.push(byte, at(800)))[3], Received::Bad(Fault::Stuffing));
        assert_eq!(receiver.push(b'd', at(900)), Received::Nothing);
        assert_eq!(receiver.tick(at(900 + SILENCE_MS)), Received::Nothing);
        assert_eq!(receiver.push(b'e', at(1200)), Received::Text(b'e'));
        assert_eq!(receiver.tally(), Tally { silences: 2, bad: 1, typed: 3, ..Tally::default() });
    }
}

/// A frame whose bytes come slowly, but not silently.
#[test]
fn a_slow_frame_is_taken() {
    let mut receiver = Receiver::new();
    let slow = bytes(&good()).into_iter().zip(0..);
    let received = slow.map(|(byte, count)| receiver.push(byte, count * (SILENCE_MS - 1))).last();
    assert_eq!(received, Some(Received::Frame(good())));
}

/// xorshift64* (Vigna 2016): the same damage each time.
struct Random(u64);

impl Random {
    fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33) as usize % limit
    }
}

fn hurt(bytes: &mut Vec<u8>, random: &mut Random) {
    let place = random.below(bytes.len());
    match random.below(7) {
        0 => bytes[place] ^= 1 << random.below(8),
        1 => bytes[place] = random.below(256) as u8,
        2 => bytes[place] = 0,
        3 => bytes.insert(place, random.below(256) as u8),
        4 => drop(bytes.remove(place)),
        5 => {
            let end = bytes.len().min(place + random.below(20));
            bytes[place..end].iter_mut().for_each(|byte| *byte = random.below(256) as u8);
        }
        _ => {
            let end = bytes.len().min(place + random.below(20));
            bytes.drain(place..end);
        }
    }
    if bytes.is_empty() {
        bytes.push(0);
    }
}

/// Two frames a round, one to six faults each way: 240,000 damaged frames through one receiver.
#[test]
fn damage_of_every_kind() {
    const ROUNDS: u32 = 120_000;
    let frames = every_kind();
    let mut random = Random(0x0CE1_1005);
    let mut receiver = Receiver::new();
    let (mut now, mut whole, mut damaged) = (0u32, 0u32, 0u32);
    for round in 0..ROUNDS {
        let pair = [0, 1].map(|_| &frames[random.below(frames.len())]);
        let sent = pair.map(bytes).concat();
        let mut line = sent.clone();
        (0..=random.below(6)).for_each(|_| hurt(&mut line, &mut random));
        for byte in &line {
            now = now.wrapping_add(1);
            if let Received::Frame(frame) = receiver.push(*byte, now) {
                assert!(pair.contains(&&frame), "round {round}: {frame:?} was never sent; the line was {line:02X?}");
                whole += 1;
            }
        }
        damaged += 2;
        now = now.wrapping_add(SILENCE_MS);
        receiver.tick(now);
        let last = bytes(&good()).iter().map(|byte| receiver.push(*byte, now)).last();
        assert_eq!(last, Some(Received::Frame(good())), "round {round} did not recover");
    }
    let tally = receiver.tally();
    assert!(damaged >= 200_000);
    assert_eq!(tally.frames, whole + ROUNDS);
    assert!(
        whole < damaged / 2 && tally.bad > ROUNDS / 2 && tally.silences > 1000 && tally.too_long > 100,
        "{tally:?}"
    );
}
