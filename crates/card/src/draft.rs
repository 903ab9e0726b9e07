//! A case while it is being typed: every field, entered or not. Readers fill it and do nothing else.

use crate::date::Date;
use crate::decimal::{self, Sign};
use crate::error::{Code, Error};
use crate::field::{Field, FieldSet, Kind};
use crate::name::Name;

const NAMES: &[Field] = &[Field::Id, Field::LensModel, Field::BackupModel];

/// A word's place that is none.
const NO_WORD: u8 = u8::MAX;

/// How many entries are words.
#[expect(clippy::indexing_slicing, reason = "while it is compiled")]
const WORDS: usize = {
    let (mut place, mut words) = (0, 0);
    while place < Field::COUNT {
        words += is_word(Field::ALL[place]) as usize;
        place += 1;
    }
    words
};

/// Where each entry is kept: words first, then numbers.
#[expect(clippy::indexing_slicing, reason = "while it is compiled")]
static SLOTS: [u8; Field::COUNT] = {
    let (mut slots, mut place, mut words) = ([0; Field::COUNT], 0, 0);
    while place < Field::COUNT {
        if is_word(Field::ALL[place]) {
            slots[place] = words;
            words += 1;
        } else {
            slots[place] = WORDS as u8 + place as u8 - words;
        }
        place += 1;
    }
    slots
};

const fn is_word(field: Field) -> bool {
    matches!(field.kind(), Kind::Choice(_))
}

/// Every field of a case, each entered or not.
///
/// Numbers are kept in the unit of their key, words as their code, dates as YYYYMMDD, so that one draft is one small
/// block of memory on a device.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    numbers: [f64; Field::COUNT - WORDS],
    /// The places of words among the words of their entries: a byte where a number takes eight.
    words: [u8; WORDS],
    known: FieldSet,
    names: [Option<Name>; NAMES.len()],
}

impl Default for Draft {
    fn default() -> Self {
        Draft::EMPTY
    }
}

impl Draft {
    /// Nothing entered.
    pub const EMPTY: Draft = Draft {
        numbers: [0.0; Field::COUNT - WORDS],
        words: [0; WORDS],
        known: FieldSet::NONE,
        names: [None; NAMES.len()],
    };

    /// Enters text, as typed, into a field.
    ///
    /// # Errors
    /// Says what the field accepts; the draft is then unchanged. More decimals than the field has are refused, since two
    /// people who compare a read-back must have typed the same digits. Ranges are checked at the door, not here.
    ///
    /// ```
    /// use ocellus_core::{draft::Draft, error::Code, field::Field};
    /// let mut draft = Draft::default();
    /// draft.enter(Field::AxialLength, "23.45")?;
    /// draft.enter(Field::Side, "left")?;
    /// assert_eq!(draft.number(Field::AxialLength), Some(23.45));
    /// assert_eq!(draft.enter(Field::AxialLength, "23,45").unwrap_err().code, Code::CommaDecimal);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn enter(&mut self, field: Field, text: &str) -> Result<(), Error> {
        let refused = |code| Error::of(code, field);
        let value = match field.kind() {
            Kind::Number(places, bounds) => {
                let parsed = decimal::parse(text).map_err(|code| Error { bounds: Some(bounds), ..refused(code) })?;
                if parsed.places > places {
                    return Err(Error {
                        value: Some(parsed.value),
                        bounds: Some(bounds),
                        ..refused(Code::TooManyDecimals)
                    });
                }
                parsed.value
            }
            Kind::Choice(words) => words.iter().position(|word| *word == text).ok_or(refused(Code::NotAWord))? as f64,
            Kind::Date => Date::parse(text).map_err(refused)?.number(),
            Kind::Name => return self.set_name(field, Name::parse(text).map_err(refused)?),
        };
        self.set(field, value);
        Ok(())
    }

    /// Sets a field's number, word code or date: for tables of cases, whose numbers may have any number of decimals. What
    /// is no code of a word is kept as one that the door refuses.
    pub fn set(&mut self, field: Field, value: f64) {
        self.put(field, value);
        self.known.put(field, true);
    }

    fn put(&mut self, field: Field, value: f64) {
        let slot = slot(field);
        if let Some(word) = self.words.get_mut(slot) {
            // what is no whole number of a byte becomes another by this
            *word = if f64::from(value as u8) == value { value as u8 } else { NO_WORD };
        } else if let Some(number) = self.numbers.get_mut(slot - WORDS) {
            *number = value;
        }
    }

    /// Sets a field that is a name.
    ///
    /// # Errors
    /// [`Code::NotAName`] when the field is not one.
    pub fn set_name(&mut self, field: Field, name: Name) -> Result<(), Error> {
        match NAMES.iter().position(|f| *f == field).and_then(|place| self.names.get_mut(place)) {
            Some(slot) => *slot = Some(name),
            None => return Err(Error::of(Code::NotAName, field)),
        }
        Ok(())
    }

    /// Forgets what was entered into a field.
    pub fn clear(&mut self, field: Field) {
        self.put(field, 0.0);
        self.known.put(field, false);
        if let Some(slot) = NAMES.iter().position(|f| *f == field).and_then(|place| self.names.get_mut(place)) {
            *slot = None;
        }
    }

    /// The number, word code or date entered into a field.
    pub fn number(&self, field: Field) -> Option<f64> {
        if !self.known.has(field) {
            return None;
        }
        let slot = slot(field);
        let word = || self.words.get(slot).map(|word| f64::from(*word));
        slot.checked_sub(WORDS).map_or_else(word, |number| self.numbers.get(number).copied())
    }

    /// The name entered into a field.
    pub fn name(&self, field: Field) -> Option<&Name> {
        let place = NAMES.iter().position(|f| *f == field)?;
        self.names.get(place)?.as_ref()
    }

    /// Whether anything was entered into a field.
    pub fn has(&self, field: Field) -> bool {
        self.known.has(field) || self.name(field).is_some()
    }

    /// The number, word code or date entered into a field, or its default.
    // not inlined: a device would carry a copy for each of a hundred entries
    #[inline(never)]
    pub(crate) fn number_or_default(&self, field: Field) -> Option<f64> {
        self.number(field).or_else(|| field.default())
    }
}

fn slot(field: Field) -> usize {
    SLOTS.get(field as usize).copied().map_or(usize::MAX, usize::from)
}

/// The text of a field's value as it is typed and printed: fixed decimals, words, dates. `None` where it has none.
pub fn with_text<T>(field: Field, value: f64, show: impl FnOnce(&str) -> T) -> Option<T> {
    match field.kind() {
        Kind::Number(places, _) => {
            let sign = if field.signed() { Sign::Always } else { Sign::Minus };
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
