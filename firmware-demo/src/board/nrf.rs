//! What the boards with an nRF chip share. Their UART is driven here, not by the HALs: one HAL has only a driver that
//! works by DMA, the other waits for a byte that it wrote before it switched the UART on, which an emulator drops.

#![expect(unsafe_code, reason = "registers that take any bits, and registers that only an interrupt uses")]

use core::convert::Infallible;
use core::num::NonZeroU32;

use cortex_m::peripheral::NVIC;
use embedded_io::{ErrorType, Write};
#[cfg(feature = "microbit")]
use nrf51_hal as hal;
#[cfg(feature = "microbit-v2")]
use nrf52833_hal as hal;

use hal::pac::{Interrupt, POWER, TIMER0, TIMER1, UART0, interrupt};
use hal::timer::{Periodic, Timer};
use ocellus_firmware::log;

use crate::received;

#[cfg(feature = "log")]
use defmt_rtt as _;

/// The HAL sets every timer to 1 MHz.
pub(crate) const TICKS_PER_MILLI: NonZeroU32 = NonZeroU32::new(1000).unwrap();

/// How long the loop sleeps at most, in microseconds.
const WAKE: u32 = 10_000;

/// A counter of microseconds, 32 bits wide.
pub(crate) struct Counter(Timer<TIMER0, Periodic>);

impl Counter {
    /// Starts it, and a second timer (16 bits wide) that wakes the loop.
    pub(crate) fn start(counts: TIMER0, wakes: &TIMER1) -> Self {
        let mut counter = Timer::periodic(counts);
        counter.start(u32::MAX);
        wakes.bitmode.write(|w| w.bitmode()._16bit());
        wakes.shorts.write(|w| w.compare0_clear().enabled());
        wakes.intenset.write(|w| w.compare0().set());
        // SAFETY: 16 MHz by two to the fourth is 1 MHz; the period fits in 16 bits; a task starts by writing 1. The
        // interrupts have handlers below, and no critical section counts on their being masked.
        unsafe {
            wakes.prescaler.write(|w| w.prescaler().bits(4));
            wakes.cc[0].write(|w| w.bits(WAKE));
            wakes.tasks_start.write(|w| w.bits(1));
            NVIC::unmask(Interrupt::TIMER1);
        }
        Self(counter)
    }

    pub(crate) fn ticks(&self) -> u32 {
        self.0.read()
    }
}

/// The interrupt itself has woken the loop.
#[interrupt]
fn TIMER1() {
    // SAFETY: after the start nothing but this handler touches this timer.
    unsafe { &*TIMER1::PTR }.events_compare[0].reset();
}

/// The sending half of the UART. The receiving half belongs to the interrupt.
pub(crate) struct Line(UART0);

impl Line {
    /// 115200 baud, eight bits, no parity. The pins have been chosen.
    pub(crate) fn open(uart: UART0) -> Self {
        uart.baudrate.write(|w| w.baudrate().baud115200());
        uart.enable.write(|w| w.enable().enabled());
        // An emulator drops what is set before the UART is on.
        uart.intenset.write(|w| w.rxdrdy().set());
        // SAFETY: tasks start by writing 1.
        unsafe {
            uart.tasks_starttx.write(|w| w.bits(1));
            uart.tasks_startrx.write(|w| w.bits(1));
        }
        listen();
        Self(uart)
    }
}

impl ErrorType for Line {
    type Error = Infallible;
}

impl Write for Line {
    fn write(&mut self, bytes: &[u8]) -> Result<usize, Infallible> {
        for byte in bytes {
            self.0.events_txdrdy.reset();
            // SAFETY: any byte may be sent.
            self.0.txd.write(|w| unsafe { w.bits((*byte).into()) });
            self.flush()?;
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> Result<(), Infallible> {
        while self.0.events_txdrdy.read().bits() == 0 {}
        Ok(())
    }
}

#[cfg(feature = "microbit")]
const UART: Interrupt = Interrupt::UART0;
#[cfg(feature = "microbit-v2")]
const UART: Interrupt = Interrupt::UARTE0_UART0;

/// Lets the interrupt of the receiver in, which shuts itself out where there is no room.
pub(crate) fn listen() {
    // SAFETY: its handler is below, and no critical section counts on its being masked.
    unsafe { NVIC::unmask(UART) };
}

#[cfg(feature = "microbit")]
#[interrupt]
fn UART0() {
    receive();
}

#[cfg(feature = "microbit-v2")]
#[interrupt]
fn UARTE0_UART0() {
    receive();
}

fn receive() {
    // SAFETY: of the registers used here the sending half uses none.
    let uart = unsafe { &*UART0::PTR };
    let errors = uart.errorsrc.read();
    // SAFETY: each error is cleared by writing 1 to it.
    uart.errorsrc.write(|w| unsafe { w.bits(errors.bits()) });
    // The chip's own buffer holds six bytes; a damaged byte is a lost one.
    if errors.bits() != 0 {
        received::overrun();
    }
    let room = received::fill(&mut || {
        let ready = uart.events_rxdrdy.read().bits() != 0;
        ready.then(|| {
            uart.events_rxdrdy.reset();
            uart.rxd.read().rxd().bits()
        })
    });
    if !room {
        NVIC::mask(UART);
    }
}

/// Why the chip was reset last; the bits stay until they are cleared.
pub(crate) fn tell_reset(power: &POWER) {
    log!("reset reasons {=u32:#010x}", power.resetreas.read().bits());
    // SAFETY: each bit is cleared by writing 1 to it.
    power.resetreas.modify(|r, w| unsafe { w.bits(r.bits()) });
}
