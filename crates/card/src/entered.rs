//! What was entered, as the parts of the card read it: every read is noted, so that nobody has to list what a number rests on.

use crate::date::Date;
use crate::entry::Entry;
use crate::id::EntryId;
use crate::name::Name;
use ocellus_core::value::Value;

/// Where entries are kept.
pub(crate) trait Values {
    /// The number, word code or date that was entered.
    fn number(&self, entry: EntryId) -> Option<f64>;

    /// The name that was entered.
    fn name(&self, entry: EntryId) -> Option<&Name>;

    /// Whether it has a value where none is entered.
    fn has_default(&self, entry: EntryId) -> bool;

    /// Notes that it was read.
    fn note(&self, entry: EntryId);
}

/// What was entered and found valid.
#[derive(Clone, Copy)]
pub struct Entered<'a> {
    values: &'a dyn Values,
}

impl<'a> Entered<'a> {
    pub(crate) fn of(values: &'a dyn Values) -> Entered<'a> {
        Entered { values }
    }

    /// What was entered, or the value that is used where nothing was; noted as read.
    pub(crate) fn get<T: Value>(&self, entry: Entry<T>) -> Option<T> {
        T::admitted(self.read(entry.id(), entry.default())?)
    }

    /// The date that was entered; noted as read.
    pub(crate) fn date(&self, entry: Entry<Date>) -> Option<Date> {
        Date::from_number(self.read(entry.id(), None)?).ok()
    }

    /// Whether something was entered; noted as read.
    pub(crate) fn is_made(&self, entry: impl Into<EntryId>) -> bool {
        let entry = entry.into();
        self.values.note(entry);
        self.has(entry)
    }

    // not inlined: a device would carry a copy for each of a hundred entries
    #[inline(never)]
    fn read(&self, entry: EntryId, default: Option<f64>) -> Option<f64> {
        self.values.note(entry);
        self.peek(entry, default)
    }

    /// What was entered, or the value that is used where nothing was; not noted.
    pub(crate) fn peek(&self, entry: EntryId, default: Option<f64>) -> Option<f64> {
        self.values.number(entry).or(default)
    }

    /// Notes entries as read, for a value that was made of them before.
    #[inline(never)]
    pub(crate) fn note(&self, entries: &[EntryId]) {
        entries.iter().for_each(|entry| self.values.note(*entry));
    }

    /// Whether something was entered; not noted, for what is only shown.
    pub(crate) fn has(&self, entry: EntryId) -> bool {
        self.values.number(entry).is_some() || self.values.name(entry).is_some()
    }

    /// Whether it has a value where none is entered.
    pub(crate) fn has_default(&self, entry: EntryId) -> bool {
        self.values.has_default(entry)
    }
}
