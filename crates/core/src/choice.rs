//! Values that are one of a few words.

/// The place of a word, from the number that it is kept as.
// not inlined: a device would carry a copy for each choice
#[doc(hidden)]
#[inline(never)]
pub fn place(number: f64) -> usize {
    number as usize
}

/// Declares types whose values are words: `Name { Variant "word", ... }`.
///
/// ```
/// use ocellus_core::{choices, value::{Range, Value}};
/// choices! {
///     /// Which way.
///     Way {
///         /// There.
///         There "there",
///         /// And back.
///         Back "back",
///     }
/// }
/// assert_eq!((Way::Back.word(), Way::Back.code()), ("back", 1.0));
/// assert_eq!(Way::RANGE, Range::Words(&["there", "back"]));
/// ```
#[macro_export]
macro_rules! choices {
    ($($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident $word:literal,)+ })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum $name { $($(#[$vdoc])* $variant,)+ }

        impl $name {
            /// The words, in the order of their codes.
            pub const WORDS: &[&str] = &[$($word),+];
            /// Every one, in the same order.
            pub const ALL: &[$name] = &[$($name::$variant),+];

            /// The word that is typed and printed.
            pub fn word(self) -> &'static str {
                Self::WORDS.get(self as usize).copied().unwrap_or("")
            }

            /// The number that it is kept as.
            pub const fn code(self) -> f64 {
                self as u8 as f64
            }
        }

        impl $crate::value::Value for $name {
            const RANGE: $crate::value::Range = $crate::value::Range::Words(Self::WORDS);

            fn admitted(number: f64) -> Option<Self> {
                Self::ALL.get($crate::choice::place(number)).copied()
            }
        }
    )*};
}
