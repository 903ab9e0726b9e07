//! How a number came about: the steps of one subject for one case, and the entries that they rest on.

use crate::case::Case;
use crate::catalogue::Subject;
use crate::id::{EntryId, PartId};
use crate::known::Known;
use crate::out::Out;
use crate::parts;
use crate::sink::{Nowhere, Sink};

/// The steps of a part that has some; whether there were any, where what it is about is there.
macro_rules! explain_of {
    ($name:ident $kind:ident $known:ident $number:ident $out:ident) => { None };
    ($name:ident $kind:ident $known:ident $number:ident $out:ident explains $($does:ident)*) => {
        known_to!($known $kind).map(|of| parts::$name::explain($number, of, $out))
    };
    ($name:ident $kind:ident $known:ident $number:ident $out:ident $other:ident $($does:ident)*) => {
        explain_of!($name $kind $known $number $out $($does)*)
    };
}

macro_rules! explains {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// Streams cautions and steps of one thing that a part can explain; whether they go to the end, and nothing where
        /// what it is about is not there.
        #[inline(never)]
        fn of_part(part: PartId, number: u8, known: &Known, out: &mut Out) -> Option<bool> {
            $($(#[$cfg])* {
                if part == parts::$name::table::PART {
                    return explain_of!($name $kind known number out $($($does)*)?);
                }
            })*
            None
        }
    };
}

parts!(explains);

impl Case<'_> {
    /// Streams the entries, cautions and steps of one subject. Where the case lacks what it needs there are cautions, the
    /// steps as far as they go, and after them the entries that were asked for and are not there; the answer says whether the
    /// steps go to the end.
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
        // once to learn what is read, and once to report
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
    let mut out = Out::to(sink, known.entered);
    match subject {
        #[cfg(feature = "lens")]
        Subject::Method(method) => known.lens.map(|lens| parts::lens::explain_method(method, lens, &mut out)),
        Subject::Part(part, number) => of_part(part, number, known, &mut out),
    }
}
