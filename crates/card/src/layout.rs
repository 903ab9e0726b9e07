//! How the card is laid out, as data: which numbers stand in which table, and what is said beside them. Renderers know no number
//! by name.

use crate::id::{CautionId, EntryId, ItemId, PartId};
use ocellus_text::Text;

/// A table with a line for each method.
#[derive(Clone, Copy, Debug)]
pub struct ByMethod {
    /// A line before it, with the value of an entry.
    pub title: Option<&'static (Text, EntryId)>,
    /// The number that begins another block of lines; pointed at where it is the one that was entered.
    pub leader: Option<(ItemId, EntryId)>,
    /// What stands in each line.
    pub columns: &'static [Column],
    /// The number whose no leaves a method out of the comparison, and the cautions that say why.
    pub left_out: Option<&'static (ItemId, &'static [CautionId])>,
    /// What is said below it.
    pub below: Below,
}

impl ByMethod {
    /// Nothing but columns.
    pub const fn of(columns: &'static [Column]) -> ByMethod {
        ByMethod { title: None, leader: None, columns, left_out: None, below: Below::Nothing }
    }
}

/// A column of such a table.
#[derive(Clone, Copy, Debug)]
pub struct Column {
    /// What stands in it.
    pub item: ItemId,
    /// Its heading, of two lines with a `|` between them.
    pub heading: Text,
    /// The entry that must be this word of its own for it to be shown.
    pub only: Option<(EntryId, u8)>,
}

/// What is said below a table.
#[derive(Clone, Copy, Debug)]
pub enum Below {
    /// Nothing.
    Nothing,
    /// A sentence.
    Says(Text),
    /// A sentence with the value of an entry in it.
    Around(&'static [Text; 2], EntryId),
}

/// A table whose lines are not methods: what leads a line, and what stands in it.
#[derive(Clone, Copy, Debug)]
pub struct Led {
    /// What leads a line.
    pub leader: ItemId,
    /// What the table shows.
    pub heading: Text,
    /// What the leaders are, for the first column.
    pub of: Text,
    /// What stands in a line, each with the heading of its column; with no heading, a column for each method.
    pub cells: &'static [(ItemId, Text)],
    /// The entry that says which line was chosen.
    pub chosen: Option<EntryId>,
}

impl Led {
    pub(crate) const NONE: Led =
        Led { leader: ItemId::new(PartId(0), 0), heading: Text::EMPTY, of: Text::EMPTY, cells: &[], chosen: None };
}

/// `ITEM "first line" "second line";` each a column.
macro_rules! columns {
    ($($item:expr => $first:literal $second:literal $(if $entry:expr => $value:expr)?;)*) => {
        const {
            &[$($crate::layout::Column {
                item: $item, heading: ocellus_text::text!($first, "|", $second),
                only: { #[allow(unused_mut, unused_assignments)] let mut only = None; $(only = Some(($entry, $value as u8));)? only },
            }),*]
        }
    };
}
