//! Lines that two people tick before the first cut: each part has its own.

/// A line to tick, as it stands in the table of its part.
#[derive(Debug)]
pub struct SignOffRow {
    /// Its stable name.
    pub key: &'static str,
    /// The line.
    pub text: &'static str,
}

/// `NAME "key" "line";`
macro_rules! sign_offs {
    ($($id:ident $key:literal $text:literal;)*) => {
        /// Lines to tick.
        #[allow(non_camel_case_types, clippy::upper_case_acronyms, dead_code)]
        pub mod sign_offs {
            enum Number { $($id,)* }
            $(#[doc = $text] pub const $id: $crate::id::SignOffId = $crate::id::SignOffId::new(super::PART, Number::$id as u8);)*
        }

        pub(crate) const SIGN_OFFS: &[$crate::sign_off::SignOffRow] =
            &[$($crate::sign_off::SignOffRow { key: $key, text: $text },)*];
    };
}
