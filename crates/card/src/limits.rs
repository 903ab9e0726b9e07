//! The limits that parts of the card have of their own.

use crate::parts;
use ocellus_core::constant::Constant;

/// The limits of a part that has some.
macro_rules! limits_of {
    ($name:ident) => { NONE };
    ($name:ident limits $($does:ident)*) => { parts::$name::limits::ALL };
    ($name:ident $other:ident $($does:ident)*) => { limits_of!($name $($does)*) };
}

macro_rules! limits {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// Every limit, part by part.
        ///
        /// ```
        /// assert!(ocellus_card::limits().any(|limit| limit.name == "recheck AL below"));
        /// ```
        pub fn limits() -> impl Iterator<Item = &'static Constant> {
            const NONE: &[&Constant] = &[];
            [$($(#[$cfg])* limits_of!($name $($($does)*)?),)*].into_iter().flatten().copied()
        }
    };
}

parts!(limits);
