//! What was entered, as the parts of the card read it: every read is noted, so that nobody has to list what a number rests on.

use crate::date::Date;
use crate::entry::Entry;
use crate::entry_set::EntrySet;
use crate::id::EntryId;
use core::cell::Cell;
use ocellus_core::value::Value;

/// Where entries are kept.
pub(crate) trait Values {
    /// The number, word code or date that was entered.
    fn number(&self, entry: EntryId) -> Option<f64>;

    /// The same, or the value that is used where nothing was entered.
    fn number_or_default(&self, entry: EntryId) -> Option<f64>;

    /// Whether an entry was made.
    fn has(&self, entry: EntryId) -> bool;

    /// Whether a number was entered that is of its kind.
    fn is_valid(&self, entry: EntryId) -> bool;

    /// Notes that entries were read.
    fn note(&self, entries: &[EntryId]);

    /// Which have been read, to be changed.
    fn read(&self) -> &Cell<EntrySet>;
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
        T::admitted(self.read(entry.id())?)
    }

    /// The date that was entered; noted as read.
    pub(crate) fn date(&self, entry: Entry<Date>) -> Option<Date> {
        Date::from_number(self.read(entry.id())?).ok()
    }

    // not inlined: a device would carry a copy for each of a hundred entries
    #[inline(never)]
    fn read(&self, entry: EntryId) -> Option<f64> {
        self.note(&[entry]);
        self.peek(entry)
    }

    /// Whether something was entered; noted as read.
    pub(crate) fn is_made(&self, entry: impl Into<EntryId>) -> bool {
        let entry = entry.into();
        self.note(&[entry]);
        self.has(entry)
    }

    /// What was entered, or the value that is used where nothing was; not noted.
    pub(crate) fn peek(&self, entry: EntryId) -> Option<f64> {
        self.values.number_or_default(entry)
    }

    /// The number that was entered, where it is of its kind; not noted.
    pub(crate) fn valid(&self, entry: EntryId) -> Option<f64> {
        self.values.number(entry).filter(|_| self.values.is_valid(entry))
    }

    /// Whether something was entered; not noted, for what is only shown.
    pub(crate) fn has(&self, entry: EntryId) -> bool {
        self.values.has(entry)
    }

    /// Notes entries as read, for a value that was made of them before.
    pub(crate) fn note(&self, entries: &[EntryId]) {
        self.values.note(entries);
    }

    /// Notes all of these as read.
    pub(crate) fn note_all(&self, more: &EntrySet) {
        let mut read = self.values.read().get();
        read.join(more);
        self.values.read().set(read);
    }

    /// Which entries were read so far.
    pub(crate) fn read_so_far(&self) -> EntrySet {
        self.values.read().get()
    }

    /// Does something, and says what it read instead of noting it.
    pub(crate) fn aside<T>(&self, does: impl FnOnce() -> T) -> (T, EntrySet) {
        let before = self.values.read().replace(EntrySet::NONE);
        let done = does();
        (done, self.values.read().replace(before))
    }
}
