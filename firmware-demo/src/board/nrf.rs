//! What the boards with an nRF chip share. Their UART is driven here, not by the HALs: one HAL has only a driver that
//! works by DMA, the other waits for a byte that it wrote before it switched the UART on, which an emulator drops. Their
//! I2C bus is too: the HALs' drivers wait for ever on a line that is held down.

#![expect(unsafe_code, reason = "registers that take any bits, and registers that only an interrupt uses")]

use core::convert::Infallible;
use core::num::NonZeroU32;

use cortex_m::peripheral::NVIC;
use embedded_hal::i2c::{self, ErrorKind, I2c, NoAcknowledgeSource, Operation};
use embedded_io::{ErrorType, Write};
#[cfg(feature = "microbit")]
use nrf51_hal as hal;
#[cfg(feature = "microbit-v2")]
use nrf52833_hal as hal;

#[cfg(feature = "microbit")]
use hal::pac::gpio::PIN_CNF;
#[cfg(feature = "microbit-v2")]
use hal::pac::p0::PIN_CNF;
use hal::pac::{Interrupt, POWER, TIMER0, TIMER1, TWI0, UART0, interrupt};
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

/// The I2C bus.
pub(crate) struct Bus(TWI0);

/// How often an event is looked for before it is given up. A byte takes a tenth of a millisecond, these looks many times
/// that.
const LOOKS: u32 = 10_000;

impl Bus {
    /// 100 kHz. The pins have been chosen; these configure them.
    pub(crate) fn open(twi: TWI0, pins: [&PIN_CNF; 2]) -> Self {
        for pin in pins {
            pin.write(|w| w.dir().input().input().connect().pull().pullup().drive().s0d1().sense().disabled());
        }
        twi.frequency.write(|w| w.frequency().k100());
        twi.enable.write(|w| w.enable().enabled());
        Self(twi)
    }

    /// Writes and, where there is room for it, reads.
    fn exchange(&self, address: u8, bytes: &[u8], buffer: &mut [u8]) -> Result<(), ErrorKind> {
        let twi = &self.0;
        twi.events_error.reset();
        twi.events_stopped.reset();
        twi.shorts.reset();
        // SAFETY: addresses have seven bits; any byte may be sent; tasks start by writing 1.
        unsafe {
            twi.address.write(|w| w.bits(address.into()));
            twi.tasks_starttx.write(|w| w.bits(1));
            for byte in bytes {
                twi.events_txdsent.reset();
                twi.txd.write(|w| w.bits((*byte).into()));
                self.wait(&|| twi.events_txdsent.read().bits())?;
            }
            let mut left = buffer.len();
            twi.events_rxdready.reset();
            match left {
                0 => twi.tasks_stop.write(|w| w.bits(1)),
                _ => {
                    self.end_of_byte(left);
                    twi.tasks_startrx.write(|w| w.bits(1));
                }
            }
            for byte in buffer {
                self.wait(&|| twi.events_rxdready.read().bits())?;
                twi.events_rxdready.reset();
                *byte = twi.rxd.read().rxd().bits();
                left -= 1;
                if left > 0 {
                    self.end_of_byte(left);
                    twi.tasks_resume.write(|w| w.bits(1));
                }
            }
        }
        self.wait(&|| twi.events_stopped.read().bits())
    }

    /// The chip holds the bus after each byte that it receives until it gets the command to go on; after the last it lets go.
    fn end_of_byte(&self, left: usize) {
        self.0.shorts.write(|w| if left == 1 { w.bb_stop().enabled() } else { w.bb_suspend().enabled() });
    }

    fn wait(&self, event: &dyn Fn() -> u32) -> Result<(), ErrorKind> {
        for _ in 0..LOOKS {
            if self.0.events_error.read().bits() != 0 {
                return Err(ErrorKind::NoAcknowledge(NoAcknowledgeSource::Unknown));
            }
            if event() != 0 {
                return Ok(());
            }
        }
        Err(ErrorKind::Bus)
    }

    /// Lets go of the bus after an error, whatever state that left the chip in.
    fn release(&self) {
        let twi = &self.0;
        twi.events_error.reset();
        // SAFETY: tasks start by writing 1.
        twi.tasks_stop.write(|w| unsafe { w.bits(1) });
        let _ = self.wait(&|| twi.events_stopped.read().bits());
        twi.enable.write(|w| w.enable().disabled());
        twi.enable.write(|w| w.enable().enabled());
    }
}

impl i2c::ErrorType for Bus {
    type Error = ErrorKind;
}

impl I2c for Bus {
    /// A write, or a write and a read: what a chip with registers is asked. There is nothing else.
    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), ErrorKind> {
        let done = match operations {
            [Operation::Write(bytes)] => self.exchange(address, bytes, &mut []),
            [Operation::Write(bytes), Operation::Read(buffer)] => self.exchange(address, bytes, buffer),
            _ => return Err(ErrorKind::Other),
        };
        if done.is_err() {
            self.release();
        }
        done
    }
}

/// Why the chip was reset last; the bits stay until they are cleared.
pub(crate) fn tell_reset(power: &POWER) {
    log!("reset reasons {=u32:#010x}", power.resetreas.read().bits());
    // SAFETY: each bit is cleared by writing 1 to it.
    power.resetreas.modify(|r, w| unsafe { w.bits(r.bits()) });
}
