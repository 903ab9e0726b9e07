//! micro:bit v1: nRF51822, a Cortex-M0 without SysTick. Run in an emulator; never run on the board itself.

#![expect(unsafe_code, reason = "the registers that choose pins take any bits")]

use embedded_hal::digital::OutputPin;
use embedded_hal::i2c::I2c;
use embedded_io::Write;
use nrf51_hal::Clocks;
use nrf51_hal::gpio::{Level, p0};
use nrf51_hal::pac::Peripherals;

mod nrf;

pub(crate) use nrf::{Counter, TICKS_PER_MILLI, listen};

pub(crate) const NAME: &str = "microbit";

/// 16 MHz.
pub(crate) const CYCLES_PER_MICRO: u32 = 16;

/// The counter that measures, the line to the chip behind the USB socket, the light in the corner, and the I2C bus on the
/// edge's pins 19 (clock) and 20 (data).
pub(crate) fn start() -> Option<(Counter, impl Write, impl OutputPin, impl I2c)> {
    let chip = Peripherals::take()?;
    nrf::tell_reset(&chip.POWER);
    // The crystal: the rate of the line depends on it.
    Clocks::new(chip.CLOCK).enable_ext_hfosc();
    // SAFETY: the numbers of pins that nothing else uses.
    unsafe {
        chip.TWI0.pselscl.write(|w| w.bits(0));
        chip.TWI0.pselsda.write(|w| w.bits(30));
    }
    let bus = nrf::Bus::open(chip.TWI0, [&chip.GPIO.pin_cnf[0], &chip.GPIO.pin_cnf[30]]);
    let pins = p0::Parts::new(chip.GPIO);
    let transmit = pins.p0_24.into_push_pull_output(Level::High).degrade();
    let receive = pins.p0_25.into_floating_input().degrade();
    // the lights are a matrix: the first row, with the first column held low
    pins.p0_04.into_push_pull_output(Level::Low);
    let light = pins.p0_13.into_push_pull_output(Level::Low);
    // SAFETY: the numbers of pins that are ours, and that nothing else uses.
    unsafe {
        chip.UART0.pseltxd.write(|w| w.bits(transmit.pin().into()));
        chip.UART0.pselrxd.write(|w| w.bits(receive.pin().into()));
    }
    Some((Counter::start(chip.TIMER0, &chip.TIMER1), nrf::Line::open(chip.UART0), light, bus))
}
