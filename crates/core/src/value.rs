//! What a value may be: a number within bounds, or one of a few words.

use crate::bounds::Bounds;
use crate::error::Error;

impl Bounds {
    /// The value itself when it lies in the range.
    ///
    /// # Errors
    /// [`Error::NotANumber`] for NaN and infinities, [`Error::Outside`] otherwise.
    ///
    /// ```
    /// use ocellus_core::quantity::AxialLength;
    /// assert_eq!(AxialLength::BOUNDS.check(23.5), Ok(23.5));
    /// assert!(AxialLength::BOUNDS.check(235.0).is_err());
    /// assert!(AxialLength::BOUNDS.check(f64::NAN).is_err());
    /// ```
    // not inlined: a device would carry a copy for each quantity
    #[inline(never)]
    pub fn check(&'static self, value: f64) -> Result<f64, Error> {
        if (self.min..=self.max).contains(&value) {
            Ok(value)
        } else if value.is_finite() {
            Err(Error::Outside(value, self))
        } else {
            Err(Error::NotANumber)
        }
    }
}

/// Which values there are of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Range {
    /// Numbers within these bounds.
    Number(&'static Bounds),
    /// These words, each kept as its place among them.
    Words(&'static [&'static str]),
}

/// What can be kept as a number: a quantity as its value, a choice as the place of its word.
pub trait Value: Copy {
    /// Which there are.
    const RANGE: Range;

    /// From a number that is known to be one of [`Value::RANGE`].
    fn admitted(number: f64) -> Option<Self>;
}
