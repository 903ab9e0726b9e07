//! One main for all boards.

#![no_std]
#![no_main]

#[cfg_attr(feature = "microbit", path = "board/microbit.rs")]
#[cfg_attr(feature = "microbit-v2", path = "board/microbit_v2.rs")]
#[cfg_attr(feature = "mps2-an386", path = "board/mps2_an386.rs")]
#[cfg_attr(feature = "pico", path = "board/pico.rs")]
mod board;
mod fault;
#[cfg(any(feature = "microbit", feature = "pico"))]
mod multiply;
mod received;
mod stack;
#[cfg(any(feature = "mps2-an386", feature = "pico"))]
mod systick;

use core::cell::RefCell;

use embedded_hal::delay::DelayNs;
use embedded_hal::digital::{OutputPin, PinState};
use embedded_hal::i2c::I2c;
use embedded_io::Write;
use heapless::spsc::Queue;
use ocellus_firmware::{Air, Around, Barometer, Clock, Device, Host, log};

struct Running<B> {
    clock: Clock,
    counter: board::Counter,
    barometer: RefCell<Barometer<B, Wait>>,
}

impl<B: I2c> Around for Running<B> {
    fn millis(&self) -> u32 {
        self.clock.millis(self.ticks())
    }

    fn air(&self) -> Air {
        // nobody else ever holds it
        self.barometer.try_borrow_mut().map_or(Air::Silent, |mut barometer| barometer.read())
    }
}

impl<B: I2c> Host for Running<B> {
    fn board(&self) -> &str {
        board::NAME
    }

    fn build(&self) -> &str {
        env!("OCELLUS_BUILD")
    }

    fn target(&self) -> &str {
        env!("OCELLUS_TARGET")
    }

    fn ticks(&self) -> u32 {
        self.counter.ticks()
    }

    fn ticks_per_second(&self) -> u32 {
        self.clock.ticks_per_second()
    }

    fn overruns(&self) -> u32 {
        received::overruns()
    }

    fn stack_used(&self) -> u32 {
        stack::used()
    }

    fn stack_size(&self) -> u32 {
        stack::size()
    }
}

#[cortex_m_rt::entry]
fn main() -> ! {
    static mut RING: Queue<u8, { received::RING }> = Queue::new();
    static mut DEVICE: Device = Device::new();
    let mut ring = received::open(RING);
    let Some((counter, mut line, mut light, bus)) = board::start() else { fault::start_anew() };
    let barometer = RefCell::new(Barometer::open(bus, Wait));
    let board = Running { clock: Clock::new(board::TICKS_PER_MILLI), counter, barometer };
    // A serial line without flow control has no way to fail.
    let mut out = |byte| drop(line.write(&[byte]));
    log!("{=str} starts on {=str}", env!("CARGO_PKG_VERSION"), board.board());
    DEVICE.greet(&mut out);
    let mut overruns = 0;
    loop {
        match ring.dequeue() {
            Some(byte) => {
                lit(&mut light, true);
                DEVICE.byte(byte, ring.len(), &board, &mut out);
                board::listen();
            }
            None => {
                lit(&mut light, false);
                DEVICE.idle(&board, &mut out);
                if board.overruns() != overruns {
                    overruns = board.overruns();
                    log!("{=u32} bytes lost so far", overruns);
                }
                sleep(&|| ring.ready());
            }
        }
    }
}

/// Waits by the processor's cycles: at least as long as it is asked to.
struct Wait;

impl DelayNs for Wait {
    fn delay_ns(&mut self, ns: u32) {
        cortex_m::asm::delay((ns / 1000 + 1).saturating_mul(board::CYCLES_PER_MICRO));
    }
}

/// Shows that it is at work; a light that cannot be set is no reason to stop.
fn lit(light: &mut impl OutputPin, at_work: bool) {
    let _ = light.set_state(PinState::from(at_work));
}

/// Waits for an interrupt: a byte, or the few milliseconds after which a board wakes. One that comes between the
/// question and the sleep is held back by the critical section and ends the sleep at once.
fn sleep(is_needed: &dyn Fn() -> bool) {
    critical_section::with(|_| {
        if !is_needed() {
            cortex_m::asm::wfi();
        }
    });
}
