//! micro:bit v2: nRF52833, a Cortex-M4F. Built, never run.

#![expect(unsafe_code, reason = "the registers that choose pins take any bits")]

use embedded_hal::digital::OutputPin;
use embedded_io::Write;
use nrf52833_hal::Clocks;
use nrf52833_hal::gpio::{Level, p0, p1};
use nrf52833_hal::pac::Peripherals;

mod nrf;

pub(crate) use nrf::{Counter, TICKS_PER_MILLI, listen};

pub(crate) const NAME: &str = "microbit-v2";

/// The counter that measures, the line to the chip behind the USB socket, and the light in the corner.
pub(crate) fn start() -> Option<(Counter, impl Write, impl OutputPin)> {
    let chip = Peripherals::take()?;
    nrf::tell_reset(&chip.POWER);
    // The crystal: the rate of the line hangs on it.
    Clocks::new(chip.CLOCK).enable_ext_hfosc();
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
    Some((Counter::start(chip.TIMER0, &chip.TIMER1), nrf::Line::open(chip.UART0), light))
}
