//! From a case to the theatre card.
//!
//! Everything is streamed to a [`Sink`] as it is computed; nothing is collected, so a device needs no room for a card. Eye and
//! answers are found once; else no part hands anything to the next, so that each gives its stack back before the next.

use crate::case::Case;
use crate::caution::Caution;
use crate::id::{EntryId, PartId, SignOffId};
use crate::known::Known;
use crate::names::cautions::{NOT_A_DEVICE, UNUSED};
use crate::names::sign_offs::READ_BACK;
use crate::out::Out;
use crate::part::Stands;
use crate::parts;
use crate::sink::Sink;

/// Shows a part where what it is about is there.
macro_rules! plan_of {
    ($name:ident nothing $known:ident $out:ident) => {};
    ($name:ident entered $known:ident $out:ident) => {
        // of the rows only what is needed: they themselves are not part of a program
        const STANDS: Stands = parts::$name::table::ROWS.stands;
        const ENTRIES: u8 = parts::$name::table::ROWS.entries.len() as u8;
        if shows($known, parts::$name::table::PART, STANDS, ENTRIES) {
            begin($known, parts::$name::table::PART, $out);
            parts::$name::plan($known.entered, $out);
        }
    };
    ($name:ident $kind:ident $known:ident $out:ident) => {
        if let Some(of) = $known.$kind {
            $out.part(parts::$name::table::PART);
            parts::$name::plan(of, $out);
        }
    };
}

/// The lines to tick of a part that has some.
macro_rules! signs_of {
    ($name:ident $kind:ident $known:ident) => { None };
    ($name:ident $kind:ident $known:ident signs $($does:ident)*) => { known_to!($known $kind).map(parts::$name::signs) };
    ($name:ident $kind:ident $known:ident $other:ident $($does:ident)*) => { signs_of!($name $kind $known $($does)*) };
}

macro_rules! plans {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// Streams every part of the card.
        #[inline(never)]
        fn every_part(known: &Known, out: &mut Out) {
            $($(#[$cfg])* { plan_of!($name $kind known out); })*
        }

        /// The lines to tick of every part.
        #[inline(never)]
        fn every_sign_off(known: &Known, then: &mut dyn FnMut(SignOffId)) {
            $($(#[$cfg])* {
                let lines: Option<&[SignOffId]> = signs_of!($name $kind known $($($does)*)?);
                lines.into_iter().flatten().for_each(|line| then(*line));
            })*
        }
    };
}

parts!(plans);

/// Whether a part that needs no eye is shown: beside an eye always; in a set-up where it has an entry, or begins the card.
fn shows(known: &Known, part: PartId, stands: Stands, entries: u8) -> bool {
    let made = || (0..entries).any(|number| known.entered.has(EntryId::new(part, number)));
    known.has_eye() || stands == Stands::Beside || made()
}

/// Begins a part that needs no eye; a card without one begins as a set-up.
fn begin(known: &Known, part: PartId, out: &mut Out) {
    let heads = part == parts::identity::table::PART && !known.has_eye();
    out.part(if heads { parts::set_up::table::PART } else { part });
}

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
            let mut out = Out::to(sink, known.entered);
            every_part(known, &mut out);
            // an entry that decides on a line to tick is used too
            every_sign_off(known, &mut |_| {});
            self.rest(known, &mut out);
            if self.has_eye() {
                out.part(parts::sign_off::table::PART);
                every_sign_off(known, &mut |line| out.sign_off(line));
                out.sign_off(READ_BACK);
            }
        });
        sink.caution(Caution::general(NOT_A_DEVICE));
    }

    /// What two people compare must all stand on the card: the entries that no part has shown, and those that none has read.
    // apart, so that its room on the stack is free while the parts are planned
    #[inline(never)]
    fn rest(&self, known: &Known, out: &mut Out) {
        let (read, mut headed) = (known.entered.read_so_far(), None);
        for (part, is_read) in [(parts::also_used::table::PART, true), (parts::unused::table::PART, false)] {
            for entry in self.draft().made().filter(|entry| read.has(entry.place()) == is_read) {
                if is_read && out.has_shown(entry) {
                    continue;
                }
                if headed.replace(part) != Some(part) {
                    out.part(part);
                }
                out.entry(entry);
            }
        }
        if headed == Some(parts::unused::table::PART) {
            out.caution(UNUSED);
        }
    }
}
