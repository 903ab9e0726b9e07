//! How a number came about: the steps of one subject for one case, and the entries that they rest on.

use crate::case::Case;
use crate::catalogue::Subject;
use crate::id::EntryId;
use crate::parts::{self, Known};
use crate::sink::{Nowhere, Sink};

impl Case<'_> {
    /// Streams the entries, cautions and steps of one subject. Where the case lacks what it needs there are cautions, and after
    /// them the entries that were asked for and are not there; the answer says whether there were steps.
    ///
    /// ```
    /// use ocellus_card::{Subject, case::Case, caution::Caution, draft::Draft, entries, item::Item, sink::Sink};
    /// use ocellus_core::working::{Step, Steps};
    /// struct Count(usize);
    /// impl Steps for Count {
    ///     fn step(&mut self, _: Step) { self.0 += 1; }
    /// }
    /// impl Sink for Count {
    ///     fn item(&mut self, _: Item) {}
    ///     fn caution(&mut self, _: Caution) {}
    /// }
    /// let (mut draft, mut steps) = (Draft::default(), Count(0));
    /// draft.enter(entries::ALTITUDE, "1600")?;
    /// assert!(Case::try_from(&draft)?.explain(Subject::of_key("ceiling").unwrap(), &mut steps) && steps.0 > 10);
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn explain(&self, subject: Subject, sink: &mut dyn Sink) -> bool {
        // once to learn what is read, and once to tell
        let (any, read) = self.ask(|known| explained(subject, known, &mut Nowhere));
        let is_there = |entry: &EntryId| self.draft().has(*entry) || entry.default().is_some();
        let read = EntryId::all().filter(|entry| read.has(entry.place()));
        read.clone().filter(is_there).for_each(|entry| sink.entry(entry));
        self.known(|known| explained(subject, known, sink));
        if any != Some(true) {
            read.filter(|entry| !is_there(entry)).for_each(|entry| sink.lacks(entry));
        }
        any == Some(true)
    }
}

fn explained(subject: Subject, known: &Known, sink: &mut dyn Sink) -> Option<bool> {
    match subject {
        #[cfg(feature = "lens")]
        Subject::Method(method) => known.eye.map(|eye| parts::lens::explain_method(method, eye, sink)),
        Subject::Part(part, number) => parts::explain(part, number, known, sink),
    }
}
