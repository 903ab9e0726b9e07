//! What an entry is: its name, its kind, and how a part declares the entries that it has.

use crate::id::{EntryId, PartId};
use core::marker::PhantomData;
use ocellus_core::bounds::Bounds;
use ocellus_core::value::Range;
use ocellus_text::Text;

/// A typed entry: the only way to read one.
#[derive(Debug)]
pub struct Entry<T> {
    id: EntryId,
    of: PhantomData<T>,
}

impl<T> Clone for Entry<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Entry<T> {}

impl<T> Entry<T> {
    #[doc(hidden)]
    pub const fn new(id: EntryId) -> Self {
        Entry { id, of: PhantomData }
    }

    /// Its name and number.
    pub const fn id(self) -> EntryId {
        self.id
    }
}

impl<T> From<Entry<T>> for EntryId {
    fn from(entry: Entry<T>) -> EntryId {
        entry.id
    }
}

impl<T> PartialEq<Entry<T>> for EntryId {
    fn eq(&self, entry: &Entry<T>) -> bool {
        *self == entry.id
    }
}

/// What kind of entry it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A decimal number with at most this many decimals, in these bounds.
    Number(u8, &'static Bounds),
    /// One of these words.
    Choice(&'static &'static [&'static str]),
    /// A date, YYYY-MM-DD.
    Date,
    /// A short name.
    Name,
}

impl Kind {
    #[doc(hidden)]
    pub const fn of(range: Range, places: u8) -> Kind {
        match range {
            Range::Number(bounds) => Kind::Number(places, bounds),
            Range::Words(words) => Kind::Choice(words),
        }
    }
}

/// How an entry is shown besides its value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShownAs {
    /// Also in words: the powers and the target that are read out at the table.
    Spoken,
    /// With the place on the limbus in words.
    Site,
    /// In capitals: the side.
    Capitals,
    /// On one line with others of the same name.
    Together,
}

/// An entry as it stands in the table of its part.
#[derive(Debug)]
pub struct EntryRow {
    /// Its name in a case file and in a table's header.
    pub key: &'static str,
    /// The short word by which it is typed, the usual abbreviation where there is one.
    pub word: &'static str,
    /// What it is, for a person.
    pub what: &'static str,
    /// The table of a case file that it stands in; empty for keys before the first.
    pub section: &'static str,
    /// Its kind.
    pub kind: Kind,
    /// The value used when it is not entered, always said on the card.
    pub default: Option<f64>,
    /// How it is shown, where its value alone is not enough.
    pub shown_as: Option<ShownAs>,
}

/// A value outside its range that is probably another quantity, or in another unit.
#[derive(Clone, Copy, Debug)]
pub struct Misread {
    /// Of which entry.
    pub entry: EntryId,
    /// From this value, in hundredths,
    pub least: i32,
    /// to this one
    pub most: i32,
    /// it looks like this.
    pub looks_like: Text,
}

impl Misread {
    pub(crate) const NONE: Misread = misread(EntryId::new(PartId(0), 0), 0.0, 0.0, Text::EMPTY);
}

/// A row of a table of them.
pub(crate) const fn misread(entry: EntryId, least: f64, most: f64, looks_like: Text) -> Misread {
    Misread { entry, least: hundredths(least), most: hundredths(most), looks_like }
}

/// A device has room for four bytes where eight say no more.
const fn hundredths(value: f64) -> i32 {
    let whole = (value * 100.0 + if value < 0.0 { -0.5 } else { 0.5 }) as i32;
    assert!(whole as f64 / 100.0 == value, "more than two decimals");
    whole
}

/// Usual notation: `43.25 @ 95` enters a power and its axis, `-1.00 / -0.50` a sphere and its cylinder.
#[derive(Clone, Copy, Debug)]
pub struct GoesOn {
    /// After this entry
    pub first: EntryId,
    /// comes this mark,
    pub mark: u8,
    /// and then this entry.
    pub next: EntryId,
}

impl GoesOn {
    pub(crate) const NONE: GoesOn = {
        let none = EntryId::new(PartId(0), 0);
        GoesOn { first: none, mark: 0, next: none }
    };
}

/// The type of an entry in the table of a part.
macro_rules! entry_type {
    (date) => {
        $crate::date::Date
    };
    (name) => {
        $crate::name::Name
    };
    ($type:ident $($places:literal)?) => {
        $type
    };
}

/// The kind that goes with it.
macro_rules! entry_kind {
    (date) => {
        $crate::entry::Kind::Date
    };
    (name) => {
        $crate::entry::Kind::Name
    };
    ($type:ident) => {
        $crate::entry::Kind::of(<$type as ocellus_core::value::Value>::RANGE, 0)
    };
    ($type:ident $places:literal) => {
        $crate::entry::Kind::of(<$type as ocellus_core::value::Value>::RANGE, $places)
    };
}

macro_rules! or_none {
    () => {
        None
    };
    ($value:literal) => {
        Some($value as f64)
    };
}

macro_rules! shown_as {
    () => {
        None
    };
    ($shown_as:ident) => {
        Some($crate::entry::ShownAs::$shown_as)
    };
}

/// `[section] NAME "key" "word" (Type decimals) = default "what it is", ShownAs;`
macro_rules! entries {
    ($([$section:literal] $(
        $id:ident $key:literal $word:literal ($($kind:tt)+) $(= $default:literal)? $what:literal $(, $shown_as:ident)?;
    )*)*) => {
        /// What goes in.
        #[allow(non_camel_case_types, clippy::upper_case_acronyms, dead_code, unused_imports)]
        pub mod entries {
            use super::*;
            enum Number { $($($id,)*)* }
            $($(#[doc = $what] pub const $id: $crate::entry::Entry<entry_type!($($kind)+)> =
                $crate::entry::Entry::new($crate::id::EntryId::new(PART, Number::$id as u8));)*)*
        }

        pub(crate) const ENTRIES: &[$crate::entry::EntryRow] = &[$($($crate::entry::EntryRow {
            key: $key, word: $word, what: $what, section: $section,
            kind: entry_kind!($($kind)+), default: or_none!($($default)?), shown_as: shown_as!($($shown_as)?),
        },)*)*];
    };
}
