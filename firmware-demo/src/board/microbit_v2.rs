//! micro:bit v2: nRF52833, a Cortex-M4F. Built, never run.

#![expect(unsafe_code, reason = "the registers that choose pins take any bits")]

use embedded_io::Write;
use nrf52833_hal::Clocks;
use nrf52833_hal::gpio::{Level, p0, p1};
use nrf52833_hal::pac::Peripherals;

mod nrf;

pub(crate) use nrf::{Counter, TICKS_PER_MILLI, listen};

pub(crate) const NAME: &str = "microbit-v2";

/// The counter that measures, and the line to the chip behind the USB socket.
pub(crate) fn start() -> Option<(Counter, impl Write)> {
    let chip = Peripherals::take()?;
    nrf::tell_reset(&chip.POWER);
    // The crystal: the rate of the line hangs on it.
    Clocks::new(chip.CLOCK).enable_ext_hfosc();
    let transmit = p0::Parts::new(chip.P0).p0_06.into_push_pull_output(Level::High).degrade();
    let receive = p1::Parts::new(chip.P1).p1_08.into_floating_input().degrade();
    // SAFETY: the numbers of pins that are ours, and that nothing else uses.
    unsafe {
        chip.UART0.psel.txd.write(|w| w.bits(transmit.psel_bits()));
        chip.UART0.psel.rxd.write(|w| w.bits(receive.psel_bits()));
    }
    Some((Counter::start(chip.TIMER0, &chip.TIMER1), nrf::Line::open(chip.UART0)))
}
