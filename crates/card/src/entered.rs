//! What was entered, as the parts of the card read it: every read is noted, so that nobody has to list what a number rests on.

use crate::date::Date;
use crate::draft::Draft;
use crate::entry::Entry;
use crate::entry_set::{EntrySet, Noted};
use crate::id::EntryId;
use ocellus_core::value::Value;

/// What was entered and found valid, and which of it was read.
pub struct Entered<'a> {
    draft: &'a Draft,
    read: Noted,
}

impl<'a> Entered<'a> {
    pub(crate) fn of(draft: &'a Draft) -> Entered<'a> {
        Entered { draft, read: Noted::default() }
    }

    /// What was entered, or the value that is used where nothing was; noted as read.
    pub(crate) fn get<T: Value>(&self, entry: Entry<T>) -> Option<T> {
        T::admitted(self.read(entry.id())?)
    }

    /// The date that was entered; noted as read.
    pub(crate) fn date(&self, entry: Entry<Date>) -> Option<Date> {
        Date::from_number(self.read(entry.id())?).ok()
    }

    /// The same as a number, of whatever kind it is.
    // not inlined: a device would carry a copy for each of a hundred entries
    #[inline(never)]
    pub(crate) fn read(&self, entry: EntryId) -> Option<f64> {
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
    #[inline(never)]
    pub(crate) fn peek(&self, entry: EntryId) -> Option<f64> {
        self.draft.number(entry).or_else(|| entry.default())
    }

    /// The number that was entered, where it is of its kind; not noted.
    pub(crate) fn valid(&self, entry: EntryId) -> Option<f64> {
        self.draft.number(entry).filter(|value| entry.check(*value).is_ok())
    }

    /// Whether something was entered; not noted, for what is only shown.
    #[inline(never)]
    pub(crate) fn has(&self, entry: EntryId) -> bool {
        self.draft.has(entry)
    }

    /// Notes entries as read, for a value that was made of them before.
    #[inline(never)]
    pub(crate) fn note(&self, entries: &[EntryId]) {
        entries.iter().for_each(|entry| self.read.put(entry.place()));
    }

    /// Notes all of these as read.
    pub(crate) fn note_all(&self, more: &EntrySet) {
        self.read.join(more);
    }

    /// Which entries were read so far.
    pub(crate) fn read_so_far(&self) -> EntrySet {
        self.read.get()
    }

    /// Does something, and says what it read instead of noting it.
    pub(crate) fn aside<T>(&self, does: impl FnOnce() -> T) -> (T, EntrySet) {
        let before = self.read.replace(&EntrySet::NONE);
        let done = does();
        (done, self.read.replace(&before))
    }
}
