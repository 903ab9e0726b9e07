//! MPS2 with application note 386: a Cortex-M4F at 25 MHz. Run in an emulator; never run on the board itself.

#![expect(unsafe_code, reason = "an interrupt that has to be switched on")]

use core::num::NonZeroU32;

use cortex_m::interrupt::InterruptNumber;
use cortex_m::peripheral::{NVIC, Peripherals};
use cortex_m_rt::exception;
use embedded_hal::digital::OutputPin;
use embedded_io::{Read, Write};

use crate::{received, systick};

mod cmsdk;

pub(crate) use cmsdk::Timer as Counter;

#[cfg(feature = "log")]
use defmt_semihosting as _;

pub(crate) const NAME: &str = "mps2-an386";

/// 25 MHz.
pub(crate) const TICKS_PER_MILLI: NonZeroU32 = NonZeroU32::new(25_000).unwrap();

/// The interrupt of the first UART's receiver.
#[derive(Clone, Copy)]
struct Received;

// SAFETY: always the same number, one that the board has.
unsafe impl InterruptNumber for Received {
    fn number(self) -> u16 {
        0
    }
}

/// The counter that measures, the line, and the first light.
pub(crate) fn start() -> Option<(Counter, impl Write, impl OutputPin)> {
    let core = Peripherals::take()?;
    let (timer, sender) = (Counter::start(), cmsdk::Sender::open());
    systick::wake_every(250_000, core.SYST);
    listen();
    Some((timer, sender, cmsdk::Light))
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
