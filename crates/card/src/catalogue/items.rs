//! Numbers that come out, by number and by name.

use crate::id::ItemId;
use crate::item::{Form, ItemRow};
use ocellus_core::source::{Mark, Source};
use ocellus_text::Text;

rows!(ItemId: ItemRow = items, ItemRow {
    key: "", unit: "1", places: 0, signed: false, name: "", source: Source::Here, mark: Mark::Chosen, form: Form::Number,
});

texts! {
    keys = |row| row.key;
    names = |row| row.name;
}

shared_texts!(UNITS units = |row| row.unit);

column!(PLACES: u8 = |row| row.places << 1 | row.signed as u8);
column!(SOURCES: (Source, Mark) = |row| (row.source, row.mark));

/// What a person reads in place of a number, where it is a word.
static FORMS: [(u16, Form); {
    let (mut count, mut n) = (0, 0);
    while n < ROWS.len() {
        count += !matches!(ROWS[n].form, Form::Number) as usize;
        n += 1;
    }
    count
}] = {
    let (mut forms, mut count, mut n) = ([(0, Form::Number); _], 0, 0);
    while n < ROWS.len() {
        if !matches!(ROWS[n].form, Form::Number) {
            forms[count] = (n as u16, ROWS[n].form);
            count += 1;
        }
        n += 1;
    }
    forms
};

impl ItemId {
    /// The number with this name.
    ///
    /// ```
    /// use ocellus_card::{id::ItemId, items};
    /// assert_eq!(ItemId::of_key("mean_k_d"), Some(items::MEAN_K));
    /// ```
    pub fn of_key(key: &str) -> Option<ItemId> {
        ItemId::all().find(|item| item.key().is(key))
    }

    /// Its stable name.
    ///
    /// ```
    /// assert!(ocellus_card::items::MEAN_K.key() == "mean_k_d");
    /// ```
    pub fn key(self) -> Text {
        keys(self.place())
    }

    /// What it is, for a person.
    ///
    /// ```
    /// assert!(ocellus_card::items::MEAN_K.name() == "mean corneal power at 1.3375");
    /// ```
    pub fn name(self) -> Text {
        names(self.place())
    }

    /// Its unit; "1" for a pure number.
    ///
    /// ```
    /// assert_eq!(ocellus_card::items::MEAN_K.unit(), "D");
    /// ```
    pub fn unit(self) -> &'static str {
        units(self.place())
    }

    /// The decimals it is printed with.
    ///
    /// ```
    /// assert_eq!(ocellus_card::items::MEAN_K.places(), 2);
    /// ```
    pub fn places(self) -> u8 {
        PLACES.get(self.place()).map_or(0, |places| places >> 1)
    }

    /// Whether its sign is always printed.
    ///
    /// ```
    /// assert!(!ocellus_card::items::MEAN_K.signed());
    /// ```
    pub fn signed(self) -> bool {
        PLACES.get(self.place()).is_some_and(|places| places & 1 == 1)
    }

    /// Where the equation comes from, for what is not a method's own.
    pub fn source(self) -> Source {
        SOURCES.get(self.place()).map_or(Source::Here, |(source, _)| *source)
    }

    /// How sure that is.
    pub fn mark(self) -> Mark {
        SOURCES.get(self.place()).map_or(Mark::Chosen, |(_, mark)| *mark)
    }

    /// What a person reads in its place.
    pub fn form(self) -> Form {
        let place = self.place();
        FORMS.iter().find(|(of, _)| usize::from(*of) == place).map_or(Form::Number, |(_, form)| *form)
    }
}
