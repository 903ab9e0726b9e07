//! Raspberry Pi Pico: RP2040, a Cortex-M0+. Built, never run.

#![expect(unsafe_code, reason = "a table that the chip looks for, and an interrupt that has to be switched on")]

use core::cell::Cell;
use core::num::NonZeroU32;

use critical_section::Mutex;
use embedded_hal::digital::OutputPin;
use embedded_hal::i2c::{self, Error, ErrorKind, I2c, Operation};
use embedded_io::{Read, ReadReady, Write};
use rp2040_hal::fugit::RateExtU32;
use rp2040_hal::gpio::bank0::{Gpio0, Gpio1};
use rp2040_hal::gpio::{FunctionUart, Pin, Pins, PullNone};
use rp2040_hal::i2c::I2C;
use rp2040_hal::pac::{self, Interrupt, NVIC, UART0, interrupt};
use rp2040_hal::uart::{Reader, UartConfig, UartPeripheral};
use rp2040_hal::{Clock, Sio, Timer, Watchdog, clocks};

use crate::{received, systick};

#[cfg(feature = "log")]
use defmt_rtt as _;

pub(crate) const NAME: &str = "pico";

/// The chip's timer counts microseconds.
pub(crate) const TICKS_PER_MILLI: NonZeroU32 = NonZeroU32::new(1000).unwrap();

/// The crystal on the board, in Hz.
const CRYSTAL: u32 = 12_000_000;

/// 125 MHz: the HAL's setting of the clocks.
pub(crate) const CYCLES_PER_MICRO: u32 = 125;

/// How often the loop wakes, a second.
const WAKES: u32 = 100;

/// What the chip runs first: it makes the flash readable.
#[unsafe(link_section = ".boot2")]
#[used]
static BOOT2: [u8; 256] = rp2040_boot2::BOOT_LOADER_W25Q080;

type Wires = (Pin<Gpio0, FunctionUart, PullNone>, Pin<Gpio1, FunctionUart, PullNone>);

static RECEIVER: Mutex<Cell<Option<Reader<UART0, Wires>>>> = Mutex::new(Cell::new(None));

pub(crate) struct Counter(Timer);

impl Counter {
    pub(crate) fn ticks(&self) -> u32 {
        self.0.get_counter_low()
    }
}

/// The counter that measures, the line on GPIO0 (out) and GPIO1 (in), the light on the board, and the I2C bus on GPIO4
/// (data) and GPIO5 (clock).
pub(crate) fn start() -> Option<(Counter, impl Write, impl OutputPin, impl I2c)> {
    let core = pac::CorePeripherals::take()?;
    let mut chip = pac::Peripherals::take()?;
    let mut watchdog = Watchdog::new(chip.WATCHDOG);
    let clocks = clocks::init_clocks_and_plls(
        CRYSTAL,
        chip.XOSC,
        chip.CLOCKS,
        chip.PLL_SYS,
        chip.PLL_USB,
        &mut chip.RESETS,
        &mut watchdog,
    )
    .ok()?;
    let pins = Pins::new(chip.IO_BANK0, chip.PADS_BANK0, Sio::new(chip.SIO).gpio_bank0, &mut chip.RESETS);
    let wires = (pins.gpio0.reconfigure(), pins.gpio1.reconfigure());
    let uart = UartPeripheral::new(chip.UART0, wires, &mut chip.RESETS);
    // Its default: 115200 baud, eight bits, no parity.
    let uart = uart.enable(UartConfig::default(), clocks.peripheral_clock.freq()).ok()?;
    let (mut receiver, sender) = uart.split();
    receiver.enable_rx_interrupt();
    critical_section::with(|section| RECEIVER.borrow(section).set(Some(receiver)));
    listen();
    systick::wake_every(clocks.system_clock.freq().to_Hz() / WAKES, core.SYST);
    let (data, clock) = (pins.gpio4.reconfigure(), pins.gpio5.reconfigure());
    // With a clock that it cannot know the compiler leaves this HAL's assertions in.
    let bus = Bus(I2C::i2c0(chip.I2C0, data, clock, 100.kHz(), &mut chip.RESETS, CYCLES_PER_MICRO.MHz()));
    let counter = Counter(Timer::new(chip.TIMER, &mut chip.RESETS, &clocks));
    Some((counter, sender, pins.gpio25.into_push_pull_output(), bus))
}

/// The I2C bus, which is not begun with while a line is held down: this HAL waits for ever until it is released.
struct Bus<B>(B);

/// GPIO4 and GPIO5.
const LINES: u32 = 0b11 << 4;

/// How often the lines are looked at. They are down while the last transaction ends, for some hundredths of a millisecond,
/// and these looks take many times that.
const LOOKS: u32 = 10_000;

impl<B> i2c::ErrorType for Bus<B> {
    type Error = ErrorKind;
}

impl<B: I2c> I2c for Bus<B> {
    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), ErrorKind> {
        // SAFETY: the levels of the pins, which are only read.
        let levels = || unsafe { &*pac::SIO::PTR }.gpio_in().read().bits();
        if !(0..LOOKS).any(|_| levels() & LINES == LINES) {
            return Err(ErrorKind::Bus);
        }
        self.0.transaction(address, operations).map_err(|error| error.kind())
    }
}

/// Lets the interrupt of the receiver in, which shuts itself out where there is no room.
pub(crate) fn listen() {
    // SAFETY: the handler is below, and no critical section counts on the interrupt's being masked.
    unsafe { NVIC::unmask(Interrupt::UART0_IRQ) };
}

#[interrupt]
fn UART0_IRQ() {
    critical_section::with(|section| {
        let Some(mut receiver) = RECEIVER.borrow(section).take() else { return };
        let mut byte = [0];
        let room = received::fill(&mut || {
            while let Ok(true) = receiver.read_ready() {
                match receiver.read(&mut byte) {
                    Ok(_) => return byte.first().copied(),
                    // a damaged byte is a lost one
                    Err(_) => received::overrun(),
                }
            }
            None
        });
        RECEIVER.borrow(section).set(Some(receiver));
        if !room {
            NVIC::mask(Interrupt::UART0_IRQ);
        }
    });
}
