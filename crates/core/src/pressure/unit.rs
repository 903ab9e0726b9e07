//! Units of pressure, any into any other.

use crate::constant::pressure::*;

macro_rules! units {
    ($($id:ident $word:literal $pascals:expr;)*) => {
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
            /// assert_eq!(ocellus_core::pressure::unit::Unit::CmH2O.word(), "cmH2O");
            /// ```
            pub const fn word(self) -> &'static str { match self { $(Unit::$id => $word,)* } }

            /// Pascals in one of it. Source: NIST SP 811 (2008) Appendix B.
            ///
            /// ```
            /// assert_eq!(ocellus_core::pressure::unit::Unit::MmHg.pascals(), 133.322387415);
            /// ```
            pub fn pascals(self) -> f64 { match self { $(Unit::$id => $pascals,)* } }
        }
    };
}

units! {
    Pa "Pa" 1.0;
    HPa "hPa" 100.0;
    KPa "kPa" 1000.0;
    Bar "bar" 100000.0;
    MmHg "mmHg" MMHG.get();
    Torr "torr" ATM.get() / TORR_PER_ATM.get();
    CmH2O "cmH2O" CMH2O.get();
    InHg "inHg" INHG.get();
    Psi "psi" PSI.get();
    Atm "atm" ATM.get();
}

/// A pressure in another unit.
///
/// ```
/// use ocellus_core::pressure::unit::{Unit, convert};
/// assert!((convert(500.0, Unit::MmHg, Unit::KPa) - 66.661).abs() < 0.0005);
/// ```
pub fn convert(value: f64, from: Unit, to: Unit) -> f64 {
    value * from.pascals() / to.pascals()
}
