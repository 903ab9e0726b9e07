//! Calendar dates, kept as the whole number YYYYMMDD so that a date is a field like any other.

use crate::error::Wrong;

/// A date of the Gregorian calendar from 1900 to 2199.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date(u32);

impl Date {
    /// From the whole number YYYYMMDD.
    ///
    /// # Errors
    /// [`Wrong::NotADate`] when no such day exists.
    ///
    /// ```
    /// use ocellus_card::date::Date;
    /// assert!(Date::from_number(20240229.0).is_ok());
    /// assert!(Date::from_number(20230229.0).is_err());
    /// ```
    pub fn from_number(number: f64) -> Result<Date, Wrong> {
        if !(19000101.0..=21991231.0).contains(&number) || number != f64::from(number as u32) {
            return Err(Wrong::NotADate);
        }
        let date = Date(number as u32);
        let (year, month, day) = date.parts();
        if (1..=12).contains(&month) && day >= 1 && day <= days_in(year, month) {
            Ok(date)
        } else {
            Err(Wrong::NotADate)
        }
    }

    /// From text as ISO 8601 writes it, `2026-11-30`.
    ///
    /// # Errors
    /// [`Wrong::NotADate`] for another form or a day that does not exist.
    ///
    /// ```
    /// use ocellus_card::date::Date;
    /// assert_eq!(Date::parse("2026-11-30").unwrap().number(), 20261130.0);
    /// assert!(Date::parse("30.11.2026").is_err());
    /// ```
    pub fn parse(text: &str) -> Result<Date, Wrong> {
        let mut number = 0u32;
        if text.len() != 10 {
            return Err(Wrong::NotADate);
        }
        for (place, byte) in text.bytes().enumerate() {
            match (place, byte) {
                (4 | 7, b'-') => {}
                (4 | 7, _) => return Err(Wrong::NotADate),
                (_, b'0'..=b'9') => number = number * 10 + u32::from(byte - b'0'),
                _ => return Err(Wrong::NotADate),
            }
        }
        Date::from_number(f64::from(number))
    }

    /// The whole number YYYYMMDD.
    pub fn number(self) -> f64 {
        f64::from(self.0)
    }

    /// Year, month and day.
    pub const fn parts(self) -> (u32, u32, u32) {
        (self.0 / 10_000, self.0 / 100 % 100, self.0 % 100)
    }

    /// Days from this date to a later one; negative when the other is earlier.
    ///
    /// ```
    /// use ocellus_card::date::Date;
    /// let (a, b) = (Date::parse("2023-12-31").unwrap(), Date::parse("2024-03-01").unwrap());
    /// assert_eq!(a.days_until(b), 61);
    /// ```
    pub fn days_until(self, later: Date) -> i32 {
        later.day_number() - self.day_number()
    }

    /// Days since 1 March of year 0, with January and February counted to the year before.
    fn day_number(self) -> i32 {
        let (year, month, day) = self.parts();
        let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
        (365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + day) as i32
    }
}

fn days_in(year: u32, month: u32) -> u32 {
    match month {
        2 if year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400)) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}
