//! Units of pressure, any into any other.

use crate::constant::fluids::*;

macro_rules! units {
    ($($id:ident $word:literal $pascals:expr, $places:literal;)*) => {
        /// A unit of pressure.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Unit { $(#[doc = $word] $id,)* }

        impl Unit {
            /// Every unit, in the order of its number.
            pub const ALL: &[Unit] = &[$(Unit::$id),*];

            /// How it is written.
            ///
            /// ```
            /// assert_eq!(ocellus_core::fluids::unit::Unit::CmH2O.word(), "cmH2O");
            /// ```
            pub const fn word(self) -> &'static str { match self { $(Unit::$id => $word,)* } }

            /// The decimals with which a person reads a pressure of an operation in it.
            ///
            /// ```
            /// assert_eq!(ocellus_core::fluids::unit::Unit::KPa.places(), 2);
            /// ```
            pub const fn places(self) -> u8 { match self { $(Unit::$id => $places,)* } }

            /// Pascals in one of it. Source: NIST SP 811 (2008) Appendix B.
            ///
            /// ```
            /// assert_eq!(ocellus_core::fluids::unit::Unit::MmHg.pascals(), 133.322387415);
            /// ```
            pub fn pascals(self) -> f64 { match self { $(Unit::$id => $pascals,)* } }
        }
    };
}

units! {
    Pa "Pa" 1.0, 0;
    HPa "hPa" 100.0, 1;
    KPa "kPa" 1000.0, 2;
    Bar "bar" 100000.0, 4;
    MmHg "mmHg" MMHG.get(), 1;
    Torr "torr" ATM.get() / TORR_PER_ATM.get(), 1;
    CmH2O "cmH2O" CMH2O.get(), 1;
    InHg "inHg" INHG.get(), 2;
    Psi "psi" PSI.get(), 2;
    Atm "atm" ATM.get(), 4;
    MPa "MPa" 1000000.0, 5;
    MBar "mbar" 100.0, 1;
    MmH2O "mmH2O" CMH2O.get() / 10.0, 0;
    InH2O "inH2O" INH2O.get(), 1;
    KgfPerCm2 "kgf/cm2" CMH2O.get() * 1000.0, 4;
}

/// A pressure in another unit.
///
/// ```
/// use ocellus_core::fluids::unit::{Unit, convert};
/// assert!((convert(500.0, Unit::MmHg, Unit::KPa) - 66.661).abs() < 0.0005);
/// ```
pub fn convert(value: f64, from: Unit, to: Unit) -> f64 {
    value * from.pascals() / to.pascals()
}
