//! The pressure of the air, from a sensor that may be on the board's I2C bus and may as well not be.

use bme280::i2c::BME280;
use bme280::{Configuration, Oversampling};
use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::{ErrorKind, ErrorType, I2c, Operation};
use ocellus_console::Air;

/// A BME280 or a BMP280, whose registers of pressure and temperature are the same.
pub struct Barometer<B, D> {
    bus: B,
    wait: D,
    seen: bool,
}

/// Where their pin SDO puts them: low, high.
const ADDRESSES: [u8; 2] = [0x76, 0x77];

/// The register that says which sensor it is, and what it says: BME280, BMP280.
const ID: u8 = 0xD0;
const IDS: [u8; 2] = [0x60, 0x58];

impl<B: I2c, D: DelayNs> Barometer<B, D> {
    /// Looks whether there is one.
    #[must_use]
    pub fn open(bus: B, wait: D) -> Self {
        let mut barometer = Self { bus, wait, seen: false };
        barometer.find();
        barometer
    }

    /// Has the sensor measure. Where there is one, this takes 42 ms of waiting and some for the bus. Nothing is taken over
    /// from reading to reading: the sensor may come, go and lose its power in between.
    pub fn read(&mut self) -> Air {
        let air = self.find().and_then(|address| self.measure(address));
        air.unwrap_or(if self.seen { Air::Silent } else { Air::Absent })
    }

    /// Its address. An answer with another id is no sensor's: something else sits there, or the lines float.
    fn find(&mut self) -> Option<u8> {
        let found = ADDRESSES.into_iter().find(|address| {
            let mut id = [0];
            self.bus.write_read(*address, &[ID], &mut id).is_ok() && IDS.contains(&id[0])
        });
        self.seen |= found.is_some();
        found
    }

    /// Not inlined, so that its buffers do not stay on the stack of the main loop for ever.
    #[inline(never)]
    fn measure(&mut self, address: u8) -> Option<Air> {
        let mut sensor = BME280::new(Measured(&mut self.bus), address);
        // The mean of eight takes 26 ms at most; the driver reads after 40.
        let eight_times = Configuration::default().with_pressure_oversampling(Oversampling::Oversampling8X);
        sensor.init_with_config(&mut self.wait, eight_times).ok()?;
        let said = sensor.measure(&mut self.wait).ok()?;
        let (hpa, celsius) = (f64::from(said.pressure) / 100.0, f64::from(said.temperature));
        // The driver says the end of the sensor's range for all that lies beyond.
        let can_be = 300.0 < hpa && hpa < 1100.0 && -40.0 < celsius && celsius < 85.0;
        can_be.then_some(Air::Measured { hpa, celsius })
    }
}

/// The bus, on which it is an error that a sensor has measured nothing: the driver would take what then is in its
/// registers for about 800 hPa.
struct Measured<B>(B);

/// The first register of the measurements: three of pressure, three of temperature.
const DATA: u8 = 0xF7;

impl<B> ErrorType for Measured<B> {
    type Error = ErrorKind;
}

impl<B: I2c> I2c for Measured<B> {
    fn write_read(&mut self, address: u8, bytes: &[u8], buffer: &mut [u8]) -> Result<(), ErrorKind> {
        self.0.write_read(address, bytes, buffer).map_err(kind)?;
        match (bytes, buffer) {
            ([DATA], [0x80, 0, 0, ..] | [_, _, _, 0x80, 0, 0, ..]) => Err(ErrorKind::Other),
            _ => Ok(()),
        }
    }

    fn write(&mut self, address: u8, bytes: &[u8]) -> Result<(), ErrorKind> {
        self.0.write(address, bytes).map_err(kind)
    }

    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), ErrorKind> {
        self.0.transaction(address, operations).map_err(kind)
    }
}

fn kind(error: impl embedded_hal::i2c::Error) -> ErrorKind {
    error.kind()
}
