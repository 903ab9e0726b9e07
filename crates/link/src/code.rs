//! What a device says of a request in one number: how it came out, and why it was refused.

macro_rules! codes {
    ($(#[$about:meta])* $Name:ident { $($id:ident = $number:literal $word:literal $text:literal;)* }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum $Name { $(#[doc = $text] $id = $number,)* }

        impl $Name {
            /// Every one, in the order of its number.
            pub const ALL: &[$Name] = &[$($Name::$id),*];

            /// Its number on the line.
            pub const fn number(self) -> u8 { self as u8 }

            /// The one with this number.
            pub const fn from_number(number: u8) -> Option<$Name> {
                match number { $($number => Some($Name::$id),)* _ => None }
            }

            /// Its stable name.
            pub const fn word(self) -> &'static str { match self { $($Name::$id => $word,)* } }

            /// What it means, for a person.
            pub const fn text(self) -> &'static str { match self { $($Name::$id => $text,)* } }
        }
    };
}

codes! {
    /// How a stream came out.
    ///
    /// ```
    /// use ocellus_link::code::Outcome;
    /// assert_eq!(Outcome::from_number(2), Some(Outcome::NotACase));
    /// ```
    Outcome {
        Answered = 0 "answered" "everything that follows from the case was streamed";
        Nothing = 1 "nothing" "the case lacks what this explanation needs; cautions and missing entries say what";
        NotACase = 2 "not_a_case" "the entries are not a case; what is wrong was streamed";
    }
}

codes! {
    /// Why a device refuses a request.
    ///
    /// ```
    /// use ocellus_link::code::Refusal;
    /// assert_eq!(Refusal::from_number(6).map(Refusal::word), Some("case_differs"));
    /// ```
    Refusal {
        UnknownKind = 1 "unknown_kind" "no request of this kind; detail: the kind";
        WrongVersion = 2 "wrong_version" "a frame of another version; detail: the device's version";
        WrongSize = 3 "wrong_size" "a payload of another size than this kind has; detail: the kind";
        NotAnEntry = 4 "not_an_entry" "no part and number of an entry that takes this; part and detail: those numbers";
        NotAName = 5 "not_a_name" "not a name of 1 to 24 printable ASCII characters; part and detail: the entry";
        CaseDiffers = 6 "case_differs" "the device holds other entries than those meant; send them all again";
        NotACase = 7 "not_a_case" "the entries are not a case; a plan says what is wrong";
        NotASubject = 8 "not_a_subject" "no subject has these numbers; part and detail: those numbers";
        NotAUnit = 9 "not_a_unit" "no unit has this number; detail: the number";
        NotFinite = 10 "not_finite" "the value, or its answer, is not a finite number";
        NoReadBack = 11 "no_read_back" "an entry has more decimals than it may; part and detail: the entry";
        TooMany = 12 "too_many" "more entries counted than the message holds; detail: the count";
    }
}
