//! Milliseconds from a counter that runs over.

use core::cell::Cell;
use core::num::NonZeroU32;

/// Counts milliseconds by a 32-bit counter of finer ticks. It must be asked at least once before the counter has gone
/// all the way round: within 171 seconds at 25 MHz.
pub struct Clock {
    ticks_per_milli: NonZeroU32,
    /// The tick at which the last whole millisecond ended.
    last: Cell<u32>,
    millis: Cell<u32>,
}

impl Clock {
    /// A clock that starts at tick 0.
    #[must_use]
    pub const fn new(ticks_per_milli: NonZeroU32) -> Self {
        Self { ticks_per_milli, last: Cell::new(0), millis: Cell::new(0) }
    }

    /// Milliseconds since the start, wrapping, at this tick.
    pub fn millis(&self, tick: u32) -> u32 {
        let passed = tick.wrapping_sub(self.last.get()) / self.ticks_per_milli;
        self.last.set(self.last.get().wrapping_add(passed.wrapping_mul(self.ticks_per_milli.get())));
        self.millis.set(self.millis.get().wrapping_add(passed));
        self.millis.get()
    }

    /// How many ticks a second has.
    pub const fn ticks_per_second(&self) -> u32 {
        self.ticks_per_milli.get().wrapping_mul(1000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_on_over_many_rounds_of_the_counter() {
        let clock = Clock::new(NonZeroU32::new(25_000).unwrap());
        // 97 is no divisor of anything here; an hour goes round a 32-bit counter of 25 MHz some 21 times.
        for milli in (0..3_600_000u64).step_by(97) {
            assert_eq!(clock.millis((milli * 25_000 + 24_999) as u32), milli as u32);
        }
    }

    #[test]
    fn asking_often_loses_no_part_of_a_millisecond() {
        let clock = Clock::new(NonZeroU32::new(1000).unwrap());
        for tick in 0..50_000 {
            assert_eq!(clock.millis(tick), tick / 1000);
        }
    }
}
