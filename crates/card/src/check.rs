//! Whether a value is one that an entry takes.

use crate::date::Date;
use crate::entry::Kind;
use crate::error::{Error, Wrong};
use crate::id::EntryId;

impl EntryId {
    /// Whether a value is of its kind: a number in its range, a word of its list, a date of the calendar.
    ///
    /// # Errors
    /// [`Wrong::OutOfRange`], or [`Wrong::WrongUnit`] where it looks like another quantity; [`Wrong::NotANumber`],
    /// [`Wrong::NotAWord`], [`Wrong::NotADate`].
    ///
    /// ```
    /// use ocellus_card::{entries, error::Wrong};
    /// assert_eq!(entries::K1.id().check(43.25), Ok(()));
    /// assert_eq!(entries::K1.id().check(7.8).unwrap_err().wrong, Wrong::WrongUnit);
    /// ```
    pub fn check(self, value: f64) -> Result<(), Error> {
        let refused = |wrong| Error { value: value.is_finite().then_some(value), ..Error::of(wrong, self) };
        match self.kind() {
            Kind::Number(_, bounds) => bounds.check(value).map(drop).map_err(|_| {
                let wrong = match self.looks_like(value) {
                    _ if !value.is_finite() => Wrong::NotANumber,
                    Some(_) => Wrong::WrongUnit,
                    None => Wrong::OutOfRange,
                };
                Error { bounds: Some(bounds), ..refused(wrong) }
            }),
            Kind::Choice(words) if (0..words.len()).any(|code| code as f64 == value) => Ok(()),
            Kind::Choice(_) => Err(refused(Wrong::NotAWord)),
            Kind::Date => Date::from_number(value).map(drop).map_err(refused),
            Kind::Name => Ok(()),
        }
    }
}
