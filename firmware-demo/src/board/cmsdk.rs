//! The few registers of the Cortex-M System Design Kit's UART and timer, and of the board's lights, that are used here. No
//! HAL has them.

use core::convert::Infallible;

use embedded_hal::digital;
use embedded_io::{ErrorType, Read, Write};

/// A register, by its address.
#[derive(Clone, Copy)]
struct Register(usize);

impl Register {
    fn read(self) -> u32 {
        // SAFETY: the addresses are those below: registers of the board, aligned, not memory that a variable owns.
        unsafe { (self.0 as *const u32).read_volatile() }
    }

    fn write(self, bits: u32) {
        // SAFETY: as for reading; what is written below moves bytes and counts, and touches no memory.
        unsafe { (self.0 as *mut u32).write_volatile(bits) }
    }
}

mod uart {
    use super::Register;

    pub(super) const DATA: Register = Register(0x4000_4000);
    pub(super) const STATE: Register = Register(0x4000_4004);
    pub(super) const CONTROL: Register = Register(0x4000_4008);
    /// Writing 1 clears.
    pub(super) const INTERRUPTS: Register = Register(0x4000_400C);
    pub(super) const DIVISOR: Register = Register(0x4000_4010);

    pub(super) const STATE_SENDER_FULL: u32 = 1 << 0;
    pub(super) const STATE_RECEIVER_FULL: u32 = 1 << 1;
    /// Writing 1 clears.
    pub(super) const STATE_RECEIVER_OVERRAN: u32 = 1 << 3;
    pub(super) const CONTROL_SEND: u32 = 1 << 0;
    pub(super) const CONTROL_RECEIVE: u32 = 1 << 1;
    pub(super) const CONTROL_INTERRUPT_RECEIVED: u32 = 1 << 3;
    pub(super) const INTERRUPT_RECEIVED: u32 = 1 << 1;
}

/// What the loop uses of the UART.
pub(crate) struct Sender(());

impl Sender {
    /// Opens the line in both directions: 25 MHz by 217 is 115200 baud.
    pub(crate) fn open() -> Self {
        uart::DIVISOR.write(217);
        uart::CONTROL.write(uart::CONTROL_SEND | uart::CONTROL_RECEIVE | uart::CONTROL_INTERRUPT_RECEIVED);
        Self(())
    }
}

impl ErrorType for Sender {
    type Error = Infallible;
}

impl Write for Sender {
    fn write(&mut self, bytes: &[u8]) -> Result<usize, Infallible> {
        for byte in bytes {
            self.flush()?;
            uart::DATA.write((*byte).into());
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> Result<(), Infallible> {
        while uart::STATE.read() & uart::STATE_SENDER_FULL != 0 {}
        Ok(())
    }
}

/// What the interrupt uses of the UART.
pub(crate) struct Receiver;

impl Receiver {
    /// Whether a byte was lost since the last time.
    pub(crate) fn overran(&mut self) -> bool {
        let lost = uart::STATE.read() & uart::STATE_RECEIVER_OVERRAN != 0;
        if lost {
            uart::STATE.write(uart::STATE_RECEIVER_OVERRAN);
        }
        lost
    }
}

impl ErrorType for Receiver {
    type Error = Infallible;
}

impl Read for Receiver {
    /// What is there, and 0 when that is nothing: an interrupt does not wait.
    fn read(&mut self, bytes: &mut [u8]) -> Result<usize, Infallible> {
        uart::INTERRUPTS.write(uart::INTERRUPT_RECEIVED);
        match bytes.first_mut() {
            Some(byte) if uart::STATE.read() & uart::STATE_RECEIVER_FULL != 0 => {
                *byte = uart::DATA.read() as u8;
                Ok(1)
            }
            _ => Ok(0),
        }
    }
}

/// The user's lights, a bit each.
const LIGHTS: Register = Register(0x4002_8000);

/// The first of them.
pub(crate) struct Light;

impl digital::ErrorType for Light {
    type Error = Infallible;
}

impl digital::OutputPin for Light {
    fn set_low(&mut self) -> Result<(), Infallible> {
        LIGHTS.write(0);
        Ok(())
    }

    fn set_high(&mut self) -> Result<(), Infallible> {
        LIGHTS.write(1);
        Ok(())
    }
}

mod timer {
    use super::Register;

    pub(super) const CONTROL: Register = Register(0x4000_0000);
    pub(super) const VALUE: Register = Register(0x4000_0004);
    pub(super) const RELOAD: Register = Register(0x4000_0008);

    pub(super) const CONTROL_ENABLE: u32 = 1;
}

/// The first timer: it counts down, 32 bits wide.
pub(crate) struct Timer(());

impl Timer {
    pub(crate) fn start() -> Self {
        timer::RELOAD.write(u32::MAX);
        timer::VALUE.write(u32::MAX);
        timer::CONTROL.write(timer::CONTROL_ENABLE);
        Self(())
    }

    /// How far it has counted.
    pub(crate) fn ticks(&self) -> u32 {
        !timer::VALUE.read()
    }
}
