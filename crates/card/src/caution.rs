//! What to know before trusting or using a number: stable codes, a severity, one text each.

use crate::id::{CautionId, EntryId};
use ocellus_core::lens::method::Method;
use ocellus_core::source::{Mark, Source};

/// How much a caution weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// No number is given.
    Refuse,
    /// Look again before using the number.
    Caution,
    /// Good to know.
    Note,
}

impl Severity {
    /// Every one, the most serious first.
    pub const ALL: [Severity; 3] = [Severity::Refuse, Severity::Caution, Severity::Note];

    /// The word printed before the text.
    ///
    /// ```
    /// assert_eq!(ocellus_card::caution::Severity::Refuse.word(), "REFUSED");
    /// ```
    pub const fn word(self) -> &'static str {
        match self {
            Severity::Refuse => "REFUSED",
            Severity::Caution => "CAUTION",
            Severity::Note => "note",
        }
    }
}

/// One caution, with the entry or the method it is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// Which.
    pub code: CautionId,
    /// The entry it is about.
    pub entry: Option<EntryId>,
    /// The method it is about.
    pub method: Option<Method>,
}

impl Caution {
    /// About an entry.
    pub(crate) fn about(code: CautionId, entry: impl Into<EntryId>) -> Caution {
        Caution { code, entry: Some(entry.into()), method: None }
    }

    /// About a method.
    #[cfg_attr(not(feature = "lens"), expect(dead_code))]
    pub(crate) const fn of(code: CautionId, method: Method) -> Caution {
        Caution { code, entry: None, method: Some(method) }
    }

    /// About the whole case.
    pub(crate) const fn general(code: CautionId) -> Caution {
        Caution { code, entry: None, method: None }
    }
}

/// A caution as it stands in the table of its part.
#[derive(Debug)]
pub struct CautionRow {
    /// The code as it is printed and kept.
    pub word: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// The text a person reads.
    pub text: &'static str,
    /// Where its limit or fact comes from.
    pub source: Source,
    /// How sure that is.
    pub mark: Mark,
}

/// `NAME "code" Severity "text", Source Mark;`
macro_rules! cautions {
    ($($id:ident $word:literal $severity:ident $text:literal, $source:ident $mark:ident;)*) => {
        /// What to know first.
        #[allow(non_camel_case_types, clippy::upper_case_acronyms, dead_code)]
        pub mod cautions {
            enum Number { $($id,)* }
            $(#[doc = $text] pub const $id: $crate::id::CautionId = $crate::id::CautionId::new(super::PART, Number::$id as u8);)*
        }

        pub(crate) const CAUTIONS: &[$crate::caution::CautionRow] = &[$($crate::caution::CautionRow {
            word: $word, severity: $crate::caution::Severity::$severity, text: $text,
            source: ocellus_core::source::Source::$source, mark: ocellus_core::source::Mark::$mark,
        },)*];
    };
}
