//! What is wrong with an entry: a small value with a stable code, the field, the value and the limits.

use crate::bounds::Bounds;
use crate::field::Field;

macro_rules! codes {
    ($($name:ident = $code:literal $text:literal;)*) => {
        /// A stable code for each kind of wrong entry.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Code { $(#[doc = $text] $name,)* }

        impl Code {
            /// Every code, in the order of its number.
            pub const ALL: &[Code] = &[$(Code::$name),*];

            /// The code as it is printed and kept.
            ///
            /// ```
            /// assert_eq!(ocellus_core::error::Code::Missing.word(), "missing");
            /// ```
            pub const fn word(self) -> &'static str { match self { $(Code::$name => $code,)* } }

            /// What it means, for a person.
            ///
            /// ```
            /// assert_eq!(ocellus_core::error::Code::Missing.text(), "not given, and the case needs it");
            /// ```
            pub const fn text(self) -> &'static str { match self { $(Code::$name => $text,)* } }
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
    Twice = "twice" "said in two ways; keep one of them";
    NotASolution = "not_a_solution" "the equations have no answer here";
}

/// One wrong entry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Error {
    /// What kind of wrong.
    pub code: Code,
    /// The field it concerns, once it is known which entry the value came from.
    pub field: Option<Field>,
    /// The value, where there is a finite one.
    pub value: Option<f64>,
    /// The limits it broke, where there are any.
    pub bounds: Option<&'static Bounds>,
}

impl Error {
    /// An error about a field as a whole.
    pub(crate) const fn of(code: Code, field: Field) -> Error {
        Error { code, field: Some(field), value: None, bounds: None }
    }

    /// An answer that the equations do not have.
    pub(crate) const fn no_solution() -> Error {
        Error { code: Code::NotASolution, field: None, value: None, bounds: None }
    }

    /// The same error, said of this field.
    pub(crate) fn at(self, field: Field) -> Error {
        Error { field: Some(field), ..self }
    }
}
