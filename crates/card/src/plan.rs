//! From a case to the theatre card.
//!
//! Everything is streamed to a [`Sink`] as it is computed; nothing is collected, so a device needs no room for a card. Eye and
//! answers are found once; else no part hands anything to the next, so that each gives its stack back before the next.

use crate::case::Case;
use crate::caution::Caution;
use crate::id::EntryId;
use crate::parts;
use crate::parts::cautions::{NOT_A_DEVICE, UNUSED};
use crate::parts::sign_offs::READ_BACK;
use crate::sink::Sink;

impl Case<'_> {
    /// Streams the whole card.
    ///
    /// ```
    /// use ocellus_card::{case::Case, caution::Caution, draft::Draft, entries, item::Item, items, sink::Sink};
    /// struct Ceiling(f64);
    /// impl ocellus_core::working::Steps for Ceiling {}
    /// impl Sink for Ceiling {
    ///     fn item(&mut self, item: Item) { if item.what == items::CEILING { self.0 = item.value; } }
    ///     fn caution(&mut self, _: Caution) {}
    /// }
    /// let mut draft = Draft::default();
    /// draft.enter(entries::ALTITUDE, "1609")?;
    /// let mut ceiling = Ceiling(0.0);
    /// Case::try_from(&draft)?.plan(&mut ceiling);
    /// assert!((ceiling.0 - 608.3).abs() < 0.05);
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn plan(&self, sink: &mut dyn Sink) {
        self.known(|known| {
            parts::plan(known, sink);
            let read = known.entered.read_so_far();
            let unused = |entry: &EntryId| !read.has(entry.place());
            let mut unused = self.draft().made().filter(unused).peekable();
            if unused.peek().is_some() {
                sink.part(parts::unused::table::PART);
                unused.for_each(|entry| sink.entry(entry));
                sink.caution(Caution::general(UNUSED));
            }
            if self.has_eye() {
                sink.part(parts::sign_off::table::PART);
                parts::signs(known, &mut |line| sink.sign_off(line));
                sink.sign_off(READ_BACK);
            }
        });
        sink.caution(Caution::general(NOT_A_DEVICE));
    }
}
