//! Pressure: units, the column, the air.

use ocellus_core::fluids::ceiling::{self, Air};
use ocellus_core::fluids::column;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::quantity::{Altitude, Density, GasPressure, Level, Temperature};
use proptest::prelude::*;

use crate::close;

fn head_at(open: f64, eye: f64, gas: f64, density: f64) -> f64 {
    let level = |cm| Level::from_cm(cm).unwrap();
    let (gas, density) = (GasPressure::from_mmhg(gas).unwrap(), Density::from_kg_m3(density).unwrap());
    column::working(level(open), level(eye), gas, density).pressure
}

fn ceiling_at(altitude: f64, temperature: f64) -> f64 {
    let air = Air::Altitude(Altitude::from_m(altitude).unwrap());
    ceiling::working(air, Temperature::from_c(temperature).unwrap()).ceiling
}

proptest! {
    /// From any unit through any other into any third is the same as straight there, and back again is where it began.
    #[test]
    fn units_go_round(
        value in -1000.0..100_000.0,
        a in prop::sample::select(Unit::ALL), b in prop::sample::select(Unit::ALL), c in prop::sample::select(Unit::ALL),
    ) {
        let through = convert(convert(value, a, b), b, c);
        prop_assert!((through - convert(value, a, c)).abs() <= 1e-14 * through.abs());
        prop_assert!((convert(through, c, a) - value).abs() <= 1e-14 * value.abs());
    }

    /// The column counts only by its height, in proportion, and gas pressure is added to it.
    #[test]
    fn the_head_is_linear(
        open in 0.0..150.0, eye in -50.0..50.0, up in 0.0..100.0, gas in 0.0..200.0, density in 900.0..1100.0,
    ) {
        let head = |open, eye, gas| head_at(open, eye, gas, density);
        let all = [
            (head(open + up, eye + up, 0.0), head(open, eye, 0.0)),
            (head(open, eye, gas), head(open, eye, 0.0) + gas),
            (head(open, eye, 0.0) + head(open + up, open, 0.0), head(open + up, eye, 0.0)),
            (head(open, eye, 0.0), -head(eye, open, 0.0)),
        ];
        for (a, b) in all {
            prop_assert!((a - b).abs() < 1e-10, "{a} {b}");
        }
        prop_assert!(head(open + up + 0.1, eye, gas) > head(open, eye, gas));
        prop_assert!(close(head_at(open, eye, 0.0, density) * 1000.0, head_at(open, eye, 0.0, 1000.0) * density));
    }

    /// Higher up and in warmer fluid a pump can pull less.
    #[test]
    fn the_ceiling_falls(altitude in -450.0..8000.0, up in 0.1..1000.0, t in 0.01..59.0, warmer in 0.01..1.0) {
        prop_assert!(ceiling_at(altitude + up, t) < ceiling_at(altitude, t));
        prop_assert!(ceiling_at(altitude, t + warmer) < ceiling_at(altitude, t));
    }
}
