//! What a conversation asks of the machine that holds it.

/// The machine around a console.
pub trait Around {
    /// Milliseconds since the start, wrapping.
    fn millis(&self) -> u32;

    /// What a barometer says, where there is one.
    fn air(&self) -> Air {
        Air::Absent
    }
}

/// What a barometer says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Air {
    /// There is none.
    Absent,
    /// There is one, and it does not answer, or gives a pressure that no air has.
    Silent,
    /// The pressure where it is, and its own temperature.
    Measured {
        /// Pressure, hPa.
        hpa: f64,
        /// Temperature, C.
        celsius: f64,
    },
}
