//! Cautions, by number and by code.

use crate::caution::{CautionRow, Severity};
use crate::id::CautionId;
use ocellus_core::source::{Mark, Source};
use ocellus_text::Text;

rows!(CautionId: CautionRow = cautions, CautionRow {
    word: "", severity: Severity::Note, text: "", source: Source::Here, mark: Mark::Chosen,
});

texts! {
    codes = |row| row.word;
    bodies = |row| row.text;
}

column!(SEVERITIES: Severity = |row| row.severity);
column!(SOURCES: (Source, Mark) = |row| (row.source, row.mark));

impl CautionId {
    /// The caution with this code.
    ///
    /// ```
    /// use ocellus_card::{cautions, id::CautionId};
    /// assert_eq!(CautionId::of_word("default_used"), Some(cautions::DEFAULT_USED));
    /// ```
    pub fn of_word(word: &str) -> Option<CautionId> {
        CautionId::all().find(|caution| caution.word().is(word))
    }

    /// The code as it is printed and kept.
    ///
    /// ```
    /// assert!(ocellus_card::cautions::DEFAULT_USED.word() == "default_used");
    /// ```
    pub fn word(self) -> Text {
        codes(self.place())
    }

    /// The text a person reads.
    ///
    /// ```
    /// assert!(ocellus_card::cautions::DEFAULT_USED.text() == "Not entered; the usual value is used.");
    /// ```
    pub fn text(self) -> Text {
        bodies(self.place())
    }

    /// How much it weighs.
    ///
    /// ```
    /// use ocellus_card::{caution::Severity, cautions};
    /// assert_eq!(cautions::DEFAULT_USED.severity(), Severity::Note);
    /// ```
    pub fn severity(self) -> Severity {
        SEVERITIES.get(self.place()).copied().unwrap_or(Severity::Note)
    }

    /// Where its limit or fact comes from.
    pub fn source(self) -> Source {
        SOURCES.get(self.place()).map_or(Source::Here, |(source, _)| *source)
    }

    /// How sure that is.
    pub fn mark(self) -> Mark {
        SOURCES.get(self.place()).map_or(Mark::Chosen, |(_, mark)| *mark)
    }
}
