//! Entries made from a TOML file: a draft, and where each of them stands.

use crate::nearest::nearest;
use crate::problem::{self, Problem, accepted, table};
use crate::toml_file::TomlFile;
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;
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
    pub(crate) places: BTreeMap<EntryId, Place>,
}

impl Entries {
    /// Enters one value, its digits as typed, and checks its range; what is wrong with it otherwise.
    pub(crate) fn enter(
        &mut self,
        file: &TomlFile<'_>,
        entry: EntryId,
        key: &Spanned<DeString<'_>>,
        value: &Spanned<DeValue<'_>>,
    ) -> Option<Problem> {
        let (at, typed) = (key.span().start, file.typed(value.span()));
        match self.take(entry, typed, value.get_ref()) {
            Ok(()) => {
                let place = Place { file: file.name.to_owned(), line: file.line(at), typed: typed.to_owned() };
                self.places.insert(entry, place);
                None
            }
            Err(wrong) => Some(file.problem(at, &entry.key().to_string(), typed, wrong, accepted(entry))),
        }
    }

    fn take(&mut self, entry: EntryId, typed: &str, value: &DeValue<'_>) -> Result<(), String> {
        let quoted = typed.starts_with(['"', '\'']);
        let text = match (entry.kind(), value) {
            (Kind::Number(..), DeValue::String(_)) if quoted => {
                return Err("a number in quotes; write the number without quotes".to_owned());
            }
            (_, DeValue::String(text)) if quoted => text,
            (Kind::Number(..) | Kind::Date, _) => typed,
            (_, DeValue::String(_)) => return Err("a word without quotes".to_owned()),
            _ => return Err("not a word in quotes".to_owned()),
        };
        let entered = self.draft.enter(entry, text);
        let checked = entered.and_then(|()| self.draft.number(entry).map_or(Ok(()), |value| entry.check(value)));
        checked.map_err(|error| problem::wrong(&error))
    }

    /// A problem about an entry, at its place where it has one.
    pub(crate) fn problem(&self, file: &str, entry: EntryId, wrong: String, accepted: String) -> Problem {
        let key = entry.key();
        let place = self.places.get(&entry);
        Problem {
            file: place.map_or(file, |place| &place.file).to_owned(),
            line: place.map(|place| place.line),
            entry: Some(entry),
            typed: place.map_or(key.to_string(), |place| format!("{key} = {}", place.typed)),
            wrong,
            accepted,
        }
    }
}

/// The key that an unknown one probably means, with its table, or else every key that may stand there.
pub(crate) fn did_you_mean(key: &str, here: &[EntryId]) -> String {
    let found = nearest(key, EntryId::all().map(EntryId::key)).and_then(|key| EntryId::of_key(&key.to_string()));
    match found {
        Some(entry) => format!("{}, perhaps {} ({})", table(entry.section()), entry.key(), entry.what()),
        None => here.iter().map(|entry| entry.key().to_string()).collect::<Vec<_>>().join(", "),
    }
}
