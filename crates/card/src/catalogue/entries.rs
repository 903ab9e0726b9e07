//! Entries, by number and by name.

use super::columns::at;
use crate::entry::{EntryRow, GoesOn, Kind, Misread, ShownAs};
use crate::id::{EntryId, PartId};
use ocellus_core::bounds::Bounds;
use ocellus_core::quantity::LensCylinder;
use ocellus_text::Text;

rows!(EntryId: EntryRow = entries, EntryRow {
    key: "", word: "", what: "", section: "", kind: Kind::Name, default: None, shown_as: None,
});

texts! {
    keys = |row| row.key;
    words = |row| row.word;
    whats = |row| row.what;
}

shared_texts!(SECTIONS section_of = |row| row.section);

/// The tables of a case file, each where the part stands that has most of its entries.
static TABLES: [&str; SECTIONS.2] = {
    let (mut tables, mut homes, mut count) = ([""; SECTIONS.2], [0; SECTIONS.2], 0);
    while count < SECTIONS.2 {
        let home = home(SECTIONS.0[count]);
        let mut place = count;
        while place > 0 && homes[place - 1] > home {
            (tables[place], homes[place]) = (tables[place - 1], homes[place - 1]);
            place -= 1;
        }
        (tables[place], homes[place]) = (SECTIONS.0[count], home);
        count += 1;
    }
    tables
};

/// The place of the part that has most entries of a table.
const fn home(table: &str) -> usize {
    let (mut home, mut most, mut part) = (0, 0, 0);
    while part < super::rows::PARTS {
        let (rows, mut entries, mut n) = (super::rows::BY_NUMBER[part].entries, 0, 0);
        while n < rows.len() {
            entries += super::rows::same(rows[n].section, table) as usize;
            n += 1;
        }
        if entries > most {
            (home, most) = (part, entries);
        }
        part += 1;
    }
    home
}

column!(KINDS: Kind = |row| row.kind);
sparse!(DEFAULTS: f64 = |row| row.default, 0.0);
sparse!(SHOWN_AS: ShownAs = |row| row.shown_as, ShownAs::Together);

/// Where a draft keeps an entry: among its words, its numbers or its names.
#[derive(Clone, Copy)]
pub(crate) enum Slot {
    /// A word, or a small number.
    Word(u8),
    /// A number or a date.
    Number(u8),
    /// A name.
    Name(u8),
}

const SLOTS: ([Slot; COUNT + 1], usize, usize, usize) = {
    let (mut slots, mut words, mut numbers, mut names, mut n) = ([Slot::Name(u8::MAX); COUNT + 1], 0, 0, 0, 0);
    while n < COUNT {
        slots[n] = match ROWS[n].kind {
            Kind::Choice(_) => {
                words += 1;
                Slot::Word(words as u8 - 1)
            }
            Kind::Number(..) | Kind::Date => {
                numbers += 1;
                Slot::Number(numbers as u8 - 1)
            }
            Kind::Name => {
                names += 1;
                Slot::Name(names as u8 - 1)
            }
        };
        n += 1;
    }
    (slots, words, numbers, names)
};

/// How many of each a draft has room for.
pub(crate) const WORDS: usize = SLOTS.1;
pub(crate) const NUMBERS: usize = SLOTS.2;
pub(crate) const NAMES: usize = SLOTS.3;

static SLOT: [Slot; COUNT + 1] = SLOTS.0;

of_parts!(MISREADS: Misread = misreads, Misread::NONE);
of_parts!(GOES_ON: GoesOn = goes_on, GoesOn::NONE);

impl EntryId {
    /// The entry with this name in a case file.
    ///
    /// ```
    /// use ocellus_card::{entries, id::EntryId};
    /// assert_eq!(EntryId::of_key("eye"), Some(entries::SIDE.id()));
    /// assert_eq!(EntryId::of_key("eyes"), None);
    /// ```
    pub fn of_key(key: &str) -> Option<EntryId> {
        EntryId::all().find(|entry| entry.key().is(key))
    }

    /// The entry that is typed by this word.
    ///
    /// ```
    /// use ocellus_card::{entries, id::EntryId};
    /// assert_eq!(EntryId::of_word("al"), Some(entries::AXIAL_LENGTH.id()));
    /// ```
    pub fn of_word(word: &str) -> Option<EntryId> {
        EntryId::all().find(|entry| entry.word().is(word))
    }

    /// Its name in a case file and in a table's header.
    ///
    /// ```
    /// assert!(ocellus_card::entries::AXIAL_LENGTH.id().key() == "axial_length_mm");
    /// ```
    pub fn key(self) -> Text {
        keys(self.place())
    }

    /// The short word by which it is typed, the usual abbreviation where there is one.
    ///
    /// ```
    /// assert!(ocellus_card::entries::AXIAL_LENGTH.id().word() == "al");
    /// ```
    pub fn word(self) -> Text {
        words(self.place())
    }

    /// What it is, for a person.
    ///
    /// ```
    /// assert!(ocellus_card::entries::AXIAL_LENGTH.id().what() == "axial length");
    /// ```
    pub fn what(self) -> Text {
        whats(self.place())
    }

    /// The table of a case file that it stands in; empty for keys before the first.
    ///
    /// ```
    /// assert_eq!(ocellus_card::entries::AXIAL_LENGTH.id().section(), "biometry");
    /// ```
    pub fn section(self) -> &'static str {
        section_of(self.place())
    }

    /// What kind of entry it is.
    ///
    /// ```
    /// use ocellus_card::{entries, entry::Kind};
    /// assert!(matches!(entries::AXIAL_LENGTH.id().kind(), Kind::Number(2, bounds) if bounds.max == 40.0));
    /// ```
    pub fn kind(self) -> Kind {
        KINDS.get(self.place()).copied().unwrap_or(Kind::Name)
    }

    /// The value used when it is not entered, always shown on the card.
    ///
    /// ```
    /// assert_eq!(ocellus_card::entries::VERTEX.id().default(), Some(12.0));
    /// ```
    pub fn default(self) -> Option<f64> {
        at(&DEFAULTS, self.place())
    }

    /// How it is shown besides its value.
    pub fn shown_as(self) -> Option<ShownAs> {
        at(&SHOWN_AS, self.place())
    }

    /// The unit that is printed after its value; empty where there is none.
    ///
    /// ```
    /// assert_eq!(ocellus_card::entries::AXIAL_LENGTH.id().unit(), "mm");
    /// ```
    pub fn unit(self) -> &'static str {
        match self.kind() {
            Kind::Number(_, bounds) if bounds.unit != "1" => bounds.unit,
            _ => "",
        }
    }

    /// Whether it is printed with its sign always: every power and refraction, where a lost sign is a wrong lens.
    ///
    /// ```
    /// use ocellus_card::entries;
    /// assert!(entries::TARGET.id().signed() && !entries::K1.id().signed());
    /// ```
    pub fn signed(self) -> bool {
        // a lens cylinder is never minus, and is read out with its plus all the same
        let both = |bounds: &Bounds| bounds.min < 0.0 || core::ptr::eq(bounds, LensCylinder::BOUNDS);
        matches!(self.kind(), Kind::Number(_, bounds) if bounds.unit == "D" && both(bounds))
    }

    /// What a value outside its range probably is.
    pub fn looks_like(self, value: f64) -> Option<Text> {
        let whole = |hundredths: i32| f64::from(hundredths) / 100.0;
        let fits = |(_, misread): &&(PartId, Misread)| {
            misread.entry == self && (whole(misread.least)..=whole(misread.most)).contains(&value)
        };
        MISREADS.iter().find(fits).map(|(_, misread)| misread.looks_like)
    }

    /// What may be typed behind it, after which mark.
    pub fn goes_on(self) -> Option<(u8, EntryId)> {
        GOES_ON.iter().find(|(_, on)| on.first == self).map(|(_, on)| (on.mark, on.next))
    }

    pub(crate) fn slot(self) -> Slot {
        SLOT.get(self.place()).copied().unwrap_or(Slot::Name(u8::MAX))
    }
}

/// The names of the tables of a case file, in their order; that of the keys before the first is empty.
///
/// ```
/// assert_eq!(ocellus_card::sections().take(2).collect::<Vec<_>>(), ["", "biometry"]);
/// ```
pub fn sections() -> impl Iterator<Item = &'static str> + Clone {
    TABLES.iter().copied()
}

/// The entries of a table of a case file.
pub fn of_section(table: &str) -> impl Iterator<Item = EntryId> + Clone {
    EntryId::all().filter(move |entry| entry.section() == table)
}

/// Every usual notation: the entry it begins with, the mark between, the entry it goes on with.
pub fn notations() -> impl Iterator<Item = &'static GoesOn> {
    GOES_ON.iter().map(|(_, on)| on)
}
