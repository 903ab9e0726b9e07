//! Wakes the loop by the processor's own timer.

use cortex_m::peripheral::SYST;
use cortex_m::peripheral::syst::SystClkSource;
use cortex_m_rt::exception;

/// Interrupts a sleep after this many cycles, again and again.
pub(crate) fn wake_every(cycles: u32, mut timer: SYST) {
    timer.set_clock_source(SystClkSource::Core);
    timer.set_reload(cycles.wrapping_sub(1));
    timer.clear_current();
    timer.enable_interrupt();
    timer.enable_counter();
}

/// The interrupt itself has woken the loop.
#[exception]
fn SysTick() {}
