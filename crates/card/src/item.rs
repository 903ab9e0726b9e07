//! What comes out: a number, and how a part declares the numbers that it gives.

use crate::id::ItemId;
use ocellus_core::lens::method::Method;
use ocellus_core::source::{Mark, Source};

/// A computed number on its way to a sink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// What it is.
    pub what: ItemId,
    /// The method it comes from, where there is more than one.
    pub method: Option<Method>,
    /// Its row, where it stands in a table; else 0.
    pub row: u8,
    /// The value, unrounded.
    pub value: f64,
}

/// What a person reads in place of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Its digits.
    Number,
    /// Yes for 1, no for 0.
    YesNo,
    /// The word in its place among these.
    Word(&'static [&'static str]),
    /// Its digits, with the place on the limbus in words.
    Site,
}

/// A number as it stands in the table of its part.
#[derive(Debug)]
pub struct ItemRow {
    /// Its stable name.
    pub key: &'static str,
    /// Its unit; "1" for a pure number.
    pub unit: &'static str,
    /// The decimals it is printed with.
    pub places: u8,
    /// Whether its sign is always printed.
    pub signed: bool,
    /// What it is, for a person.
    pub name: &'static str,
    /// Where the equation comes from, for what is not a method's own.
    pub source: Source,
    /// How sure that is.
    pub mark: Mark,
    /// What a person reads in its place.
    pub form: Form,
}

macro_rules! is_signed {
    (signed) => {
        true
    };
    (plain) => {
        false
    };
}

macro_rules! or_number {
    () => {
        $crate::item::Form::Number
    };
    (yes_no) => {
        $crate::item::Form::YesNo
    };
    (site) => {
        $crate::item::Form::Site
    };
    ($type:ident) => {
        $crate::item::Form::Word(<$type>::WORDS)
    };
}

/// `NAME "key" "unit" decimals signed "what it is", Source Mark, form;`
macro_rules! items {
    ($($id:ident $key:literal $unit:literal $places:literal $signed:ident $name:literal, $source:ident $mark:ident $(, $form:ident)?;)*) => {
        /// What comes out.
        #[allow(non_camel_case_types, clippy::upper_case_acronyms, dead_code)]
        pub mod items {
            enum Number { $($id,)* }
            $(#[doc = $name] pub const $id: $crate::id::ItemId = $crate::id::ItemId::new(super::PART, Number::$id as u8);)*
        }

        pub(crate) const ITEMS: &[$crate::item::ItemRow] = &[$($crate::item::ItemRow {
            key: $key, unit: $unit, places: $places, signed: is_signed!($signed), name: $name,
            source: ocellus_core::source::Source::$source, mark: ocellus_core::source::Mark::$mark, form: or_number!($($form)?),
        },)*];
    };
}
