//! What any part may need: yes and no, ranges, and how entries are shown.

pub mod table;

use crate::caution::Caution;
use crate::entered::Entered;
use crate::id::EntryId;
use crate::sink::Sink;
use table::cautions;

ocellus_core::choices! {
    /// No or yes.
    YesNo {
        /// No.
        No "no",
        /// Yes.
        Yes "yes",
    }
}

/// Shows the entries that were made, and says of those left to their usual value that they were.
#[inline(never)]
pub(crate) fn show(entered: &Entered, sink: &mut dyn Sink, entries: &[EntryId]) {
    for &entry in entries {
        if entered.has(entry) {
            sink.entry(entry);
        } else if entered.peek(entry).is_some() {
            sink.entry(entry);
            sink.caution(Caution::about(cautions::DEFAULT_USED, entry));
        }
    }
}

/// Shows entries that are there to be read by people: they are used by that.
pub(crate) fn tell(entered: &Entered, sink: &mut dyn Sink, entries: &[EntryId]) {
    entered.note(entries);
    show(entered, sink, entries);
}

/// Shows an entry that is one of a few words; a word that is the usual one speaks for itself.
pub(crate) fn show_word(entered: &Entered, sink: &mut dyn Sink, entry: EntryId) {
    if entered.peek(entry).is_some() {
        sink.entry(entry);
    }
}

/// The least and greatest of some numbers; `None` when there are none.
pub(crate) fn range(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.fold(None, |range, value| Some(widened(range, value)))
}

/// A range, with one more number in it.
pub(crate) fn widened(range: Option<(f64, f64)>, value: f64) -> (f64, f64) {
    let (least, most) = range.unwrap_or((value, value));
    (f64::min(least, value), f64::max(most, value))
}
