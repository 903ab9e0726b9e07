//! What is wrong with an entry: a small value with a stable code, the entry, the value and the limits.

use crate::id::EntryId;
use ocellus_core::bounds::Bounds;
use ocellus_core::decimal;
use ocellus_text::{Text, text};

macro_rules! codes {
    ($($name:ident = $code:literal $text:literal;)*) => {
        /// A stable code for each kind of wrong entry.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Wrong { $(#[doc = $text] $name,)* }

        impl Wrong {
            /// Every code, in the order of its number.
            pub const ALL: &[Wrong] = &[$(Wrong::$name),*];

            /// The code as it is printed and kept.
            ///
            /// ```
            /// assert_eq!(ocellus_card::error::Wrong::Missing.word(), "missing");
            /// ```
            pub const fn word(self) -> &'static str { match self { $(Wrong::$name => $code,)* } }

            /// What it means, for a person.
            ///
            /// ```
            /// assert!(ocellus_card::error::Wrong::Missing.text() == "not given, and the case needs it");
            /// ```
            pub const fn text(self) -> Text { match self { $(Wrong::$name => text!($text),)* } }
        }
    };
}

codes! {
    Missing = "missing" "not given, and the case needs it";
    OutOfRange = "out_of_range" "outside the range that is accepted";
    WrongUnit = "wrong_unit" "outside the range that is accepted; it looks like another quantity or unit";
    NotANumber = "not_a_number" "not a plain decimal number (digits, one point, an optional sign)";
    CommaDecimal = "comma_decimal" "a comma; write the decimal point as a point, as in 23.5";
    TooManyDecimals = "too_many_decimals" "more decimals than this entry has";
    TooLong = "too_long" "too long to be held exactly";
    NotAWord = "not_a_word" "not one of the words that are accepted";
    NotADate = "not_a_date" "not a calendar date as YYYY-MM-DD";
    NotAName = "not_a_name" "not a name of 1 to 24 printable ASCII characters";
    Disagree = "disagree" "does not agree with the other entry of the same quantity";
    NoCornea = "no_cornea" "no corneal radius from 5 to 14 mm follows from the powers at this index";
    Incomplete = "incomplete" "not given, and an entry that was made needs it";
    NoLaser = "no_laser" "an entry about corneal laser, and previous_surgery names none";
    Twice = "twice" "entered in two ways; keep one of them";
}

impl From<decimal::Unreadable> for Wrong {
    fn from(wrong: decimal::Unreadable) -> Wrong {
        match wrong {
            decimal::Unreadable::NotANumber => Wrong::NotANumber,
            decimal::Unreadable::CommaDecimal => Wrong::CommaDecimal,
            decimal::Unreadable::TooLong => Wrong::TooLong,
        }
    }
}

/// One wrong entry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Error {
    /// What kind of wrong.
    pub wrong: Wrong,
    /// The entry it concerns.
    pub entry: EntryId,
    /// The value, where there is a finite one.
    pub value: Option<f64>,
    /// The limits it broke, where there are any.
    pub bounds: Option<&'static Bounds>,
}

impl Error {
    /// An error about an entry as a whole.
    pub const fn of(wrong: Wrong, entry: EntryId) -> Error {
        Error { wrong, entry, value: None, bounds: None }
    }
}
