//! All that a part of the card declares.

use crate::caution::CautionRow;
use crate::entry::{EntryRow, GoesOn, Misread};
use crate::id::{CautionId, EntryId, ItemId, PartId};
use crate::item::ItemRow;
use crate::layout::{ByMethod, Led};
use crate::sign_off::SignOffRow;
use crate::text::Text;
use ocellus_core::working::{Prose, Table};

/// The table of a part.
#[derive(Debug)]
pub struct PartRows {
    /// Its number, which stays.
    pub part: PartId,
    /// What its entries make a case of.
    pub stands: Stands,
    /// Its stable name.
    pub key: &'static str,
    /// Its heading on the card; empty where it stands in another's place.
    pub heading: &'static str,
    /// What goes in.
    pub entries: &'static [EntryRow],
    /// What comes out.
    pub items: &'static [ItemRow],
    /// What to know first.
    pub cautions: &'static [CautionRow],
    /// Lines to tick.
    pub sign_offs: &'static [SignOffRow],
    /// What must be known before a number of this part is read: told at its head, and with the other cautions too.
    pub first: &'static [CautionId],
    /// Where one of these is told there are no steps, and no entry that lacks would bring them.
    pub ends: &'static [CautionId],
    /// What is said at its head where the case is refused and this number is not given.
    pub without: Option<(ItemId, Text)>,
    /// Its tables with a line for each method.
    pub by_method: &'static [ByMethod],
    /// Its other tables.
    pub led: &'static [Led],
    /// Which of its numbers stand beside the answer, and would drown it where two cards are compared.
    pub aside: &'static [ItemId],
    /// Which of its numbers are followed where one entry goes from here to there, each with the heading of its column.
    pub swept: &'static [(ItemId, Text)],
    /// Which of its entries stand on the short card,
    pub short_entries: &'static [EntryId],
    /// and which of its numbers.
    pub short_items: &'static [ItemId],
    /// Trade notation of its entries.
    pub goes_on: &'static [GoesOn],
    /// What its entries are mistaken for.
    pub misreads: &'static [Misread],
    /// Its workings: tables of steps,
    pub tables: &'static [&'static Table],
    /// and what a desk prints beside each.
    pub prose: &'static [&'static [Prose]],
    /// What of it can be explained: name in commands, and heading.
    pub subjects: &'static [(&'static str, &'static str)],
}

/// What the entries of a part make a case of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// Of an eye.
    WithEye,
    /// Of a set-up, where there are none of an eye.
    Alone,
    /// Of nothing by themselves: they go with both.
    Beside,
}

/// What every part has, from the tables of its file.
macro_rules! part_rows {
    () => {
        $crate::part::PartRows {
            part: PART,
            stands: $crate::part::Stands::WithEye,
            key: KEY,
            heading: HEADING,
            entries: ENTRIES,
            items: ITEMS,
            cautions: CAUTIONS,
            sign_offs: SIGN_OFFS,
            first: &[],
            ends: &[],
            without: None,
            by_method: &[],
            led: &[],
            aside: &[],
            swept: &[],
            short_entries: &[],
            short_items: &[],
            goes_on: &[],
            misreads: &[],
            tables: &[],
            prose: &[],
            subjects: &[],
        }
    };
}

/// What a part of this kind is told of: what was entered, its eye, its lens.
macro_rules! known_to {
    ($known:ident entered) => {
        Some($known.entered)
    };
    ($known:ident $kind:ident) => {
        $known.$kind
    };
}

/// Shows a part where what it is about is there.
macro_rules! plan_of {
    ($name:ident nothing $known:ident $sink:ident) => {};
    ($name:ident entered $known:ident $sink:ident) => {
        // of the rows only what is needed: they themselves are not part of a program
        const STANDS: Stands = $name::table::ROWS.stands;
        const ENTRIES: u8 = $name::table::ROWS.entries.len() as u8;
        if $known.shows($name::table::PART, STANDS, ENTRIES) {
            $known.begin($name::table::PART, $sink);
            $name::plan($known.entered, $sink);
        }
    };
    ($name:ident $kind:ident $known:ident $sink:ident) => {
        if let Some(of) = $known.$kind {
            $sink.part($name::table::PART);
            $name::plan(of, $sink);
        }
    };
}

/// The rules of a part that has some.
macro_rules! rules_of {
    ($name:ident) => { &[] };
    ($name:ident rules $($does:ident)*) => { $name::RULES };
    ($name:ident $other:ident $($does:ident)*) => { rules_of!($name $($does)*) };
}

/// The steps of a part that has some; whether there were any, where what it is about is there.
macro_rules! explain_of {
    ($name:ident $kind:ident $known:ident $number:ident $sink:ident) => { None };
    ($name:ident $kind:ident $known:ident $number:ident $sink:ident explains $($does:ident)*) => {
        known_to!($known $kind).map(|of| $name::explain($number, of, $sink))
    };
    ($name:ident $kind:ident $known:ident $number:ident $sink:ident $other:ident $($does:ident)*) => {
        explain_of!($name $kind $known $number $sink $($does)*)
    };
}

/// The lines to tick of a part that has some.
macro_rules! signs_of {
    ($name:ident $kind:ident $known:ident) => { None };
    ($name:ident $kind:ident $known:ident signs $($does:ident)*) => { known_to!($known $kind).map($name::signs) };
    ($name:ident $kind:ident $known:ident $other:ident $($does:ident)*) => { signs_of!($name $kind $known $($does)*) };
}

/// `name of kind: what it does;` a line for each part, in the order of the card.
macro_rules! parts {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// The table of every part, in the order of the card.
        pub(crate) const TABLES: &[&PartRows] = &[$($(#[$cfg])* &$name::table::ROWS,)*];

        /// What must hold between the entries of each part.
        pub(crate) const RULES: &[(Stands, &[Rule])] =
            &[$($(#[$cfg])* ($name::table::ROWS.stands, rules_of!($name $($($does)*)?)),)*];

        /// Streams every part of the card.
        #[inline(never)]
        pub(crate) fn plan(known: &Known, sink: &mut dyn Sink) {
            $($(#[$cfg])* { plan_of!($name $kind known sink); })*
        }

        /// Streams the lines to tick of every part.
        #[inline(never)]
        pub(crate) fn signs(known: &Known, each: &mut dyn FnMut(SignOffId)) {
            $($(#[$cfg])* {
                let lines: Option<&[SignOffId]> = signs_of!($name $kind known $($($does)*)?);
                lines.into_iter().flatten().for_each(|line| each(*line));
            })*
        }

        /// Streams cautions and steps of one thing that a part can explain; whether there were steps, and nothing where what
        /// it is about is not there.
        #[inline(never)]
        pub(crate) fn explain(part: PartId, number: u8, known: &Known, sink: &mut dyn Sink) -> Option<bool> {
            $($(#[$cfg])* {
                if part == $name::table::PART {
                    return explain_of!($name $kind known number sink $($($does)*)?);
                }
            })*
            None
        }

        /// Every entry, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod entries {
            $($(#[$cfg])* pub use super::$name::table::entries::*;)*
        }

        /// Every number, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod items {
            $($(#[$cfg])* pub use super::$name::table::items::*;)*
        }

        /// Every caution, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod cautions {
            $($(#[$cfg])* pub use super::$name::table::cautions::*;)*
        }

        /// Every line to tick, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod sign_offs {
            $($(#[$cfg])* pub use super::$name::table::sign_offs::*;)*
        }
    };
}
