//! micro:bit v2: nRF52833, a Cortex-M4F. Built, never run.

#![expect(unsafe_code, reason = "the registers that choose pins take any bits")]

use embedded_hal::digital::OutputPin;
use embedded_hal::i2c::I2c;
use embedded_io::Write;
use nrf52833_hal::Clocks;
use nrf52833_hal::gpio::{Level, p0, p1};
use nrf52833_hal::pac::Peripherals;

mod nrf;

pub(crate) use nrf::{Counter, TICKS_PER_MILLI, listen};

pub(crate) const NAME: &str = "microbit-v2";

/// 64 MHz.
pub(crate) const CYCLES_PER_MICRO: u32 = 64;

/// The counter that measures, the line to the chip behind the USB socket, the light in the corner, and the I2C bus on the
/// edge's pins 19 (clock) and 20 (data).
pub(crate) fn start() -> Option<(Counter, impl Write, impl OutputPin, impl I2c)> {
    let chip = Peripherals::take()?;
    nrf::tell_reset(&chip.POWER);
    // The crystal: the rate of the line depends on it.
    Clocks::new(chip.CLOCK).enable_ext_hfosc();
    // SAFETY: the numbers of pins that nothing else uses, 26 of the first port and 0 of the second.
    unsafe {
        chip.TWI0.psel.scl.write(|w| w.bits(26));
        chip.TWI0.psel.sda.write(|w| w.bits(32));
    }
    let bus = nrf::Bus::open(chip.TWI0, [&chip.P0.pin_cnf[26], &chip.P1.pin_cnf[0]]);
    let pins = p0::Parts::new(chip.P0);
    let transmit = pins.p0_06.into_push_pull_output(Level::High).degrade();
    let receive = p1::Parts::new(chip.P1).p1_08.into_floating_input().degrade();
    // the lights are a matrix: the first row, with the first column held low
    pins.p0_28.into_push_pull_output(Level::Low);
    let light = pins.p0_21.into_push_pull_output(Level::Low);
    // SAFETY: the numbers of pins that are ours, and that nothing else uses.
    unsafe {
        chip.UART0.psel.txd.write(|w| w.bits(transmit.psel_bits()));
        chip.UART0.psel.rxd.write(|w| w.bits(receive.psel_bits()));
    }
    Some((Counter::start(chip.TIMER0, &chip.TIMER1), nrf::Line::open(chip.UART0), light, bus))
}
