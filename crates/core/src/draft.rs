//! A case while it is being typed: every field, entered or not. Readers fill it and do nothing else.

use crate::date::Date;
use crate::decimal::{self, Sign};
use crate::error::{Code, Error};
use crate::field::{Field, FieldSet, Kind};
use crate::name::Name;

const NAMES: &[Field] = &[Field::Id, Field::LensModel, Field::BackupModel];

/// Every field of a case, each entered or not.
///
/// Numbers are kept in the unit of their key, words as their code, dates as YYYYMMDD, so that one draft is one small
/// block of memory on a device.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    values: [f64; Field::COUNT],
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
    pub const EMPTY: Draft = Draft { values: [0.0; Field::COUNT], known: FieldSet::NONE, names: [None; NAMES.len()] };

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

    /// Sets a field's number, word code or date: for tables of cases, whose numbers may have any number of decimals.
    pub fn set(&mut self, field: Field, value: f64) {
        if let Some(slot) = self.values.get_mut(field as usize) {
            *slot = value;
            self.known.put(field, true);
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
        if let Some(slot) = self.values.get_mut(field as usize) {
            *slot = 0.0;
        }
        self.known.put(field, false);
        if let Some(slot) = NAMES.iter().position(|f| *f == field).and_then(|place| self.names.get_mut(place)) {
            *slot = None;
        }
    }

    /// The number, word code or date entered into a field.
    pub fn number(&self, field: Field) -> Option<f64> {
        self.values.get(field as usize).copied().filter(|_| self.known.has(field))
    }

    /// The name entered into a field.
    pub fn name(&self, field: Field) -> Option<&Name> {
        let place = NAMES.iter().position(|f| *f == field)?;
        self.names.get(place)?.as_ref()
    }

    /// Whether anything was entered into a field.
    pub fn has(&self, field: Field) -> bool {
        self.number(field).is_some() || self.name(field).is_some()
    }

    /// The number, word code or date entered into a field, or its default.
    // not inlined: a device would carry a copy for each of a hundred entries
    #[inline(never)]
    pub(crate) fn number_or_default(&self, field: Field) -> Option<f64> {
        self.number(field).or(field.default())
    }
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
