//! A line that damages what goes over it, the same way for the same seed.

use fastrand::Rng;
use ocellus_cli::device::port::Port;
use std::collections::VecDeque;
use std::io::{self, Read, Write};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread::sleep;
use std::time::Duration;

/// How long the line falls silent now and then: longer than a frame may.
const STALL: Duration = Duration::from_millis(300);

/// What can happen to a byte.
#[derive(Clone, Copy, Debug)]
pub enum Fault {
    /// One of its bits is turned.
    Flip,
    /// It is lost.
    Drop,
    /// It comes twice.
    Duplicate,
    /// Another comes before it.
    Insert,
    /// It and all that was sent with it are lost.
    Truncate,
    /// It comes late.
    Stall,
}

impl Fault {
    /// Every kind.
    pub const ALL: [Fault; 6] =
        [Fault::Flip, Fault::Drop, Fault::Duplicate, Fault::Insert, Fault::Truncate, Fault::Stall];
}

/// Bytes as they come out of such a line.
pub struct Damage {
    random: Rng,
    /// One byte in so many is damaged.
    one_in: u32,
    done: Arc<AtomicU64>,
}

impl Damage {
    /// One byte in so many, from a seed.
    pub fn new(seed: u64, one_in: u32) -> Damage {
        Damage { random: Rng::with_seed(seed), one_in, done: Arc::default() }
    }

    /// How much damage was done, counted while it goes on.
    pub fn done(&self) -> Arc<AtomicU64> {
        Arc::clone(&self.done)
    }

    /// Passes bytes on, some of them damaged.
    pub fn pass(&mut self, bytes: &[u8]) -> Vec<u8> {
        let mut passed = Vec::with_capacity(bytes.len() + 8);
        for &byte in bytes {
            if self.random.u32(0..self.one_in) > 0 {
                passed.push(byte);
                continue;
            }
            self.done.fetch_add(1, Ordering::Relaxed);
            match self.random.choice(Fault::ALL).unwrap_or(Fault::Drop) {
                Fault::Flip => passed.push(byte ^ (1 << self.random.u8(0..8))),
                Fault::Drop => {}
                Fault::Duplicate => passed.extend([byte, byte]),
                Fault::Insert => passed.extend([self.random.u8(..), byte]),
                Fault::Truncate => return passed,
                Fault::Stall => {
                    sleep(STALL);
                    passed.push(byte);
                }
            }
        }
        passed
    }
}

/// A port whose bytes are damaged both ways.
pub struct Faulty {
    port: Box<dyn Port>,
    there: Damage,
    back: Damage,
    read: VecDeque<u8>,
}

impl Faulty {
    /// Around another port.
    pub fn new(port: Box<dyn Port>, there: Damage, back: Damage) -> Faulty {
        Faulty { port, there, back, read: VecDeque::new() }
    }
}

impl Read for Faulty {
    fn read(&mut self, bytes: &mut [u8]) -> io::Result<usize> {
        while self.read.is_empty() {
            let count = self.port.read(bytes)?;
            if count == 0 {
                return Ok(0);
            }
            self.read.extend(self.back.pass(&bytes[..count]));
        }
        self.read.read(bytes)
    }
}

impl Write for Faulty {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let passed = self.there.pass(bytes);
        self.port.write_all(&passed)?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        self.port.flush()
    }
}
