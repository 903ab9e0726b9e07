//! All that a part of the card declares.

use crate::caution::CautionRow;
use crate::entry::{EntryRow, GoesOn, Misread};
use crate::id::{CautionId, EntryId, ItemId, PartId};
use crate::item::ItemRow;
use crate::layout::{ByMethod, Led};
use crate::sign_off::SignOffRow;
use ocellus_core::working::{Prose, Table};
use ocellus_text::Text;

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
    /// What must be known before a number of this part is read: printed at its head, and with the other cautions too.
    pub first: &'static [CautionId],
    /// Where one of these is reported there are no steps, and no missing entry would bring them.
    pub ends: &'static [CautionId],
    /// What is said at its head where the case is refused and this number is not given.
    pub without: &'static [(ItemId, Text)],
    /// Its tables with a line for each method.
    pub by_method: &'static [ByMethod],
    /// Its other tables.
    pub led: &'static [Led],
    /// Which of its numbers stand beside the answer, and would hide it where two cards are compared.
    pub aside: &'static [ItemId],
    /// Which of its numbers are followed where one entry goes from here to there, each with the heading of its column.
    pub swept: &'static [(ItemId, Text)],
    /// Which of its entries stand on the short card,
    pub short_entries: &'static [EntryId],
    /// and which of its numbers.
    pub short_items: &'static [ItemId],
    /// Usual notation of its entries.
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
            without: &[],
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
