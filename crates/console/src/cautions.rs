//! Cautions, kept while a card is printed and told after it: the gravest first, each code once with all it is about.

use crate::page::Page;
use heapless::Vec;
use ocellus_core::caution::{Caution, Code, Severity};
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Kind};
use ocellus_core::source::{Mark, Source};

/// A bit for each code.
#[derive(Clone, Copy)]
pub(crate) struct Codes([u8; Code::ALL.len().div_ceil(8)]);

impl Codes {
    pub(crate) const NONE: Codes = Codes([0; Code::ALL.len().div_ceil(8)]);

    pub(crate) fn put(&mut self, code: Code) {
        if let Some(bits) = self.0.get_mut(code as usize / 8) {
            *bits |= 1 << (code as u8 % 8);
        }
    }

    pub(crate) fn has(&self, code: Code) -> bool {
        self.0.get(code as usize / 8).is_some_and(|bits| bits >> (code as u8 % 8) & 1 != 0)
    }
}

/// The most that are kept, three bytes each; a test shows that no card has more.
const ROOM: usize = 88;

pub(crate) struct Cautions {
    kept: Vec<Caution, ROOM>,
    lost: bool,
}

impl Cautions {
    pub(crate) const fn new() -> Cautions {
        Cautions { kept: Vec::new(), lost: false }
    }

    /// Keeps a caution, once; the one at the head of every card is not among them.
    pub(crate) fn push(&mut self, caution: Caution) {
        if caution.code != Code::NotADevice && !self.kept.contains(&caution) {
            self.lost |= self.kept.push(caution).is_err();
        }
    }

    pub(crate) fn all(&self) -> &[Caution] {
        &self.kept
    }

    pub(crate) fn has(&self, code: Code) -> bool {
        self.kept.iter().any(|caution| caution.code == code)
    }

    /// Each code of one severity, in the order they came.
    pub(crate) fn codes(&self, severity: Severity) -> impl Iterator<Item = Code> + '_ {
        let first = |place: usize, code: Code| self.kept.iter().position(|other| other.code == code) == Some(place);
        let codes = self.kept.iter().map(|caution| caution.code).enumerate();
        codes.filter(move |(place, code)| code.severity() == severity && first(*place, *code)).map(|(_, code)| code)
    }

    pub(crate) fn refuse(&self) -> bool {
        self.codes(Severity::Refuse).next().is_some()
    }

    pub(crate) fn tell(&self, draft: &Draft, page: &mut Page) {
        for severity in [Severity::Refuse, Severity::Caution, Severity::Note] {
            self.codes(severity).for_each(|code| self.paragraph(code, draft, page));
        }
        if self.lost {
            page.paragraph("  CAUTION  ", "There are more cautions than this program can list.");
        }
    }

    fn paragraph(&self, code: Code, draft: &Draft, page: &mut Page) {
        page.raw("  ");
        page.text(code.severity().word());
        page.to(11);
        page.hang();
        let mut any = false;
        for caution in self.kept.iter().filter(|caution| caution.code == code) {
            let comma = if any { ", " } else { "" };
            any |= about(caution, comma, draft, page);
        }
        page.text(if any { ": " } else { "" });
        page.text(code.text());
        page.text(" (");
        origin(code.source(), code.mark(), page);
        page.text(")");
        page.end();
    }
}

/// The method, or the entry with its value; a word speaks for itself in the text of the caution.
fn about(caution: &Caution, comma: &str, draft: &Draft, page: &mut Page) -> bool {
    match (caution.method, caution.field) {
        (Some(method), _) => {
            page.text(comma);
            page.text(method.name());
            true
        }
        (None, Some(field)) if is_told(field, draft) => {
            page.text(comma);
            page.text(field.what());
            page.text(" ");
            page.value(draft, field);
            true
        }
        (None, _) => false,
    }
}

fn is_told(field: Field, draft: &Draft) -> bool {
    let known = draft.number(field).or(field.default()).is_some();
    known && matches!(field.kind(), Kind::Number(..) | Kind::Date)
}

/// How surely a number or a limit is known, and the number of its source, which a desk has in full.
pub(crate) fn origin(source: Source, mark: Mark, page: &mut Page) {
    page.text(mark.word());
    if !matches!(source, Source::Here | Source::NoSource | Source::Entered) {
        page.text(", source");
        page.raw(" ");
        page.count(usize::from(source.number()));
    }
}
