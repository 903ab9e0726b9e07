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
    /// What is said at its head where the case is refused and this number is not given.
    pub without: Option<(ItemId, Text)>,
    /// Its tables with a line for each method.
    pub by_method: &'static [ByMethod],
    /// Its other tables.
    pub led: &'static [Led],
    /// What of it belongs on the short card.
    pub short: Short,
    /// Trade notation of its entries.
    pub goes_on: &'static [GoesOn],
    /// What its entries are mistaken for.
    pub misreads: &'static [Misread],
    /// Its workings.
    pub workings: &'static [(&'static Table, &'static [Prose])],
    /// What of it can be explained: name in commands, and heading.
    pub subjects: &'static [(&'static str, &'static str)],
}

/// What belongs on the short card.
#[derive(Clone, Copy, Debug)]
pub struct Short {
    /// Of the entries.
    pub entries: &'static [EntryId],
    /// Of the numbers.
    pub items: &'static [ItemId],
}

impl Short {
    /// Nothing.
    pub const NOTHING: Short = Short { entries: &[], items: &[] };
}

/// What every part has, from the tables of its file.
macro_rules! part_rows {
    () => {
        $crate::part::PartRows {
            part: PART,
            key: KEY,
            heading: HEADING,
            entries: ENTRIES,
            items: ITEMS,
            cautions: CAUTIONS,
            sign_offs: SIGN_OFFS,
            first: &[],
            without: None,
            by_method: &[],
            led: &[],
            short: $crate::part::Short::NOTHING,
            goes_on: &[],
            misreads: &[],
            workings: &[],
            subjects: &[],
        }
    };
}

/// The workings of a part, by their types.
macro_rules! workings {
    ($($type:path),* $(,)?) => { &[$((<$type>::table(), <$type>::prose())),*] };
}
