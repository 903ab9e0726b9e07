//! A case while it is being typed: every entry, made or not. Readers fill it and do nothing else.

use crate::catalogue::{NAMES, NUMBERS, Slot, WORDS};
use crate::date::Date;
use crate::entry::Kind;
use crate::entry_set::EntrySet;
use crate::error::{Error, Wrong};
use crate::id::EntryId;
use crate::name::Name;
use ocellus_core::decimal::{self, Sign};

/// A word's place that is none.
const NO_WORD: u8 = u8::MAX;

/// Every entry of a case, each made or not.
///
/// Numbers are kept in the unit of their key, words as their code, dates as YYYYMMDD, so that one draft is one small
/// block of memory on a device.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    numbers: [f64; NUMBERS],
    /// The places of words among the words of their entries: a byte where a number takes eight.
    words: [u8; WORDS],
    names: [Option<Name>; NAMES],
    made: EntrySet,
}

impl Default for Draft {
    fn default() -> Self {
        Draft::EMPTY
    }
}

impl Draft {
    /// Nothing entered.
    pub const EMPTY: Draft =
        Draft { numbers: [0.0; NUMBERS], words: [0; WORDS], names: [None; NAMES], made: EntrySet::NONE };

    /// Makes an entry of text, as typed.
    ///
    /// # Errors
    /// Says what the entry accepts; the draft is then unchanged. More decimals than the entry has are refused, since two
    /// people who compare a read-back must have typed the same digits. Ranges are checked at the door, not here.
    ///
    /// ```
    /// use ocellus_card::{draft::Draft, entries, error::Wrong};
    /// let mut draft = Draft::default();
    /// draft.enter(entries::AXIAL_LENGTH, "23.45")?;
    /// draft.enter(entries::SIDE, "left")?;
    /// assert_eq!(draft.number(entries::AXIAL_LENGTH), Some(23.45));
    /// assert_eq!(draft.enter(entries::AXIAL_LENGTH, "23,45").unwrap_err().wrong, Wrong::CommaDecimal);
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn enter(&mut self, entry: impl Into<EntryId>, text: &str) -> Result<(), Error> {
        self.enter_text(entry.into(), text)
    }

    fn enter_text(&mut self, entry: EntryId, text: &str) -> Result<(), Error> {
        let refused = |wrong| Error::of(wrong, entry);
        let value = match entry.kind() {
            Kind::Number(places, bounds) => {
                let parsed =
                    decimal::parse(text).map_err(|wrong| Error { bounds: Some(bounds), ..refused(wrong.into()) })?;
                if parsed.places > places {
                    return Err(Error {
                        value: Some(parsed.value),
                        bounds: Some(bounds),
                        ..refused(Wrong::TooManyDecimals)
                    });
                }
                parsed.value
            }
            Kind::Choice(words) => words.iter().position(|word| *word == text).ok_or(refused(Wrong::NotAWord))? as f64,
            Kind::Date => Date::parse(text).map_err(refused)?.number(),
            Kind::Name => return self.set_name(entry, Name::parse(text).map_err(refused)?),
        };
        self.set(entry, value);
        Ok(())
    }

    /// Sets the number, word code or date of an entry: for tables of cases, whose numbers may have any number of decimals.
    /// What is not the code of a word is kept as one that the door refuses; a name is not a number, and stays as it was.
    ///
    /// ```
    /// use ocellus_card::{draft::Draft, entries};
    /// let mut draft = Draft::default();
    /// draft.set(entries::AXIAL_LENGTH, 23.456);
    /// draft.set(entries::LENS_MODEL, 1.0);
    /// assert!(draft.has(entries::AXIAL_LENGTH) && !draft.has(entries::LENS_MODEL));
    /// ```
    pub fn set(&mut self, entry: impl Into<EntryId>, value: f64) {
        let entry = entry.into();
        if !matches!(entry.slot(), Slot::Name(_)) {
            self.put(entry, value);
            self.made.put(entry.place(), true);
        }
    }

    fn put(&mut self, entry: EntryId, value: f64) {
        match entry.slot() {
            Slot::Word(slot) => {
                if let Some(word) = self.words.get_mut(usize::from(slot)) {
                    // what is not a whole number of a byte would become another by this
                    *word = if f64::from(value as u8) == value { value as u8 } else { NO_WORD };
                }
            }
            Slot::Number(slot) => {
                if let Some(number) = self.numbers.get_mut(usize::from(slot)) {
                    *number = value;
                }
            }
            Slot::Name(_) => {}
        }
    }

    /// Sets an entry that is a name.
    ///
    /// # Errors
    /// [`Wrong::NotAName`] when the entry is not one.
    pub fn set_name(&mut self, entry: impl Into<EntryId>, name: Name) -> Result<(), Error> {
        let entry = entry.into();
        let slot = match entry.slot() {
            Slot::Name(slot) => self.names.get_mut(usize::from(slot)),
            _ => None,
        };
        *slot.ok_or(Error::of(Wrong::NotAName, entry))? = Some(name);
        self.made.put(entry.place(), true);
        Ok(())
    }

    /// Forgets what was entered.
    pub fn clear(&mut self, entry: impl Into<EntryId>) {
        let entry = entry.into();
        self.put(entry, 0.0);
        self.made.put(entry.place(), false);
        if let Slot::Name(slot) = entry.slot()
            && let Some(name) = self.names.get_mut(usize::from(slot))
        {
            *name = None;
        }
    }

    /// Forgets everything; an empty draft to copy would be a kilobyte of flash and of stack.
    pub fn clear_all(&mut self) {
        self.numbers.fill(0.0);
        self.words.fill(0);
        self.names.fill(None);
        self.made = EntrySet::NONE;
    }

    /// The number, word code or date that was entered.
    pub fn number(&self, entry: impl Into<EntryId>) -> Option<f64> {
        self.number_of(entry.into())
    }

    // not inlined: a device would carry a copy for each of a hundred entries
    #[inline(never)]
    fn number_of(&self, entry: EntryId) -> Option<f64> {
        if !self.made.has(entry.place()) {
            return None;
        }
        match entry.slot() {
            Slot::Word(slot) => self.words.get(usize::from(slot)).map(|word| f64::from(*word)),
            Slot::Number(slot) => self.numbers.get(usize::from(slot)).copied(),
            Slot::Name(_) => None,
        }
    }

    /// The name that was entered.
    pub fn name(&self, entry: impl Into<EntryId>) -> Option<&Name> {
        match entry.into().slot() {
            Slot::Name(slot) => self.names.get(usize::from(slot))?.as_ref(),
            _ => None,
        }
    }

    /// Whether an entry was made.
    pub fn has(&self, entry: impl Into<EntryId>) -> bool {
        self.made.has(entry.into().place())
    }

    /// Every entry that was made.
    pub fn made(&self) -> impl Iterator<Item = EntryId> + '_ {
        (0..EntryId::COUNT).filter(|place| self.made.has(*place)).filter_map(EntryId::at)
    }
}

/// The text of an entry's value as it is typed and printed: fixed decimals, words, dates. `None` where it has none.
pub fn with_text<T>(entry: impl Into<EntryId>, value: f64, show: impl FnOnce(&str) -> T) -> Option<T> {
    let entry = entry.into();
    match entry.kind() {
        Kind::Number(places, _) => {
            let sign = if entry.signed() { Sign::Always } else { Sign::Minus };
            decimal::fixed(value, places, sign).map(|text| show(text.as_str()))
        }
        Kind::Choice(words) => words.get(value as usize).map(|word| show(word)),
        Kind::Date => Date::from_number(value).ok().map(|date| {
            let (y, m, d) = date.parts();
            let digit = |n: u32| b'0' + (n % 10) as u8;
            let text = [
                digit(y / 1000),
                digit(y / 100),
                digit(y / 10),
                digit(y),
                b'-',
                digit(m / 10),
                digit(m),
                b'-',
                digit(d / 10),
                digit(d),
            ];
            show(core::str::from_utf8(&text).unwrap_or(""))
        }),
        Kind::Name => None,
    }
}
