//! What the device does with the bytes of its serial line. No registers here: it runs, and is tested, on any machine.

#![no_std]

mod barometer;
mod clock;
mod device;
mod log;
mod product;

pub use barometer::Barometer;
pub use clock::Clock;
pub use device::Device;
pub use ocellus_console::{Air, Around};
pub use ocellus_link::respond::Host;
pub use product::product;

/// What a device knows of the machine it runs on: all that a desk may ask, the time, and the air.
pub trait Board: Host + Around {}

impl<T: Host + Around> Board for T {}
