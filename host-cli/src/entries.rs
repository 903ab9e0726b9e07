//! Entries made from a TOML file: a draft, and where each of them stands.

use crate::nearest::nearest;
use crate::problem::{self, Problem, accepted};
use crate::toml_file::TomlFile;
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Kind};
use std::collections::BTreeMap;
use toml::Spanned;
use toml::de::{DeString, DeValue};

/// Where an entry stands, and how it was typed.
#[derive(Clone)]
pub(crate) struct Place {
    pub(crate) file: String,
    pub(crate) line: usize,
    pub(crate) typed: String,
}

#[derive(Default)]
pub(crate) struct Entries {
    pub(crate) draft: Draft,
    pub(crate) places: BTreeMap<Field, Place>,
}

impl Entries {
    /// Enters one value, its digits as typed, and checks its range; what is wrong with it otherwise.
    pub(crate) fn enter(
        &mut self,
        file: &TomlFile<'_>,
        field: Field,
        key: &Spanned<DeString<'_>>,
        value: &Spanned<DeValue<'_>>,
    ) -> Option<Problem> {
        let (at, typed) = (key.span().start, file.typed(value.span()));
        match self.take(field, typed, value.get_ref()) {
            Ok(()) => {
                let place = Place { file: file.name.to_owned(), line: file.line(at), typed: typed.to_owned() };
                self.places.insert(field, place);
                None
            }
            Err(wrong) => Some(file.problem(at, field.key(), typed, wrong, accepted(field))),
        }
    }

    fn take(&mut self, field: Field, typed: &str, value: &DeValue<'_>) -> Result<(), String> {
        let quoted = typed.starts_with(['"', '\'']);
        let text = match (field.kind(), value) {
            (Kind::Number(..), DeValue::String(_)) if quoted => {
                return Err("a number in quotes; write the number without quotes".to_owned());
            }
            (_, DeValue::String(text)) if quoted => text,
            (Kind::Number(..) | Kind::Date, _) => typed,
            (_, DeValue::String(_)) => return Err("a word without quotes".to_owned()),
            _ => return Err("not a word in quotes".to_owned()),
        };
        let entered = self.draft.enter(field, text);
        let checked = entered.and_then(|()| self.draft.number(field).map_or(Ok(()), |value| field.check(value)));
        checked.map_err(|error| problem::wrong(&error))
    }

    /// A problem about a field, at its place where it has one.
    pub(crate) fn problem(&self, file: &str, field: Field, wrong: String, accepted: String) -> Problem {
        let key = field.key();
        let place = self.places.get(&field);
        Problem {
            file: place.map_or(file, |place| &place.file).to_owned(),
            line: place.map(|place| place.line),
            field: Some(field),
            typed: place.map_or(key.to_owned(), |place| format!("{key} = {}", place.typed)),
            wrong,
            accepted,
        }
    }
}

/// The key that an unknown one probably means, with its table, or else every key that may stand there.
pub(crate) fn did_you_mean(key: &str, here: &[Field]) -> String {
    let found = nearest(key, Field::ALL.iter().map(|field| field.key())).and_then(Field::from_key);
    match found {
        Some(field) => format!("{}, perhaps {} ({})", problem::table(field.section()), field.key(), field.what()),
        None => here.iter().map(|field| field.key()).collect::<Vec<_>>().join(", "),
    }
}
