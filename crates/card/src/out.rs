//! What the parts of the card report, on its way to a sink.

use crate::caution::Caution;
use crate::entered::Entered;
use crate::entry_set::EntrySet;
use crate::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use crate::item::Item;
use crate::parts::general::table::cautions::DEFAULT_USED;
use crate::sink::Sink;
use ocellus_core::astigmatism::on_dial;
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::Axis;
use ocellus_core::working::{Step, Steps};

/// Where a part reports what it found. Its functions have few arguments: a device has hundreds of calls to them.
pub(crate) struct Out<'a> {
    entered: &'a Entered<'a>,
    sink: &'a mut dyn Sink,
    shown: EntrySet,
}

impl<'a> Out<'a> {
    pub(crate) fn to(sink: &'a mut dyn Sink, entered: &'a Entered<'a>) -> Out<'a> {
        Out { entered, sink, shown: EntrySet::NONE }
    }

    /// Where everything goes. What is before it is opaque: else the compiler takes it apart at each of hundreds of calls.
    #[inline(always)]
    fn sink(&mut self) -> &mut dyn Sink {
        core::hint::black_box(self).sink
    }

    /// A part begins.
    pub(crate) fn part(&mut self, part: PartId) {
        self.sink.part(part);
    }

    /// A number.
    #[inline(never)]
    pub(crate) fn item(&mut self, what: ItemId, value: f64) {
        self.sink().item(Item { what, method: None, row: 0, value });
    }

    /// A meridian as a dial has it, where there is one.
    #[inline(never)]
    pub(crate) fn meridian(&mut self, what: ItemId, axis: Option<Axis>) {
        if let Some(axis) = axis {
            self.item(what, on_dial(axis));
        }
    }

    /// A number in a row of its table.
    #[inline(never)]
    pub(crate) fn in_row(&mut self, what: ItemId, value: f64, row: usize) {
        self.sink().item(Item { what, method: None, row: row as u8, value });
    }

    /// A number of one method.
    #[inline(never)]
    pub(crate) fn of(&mut self, what: ItemId, value: f64, method: Method) {
        self.sink().item(Item { what, method: Some(method), row: 0, value });
    }

    /// A number of one method, or of none.
    #[inline(never)]
    pub(crate) fn by(&mut self, what: ItemId, value: f64, method: Option<Method>) {
        self.sink().item(Item { what, method, row: 0, value });
    }

    /// A number of one method in a row of its table.
    #[inline(never)]
    pub(crate) fn of_in_row(&mut self, what: ItemId, value: f64, method: Method, row: usize) {
        self.sink().item(Item { what, method: Some(method), row: row as u8, value });
    }

    /// A caution about the whole case.
    #[inline(never)]
    pub(crate) fn caution(&mut self, code: CautionId) {
        self.sink().caution(Caution { code, entry: None, method: None });
    }

    /// A caution about an entry.
    pub(crate) fn about(&mut self, code: CautionId, entry: impl Into<EntryId>) {
        self.about_entry(code, entry.into());
    }

    #[inline(never)]
    fn about_entry(&mut self, code: CautionId, entry: EntryId) {
        self.sink().caution(Caution { code, entry: Some(entry), method: None });
    }

    /// A caution about a method.
    #[inline(never)]
    pub(crate) fn about_method(&mut self, code: CautionId, method: Method) {
        self.sink().caution(Caution { code, entry: None, method: Some(method) });
    }

    /// A caution that was made elsewhere.
    pub(crate) fn pass(&mut self, caution: Caution) {
        self.sink.caution(caution);
    }

    /// An entry, whether it was made or has its usual value.
    #[inline(never)]
    pub(crate) fn entry(&mut self, entry: EntryId) {
        self.shown.put(entry.place(), true);
        self.sink.entry(entry);
    }

    /// Shows the entries that were made, and says of those left to their usual value that they were.
    #[inline(never)]
    pub(crate) fn show(&mut self, entries: &[EntryId]) {
        for &entry in entries {
            if self.entered.has(entry) {
                self.entry(entry);
            } else if self.entered.peek(entry).is_some() {
                self.entry(entry);
                self.about_entry(DEFAULT_USED, entry);
            }
        }
    }

    /// Shows entries that are there to be read by people: they are used by that.
    #[inline(never)]
    pub(crate) fn tell(&mut self, entries: &[EntryId]) {
        self.entered.note(entries);
        self.show(entries);
    }

    /// Shows an entry that is one of a few words; a word that is the usual one needs no remark.
    #[inline(never)]
    pub(crate) fn show_word(&mut self, entry: EntryId) {
        if self.entered.peek(entry).is_some() {
            self.entry(entry);
        }
    }

    /// Whether an entry was shown.
    pub(crate) fn has_shown(&self, entry: EntryId) -> bool {
        self.shown.has(entry.place())
    }

    /// A line to tick.
    pub(crate) fn sign_off(&mut self, line: SignOffId) {
        self.sink.sign_off(line);
    }
}

impl Steps for Out<'_> {
    fn step(&mut self, step: Step) {
        self.sink.step(step);
    }
}
