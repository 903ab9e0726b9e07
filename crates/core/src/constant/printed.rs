//! A number taken from somewhere, and tables of them.

use crate::source::{Mark, Source};

/// A number taken from somewhere, carrying where and how surely.
#[derive(Debug)]
pub struct Constant {
    /// What it is called in the source, prefixed by its method.
    pub name: &'static str,
    /// Its unit; "1" for a pure number.
    pub unit: &'static str,
    /// The digits as printed in the source.
    pub digits: &'static str,
    value: f64,
    /// Where it comes from.
    pub source: Source,
    /// How sure that is.
    pub mark: Mark,
}

impl Constant {
    #[doc(hidden)]
    pub const fn new([name, unit, digits]: [&'static str; 3], value: f64, source: Source, mark: Mark) -> Constant {
        Constant { name, unit, digits, value, source, mark }
    }

    /// The value.
    ///
    /// ```
    /// use ocellus_core::constant::optics::N;
    /// assert_eq!(N.get(), 1.336);
    /// assert_eq!(N.digits, "1.336");
    /// ```
    #[cfg(not(ocellus_perturb))]
    #[inline]
    pub fn get(&'static self) -> f64 {
        self.value
    }

    /// The value, or what [`perturb`] put in its place.
    #[cfg(ocellus_perturb)]
    pub fn get(&'static self) -> f64 {
        override_::value(self).unwrap_or(self.value)
    }
}

/// Gives one constant another value, or (with `None`) every constant its own again. Single-threaded use only.
#[cfg(ocellus_perturb)]
pub fn perturb(change: Option<(&'static Constant, f64)>) {
    override_::set(change);
}

#[cfg(ocellus_perturb)]
mod override_ {
    use super::Constant;
    use core::sync::atomic::{AtomicPtr, AtomicU64, Ordering::Relaxed};

    static WHICH: AtomicPtr<Constant> = AtomicPtr::new(core::ptr::null_mut());
    static BITS: AtomicU64 = AtomicU64::new(0);

    pub(super) fn set(change: Option<(&'static Constant, f64)>) {
        let (which, value) = change.map_or((core::ptr::null(), 0.0), |(c, v)| (core::ptr::from_ref(c), v));
        BITS.store(value.to_bits(), Relaxed);
        WHICH.store(which.cast_mut(), Relaxed);
    }

    pub(super) fn value(constant: &'static Constant) -> Option<f64> {
        core::ptr::eq(WHICH.load(Relaxed), constant).then(|| f64::from_bits(BITS.load(Relaxed)))
    }
}

/// A table of constants: `NAME "paper's name" unit = digits, source mark;`
///
/// ```
/// ocellus_core::constants! {
///     /// A number of somebody's own.
///     HALF "half" "1" = 0.5, Here Chosen;
/// }
/// assert_eq!((HALF.get(), HALF.digits, ALL.len()), (0.5, "0.5", 1));
/// ```
#[macro_export]
macro_rules! constants {
    ($($(#[$doc:meta])* $id:ident $name:literal $unit:literal = $value:literal, $source:ident $mark:ident;)*) => {
        $($(#[$doc])* pub static $id: $crate::constant::printed::Constant = $crate::constant::printed::Constant::new(
            [$name, $unit, stringify!($value)],
            $value as f64,
            $crate::source::Source::$source,
            $crate::source::Mark::$mark,
        );)*

        /// The constants of this table.
        pub static ALL: &[&$crate::constant::printed::Constant] = &[$(&$id),*];
    };
}
