//! MPS2 with application note 386: a Cortex-M4F at 25 MHz. Run in an emulator; never run on the board itself.

#![expect(unsafe_code, reason = "an interrupt that has to be switched on")]

use core::num::NonZeroU32;

use cortex_m::interrupt::InterruptNumber;
use cortex_m::peripheral::{NVIC, Peripherals};
use cortex_m_rt::exception;
use embedded_hal::digital::OutputPin;
use embedded_hal::i2c::{self, ErrorKind, I2c, NoAcknowledgeSource, Operation};
use embedded_io::{Read, Write};

use crate::{received, systick};

mod cmsdk;

pub(crate) use cmsdk::Timer as Counter;

#[cfg(feature = "log")]
use defmt_semihosting as _;

pub(crate) const NAME: &str = "mps2-an386";

/// 25 MHz.
pub(crate) const TICKS_PER_MILLI: NonZeroU32 = NonZeroU32::new(25_000).unwrap();

/// 25 MHz, as its timer.
pub(crate) const CYCLES_PER_MICRO: u32 = 25;

/// The interrupt of the first UART's receiver.
#[derive(Clone, Copy)]
struct Received;

// SAFETY: always the same number, one that the board has.
unsafe impl InterruptNumber for Received {
    fn number(self) -> u16 {
        0
    }
}

/// The counter that measures, the line, the first light, and a bus with nothing on it.
pub(crate) fn start() -> Option<(Counter, impl Write, impl OutputPin, impl I2c)> {
    let core = Peripherals::take()?;
    let (timer, sender) = (Counter::start(), cmsdk::Sender::open());
    systick::wake_every(250_000, core.SYST);
    listen();
    Some((timer, sender, cmsdk::Light, NoBus))
}

/// A bus that nothing is on: nobody answers.
struct NoBus;

impl i2c::ErrorType for NoBus {
    type Error = ErrorKind;
}

impl I2c for NoBus {
    fn transaction(&mut self, _: u8, _: &mut [Operation<'_>]) -> Result<(), ErrorKind> {
        Err(ErrorKind::NoAcknowledge(NoAcknowledgeSource::Address))
    }
}

/// Lets the interrupt of the receiver in, which shuts itself out where there is no room.
pub(crate) fn listen() {
    // SAFETY: the handler is below, and no critical section counts on the interrupt's being masked.
    unsafe { NVIC::unmask(Received) };
}

/// The only interrupt that is switched on. A table of the board's interrupts would have one line.
#[exception]
unsafe fn DefaultHandler(_number: i16) {
    let mut byte = [0];
    let mut receiver = cmsdk::Receiver;
    if receiver.overran() {
        received::overrun();
    }
    let room = received::fill(&mut || match receiver.read(&mut byte) {
        Ok(1) => byte.first().copied(),
        _ => None,
    });
    if !room {
        NVIC::mask(Received);
    }
}
