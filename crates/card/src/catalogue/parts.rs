//! Parts: their names, and how each is laid out.

use super::rows::TABLES;
use crate::id::{CautionId, EntryId, ItemId, PartId};
use crate::layout::{ByMethod, Led};
use crate::part::{PartRows, Stands};
use ocellus_text::Text;

const COUNT: usize = super::rows::PARTS - 1;
const ROWS: [&PartRows; COUNT + 1] = super::rows::BY_NUMBER;

texts! {
    keys = |row| row.key;
    headings = |row| row.heading;
}

/// The parts by their numbers, and what the entries of each make a case of.
static PARTS: [(PartId, Stands); COUNT + 1] = {
    let (mut parts, mut n) = ([(PartId(0), Stands::WithEye); COUNT + 1], 0);
    while n <= COUNT {
        parts[n] = (ROWS[n].part, ROWS[n].stands);
        n += 1;
    }
    parts
};

/// The same in the order of the card.
static ON_CARD: [PartId; COUNT + 1] = {
    let (mut parts, mut n) = ([PartId(0); COUNT + 1], 0);
    while n <= COUNT {
        parts[n] = TABLES[n].part;
        n += 1;
    }
    parts
};

of_parts!(WITHOUT: (ItemId, Text) = without, (ItemId::new(PartId(0), 0), Text::EMPTY));
of_parts!(FIRST: CautionId = first, CautionId::new(PartId(0), 0));
of_parts!(ENDS: CautionId = ends, CautionId::new(PartId(0), 0));
of_parts!(BY_METHOD: ByMethod = by_method, ByMethod::of(&[]));
of_parts!(LED: Led = led, Led::NONE);
of_parts!(ASIDE: ItemId = aside, ItemId::new(PartId(0), 0));
of_parts!(SWEPT: (ItemId, Text) = swept, (ItemId::new(PartId(0), 0), Text::EMPTY));
of_parts!(SHORT_ENTRIES: EntryId = short_entries, EntryId::new(PartId(0), 0));
of_parts!(SHORT_ITEMS: ItemId = short_items, ItemId::new(PartId(0), 0));

/// What of a list is of this part.
fn of<T>(list: &'static [(PartId, T)], part: PartId) -> impl Iterator<Item = &'static T> + Clone {
    list.iter().filter(move |(of, _)| *of == part).map(|(_, one)| one)
}

impl PartId {
    /// Every part that there is, in the order of the card.
    ///
    /// ```
    /// use ocellus_card::id::PartId;
    /// assert!(PartId::all().all(|part| !part.key().is_empty()));
    /// ```
    pub fn all() -> impl Iterator<Item = PartId> + Clone {
        ON_CARD.iter().copied()
    }

    /// The same, by their numbers.
    pub(crate) fn by_number() -> impl Iterator<Item = PartId> {
        PARTS.iter().map(|(part, _)| *part)
    }

    /// Whether there is such a part.
    pub fn is_there(self) -> bool {
        self.place().is_some()
    }

    fn place(self) -> Option<usize> {
        PARTS.iter().position(|(part, _)| *part == self)
    }

    /// Its stable name.
    pub fn key(self) -> Text {
        self.place().map_or(Text::EMPTY, keys)
    }

    /// Its heading on the card; empty where it stands in another's place.
    pub fn heading(self) -> Text {
        self.place().map_or(Text::EMPTY, headings)
    }

    /// What its entries make a case of.
    pub(crate) fn stands(self) -> Stands {
        self.place().and_then(|place| PARTS.get(place)).map_or(Stands::WithEye, |(_, stands)| *stands)
    }

    /// What must be known before a number of this part is read: printed at its head, and with the other cautions too.
    pub fn first(self) -> impl Iterator<Item = &'static CautionId> + Clone {
        of(&FIRST, self)
    }

    /// What is said at its head where the case is refused and this number is not given.
    pub fn without(self) -> Option<(ItemId, Text)> {
        of(&WITHOUT, self).next().copied()
    }

    /// Its tables with a line for each method.
    pub fn by_method(self) -> impl Iterator<Item = &'static ByMethod> + Clone {
        of(&BY_METHOD, self)
    }

    /// Its other tables.
    pub fn led(self) -> impl Iterator<Item = &'static Led> + Clone {
        of(&LED, self)
    }
}

impl CautionId {
    /// Whether, where it is reported, no missing entry would bring steps.
    pub fn ends_it(self) -> bool {
        ENDS.iter().any(|(_, caution)| *caution == self)
    }
}

impl EntryId {
    /// Whether it stands on the short card.
    pub fn is_short(self) -> bool {
        SHORT_ENTRIES.iter().any(|(_, entry)| *entry == self)
    }
}

impl ItemId {
    /// Whether it stands on the short card.
    pub fn is_short(self) -> bool {
        SHORT_ITEMS.iter().any(|(_, item)| *item == self)
    }

    /// Whether it stands beside the answer, and would hide it where two cards are compared: numbers of tables too.
    pub fn is_aside(self) -> bool {
        self.led().is_some() || ASIDE.iter().any(|(_, item)| *item == self)
    }

    /// The numbers that are followed where one entry goes from here to there, each with the heading of its column.
    pub fn swept() -> impl Iterator<Item = (ItemId, Text)> + Clone {
        SWEPT.iter().map(|(_, swept)| *swept)
    }

    /// The table that it leads or stands in, of those whose lines are not methods.
    pub fn led(self) -> Option<&'static Led> {
        self.part().led().find(|led| led.leader == self || led.cells.iter().any(|(cell, _)| *cell == self))
    }
}
