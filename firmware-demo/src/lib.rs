//! What the device does with the bytes of its serial line. No registers here: it runs, and is tested, on any machine.

#![no_std]

mod clock;
mod device;
mod log;

pub use clock::Clock;
pub use device::Device;
pub use ocellus_link::respond::Host;

/// What a device knows of the machine it runs on: all that a desk may ask, and the time.
pub trait Board: Host {
    /// Milliseconds since the start, wrapping.
    fn millis(&self) -> u32;
}
