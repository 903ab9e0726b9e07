//! Cautions, kept while a card is printed and shown after it: the most serious first, each code once with all it is about.

use crate::page::Page;
use heapless::Vec;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::cautions::NOT_A_DEVICE;
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::id::{CautionId, EntryId};
use ocellus_core::lens::method::Method;
use ocellus_core::source::{Mark, Source};
use ocellus_text::text;

/// A bit for each code.
#[derive(Clone, Copy)]
pub(crate) struct Codes([u8; CautionId::COUNT.div_ceil(8)]);

impl Codes {
    pub(crate) const NONE: Codes = Codes([0; CautionId::COUNT.div_ceil(8)]);

    pub(crate) fn put(&mut self, code: CautionId) {
        if let Some(bits) = self.0.get_mut(code.place() / 8) {
            *bits |= 1 << (code.place() % 8);
        }
    }

    pub(crate) fn has(&self, code: CautionId) -> bool {
        self.0.get(code.place() / 8).is_some_and(|bits| bits >> (code.place() % 8) & 1 != 0)
    }
}

/// The most that are kept, three bytes each; a test shows that no card has more.
const ROOM: usize = 88;

/// A caution in few bytes: the lower ones of its code's place; the place of its entry plus 1, or 0 for none; and in one byte the
/// same of its method, above it the rest of the code's place.
#[derive(Clone, Copy, PartialEq, Eq)]
struct PackedCaution {
    code: u8,
    entry: u8,
    method: u8,
}

const _: () = assert!(CautionId::COUNT <= 1 << 12 && EntryId::COUNT < 1 << 8 && Method::ALL.len() < 1 << 4);

impl PackedCaution {
    fn of(caution: &Caution) -> PackedCaution {
        let code = caution.code.place();
        let method = caution.method.map_or(0, |method| method as u8 + 1);
        PackedCaution {
            code: code as u8,
            entry: caution.entry.map_or(0, |entry| entry.place() as u8 + 1),
            method: (code >> 8 << 4) as u8 | method,
        }
    }

    fn code(self) -> CautionId {
        CautionId::at(usize::from(self.method >> 4) << 8 | usize::from(self.code)).unwrap_or(NOT_A_DEVICE)
    }

    fn entry(self) -> Option<EntryId> {
        EntryId::at(usize::from(self.entry).checked_sub(1)?)
    }

    fn method(self) -> Option<Method> {
        Method::ALL.get(usize::from(self.method & 15).checked_sub(1)?).copied()
    }
}

pub(crate) struct Cautions {
    kept: Vec<PackedCaution, ROOM>,
    lost: bool,
}

impl Cautions {
    pub(crate) const fn new() -> Cautions {
        Cautions { kept: Vec::new(), lost: false }
    }

    /// Keeps a caution, once; the one at the head of every card is not among them.
    pub(crate) fn push(&mut self, caution: Caution) {
        let kept = PackedCaution::of(&caution);
        if caution.code != NOT_A_DEVICE && !self.kept.contains(&kept) {
            self.lost |= self.kept.push(kept).is_err();
        }
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.kept.is_empty()
    }

    pub(crate) fn has(&self, code: CautionId) -> bool {
        self.kept.iter().any(|kept| usize::from(kept.code) == code.place())
    }

    /// Of which methods a caution is shown.
    pub(crate) fn methods(&self, code: CautionId) -> impl Iterator<Item = Method> + '_ {
        let of = move |kept: &&PackedCaution| usize::from(kept.code) == code.place();
        self.kept.iter().filter(of).filter_map(|kept| kept.method())
    }

    /// Each code once, in the order they came.
    fn codes(&self) -> impl Iterator<Item = CautionId> + '_ {
        let is_first = |place: usize, kept: &PackedCaution| {
            self.kept.iter().position(|other| other.code == kept.code) == Some(place)
        };
        let firsts = self.kept.iter().enumerate().filter(move |(place, kept)| is_first(*place, kept));
        firsts.map(|(_, kept)| kept.code())
    }

    /// Each code of one severity, in the order they came.
    pub(crate) fn of(&self, severity: Severity) -> impl Iterator<Item = CautionId> + '_ {
        self.codes().filter(move |code| code.severity() == severity)
    }

    /// Whether no missing entry would bring what was asked for.
    pub(crate) fn end_it(&self) -> bool {
        self.codes().any(CautionId::ends_it)
    }

    pub(crate) fn refuse(&self) -> bool {
        self.of(Severity::Refuse).next().is_some()
    }

    pub(crate) fn tell(&self, draft: &Draft, page: &mut Page) {
        for severity in Severity::ALL {
            self.of(severity).for_each(|code| self.paragraph(code, draft, page));
        }
        if self.lost {
            page.paragraph("  CAUTION  ", text!("There are more cautions than this program can list."));
        }
    }

    fn paragraph(&self, code: CautionId, draft: &Draft, page: &mut Page) {
        page.raw("  ");
        page.text(code.severity().word());
        page.to(11);
        page.hang();
        let mut any = false;
        for kept in self.kept.iter().filter(|kept| usize::from(kept.code) == code.place()) {
            let comma = if any { ", " } else { "" };
            any |= about(*kept, comma, draft, page);
        }
        page.text(if any { ": " } else { "" });
        page.text(code.text());
        page.text(" (");
        origin(code.source(), code.mark(), page);
        page.text(")");
        page.end();
    }
}

/// The method, or the entry with its value; a word is left out, since the text of the caution says it.
fn about(kept: PackedCaution, comma: &str, draft: &Draft, page: &mut Page) -> bool {
    match (kept.method(), kept.entry()) {
        (Some(method), _) => {
            page.text(comma);
            page.text(method.name());
            true
        }
        (None, Some(entry)) if has_number(entry, draft) => {
            page.text(comma);
            page.text(entry.what());
            page.text(" ");
            page.value(draft, entry);
            true
        }
        (None, _) => false,
    }
}

fn has_number(entry: EntryId, draft: &Draft) -> bool {
    let known = draft.number(entry).or(entry.default()).is_some();
    known && matches!(entry.kind(), Kind::Number(..) | Kind::Date)
}

/// How surely a number or a limit is known, and its source: on a desk in full, else by its number, said once where the two say
/// the same.
pub(crate) fn origin(source: Source, mark: Mark, page: &mut Page) {
    let is_named = !matches!(source, Source::Here | Source::NoSource | Source::Entered);
    match page.desk.filter(|_| is_named) {
        Some(desk) => {
            page.text((desk.source)(source));
            page.text("; ");
            page.text(mark.word());
        }
        None => {
            page.text(mark.word());
            if is_named {
                page.text(", source");
                page.raw(" ");
                page.count(usize::from(source.number()));
            }
        }
    }
}
