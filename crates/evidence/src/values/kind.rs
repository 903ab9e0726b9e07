//! What a check value is worth.

use std::fmt;

use serde::Deserialize;

/// What a check value is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Printed by the people who did the work, or by a standard.
    Published,
    /// Computed by an independent, widely used library.
    ReferenceLibrary,
    /// Follows from an identity or an independent transcription of the formula.
    Derived,
    /// What everybody says and nobody sources.
    #[serde(alias = "common practice")]
    CommonPractice,
    /// Recalled, the source not at hand.
    Memory,
    /// What this program itself once printed: shows a change, proves nothing.
    Regression,
}

impl Kind {
    /// Every kind, in the order of the report.
    pub const ALL: [Self; 6] =
        [Self::Published, Self::ReferenceLibrary, Self::Derived, Self::CommonPractice, Self::Memory, Self::Regression];

    /// Whether a value of this kind speaks for a function: a program cannot vouch for itself.
    #[must_use]
    pub fn is_evidence(self) -> bool {
        self != Self::Regression
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Published => "published",
            Self::ReferenceLibrary => "reference-library",
            Self::Derived => "derived",
            Self::CommonPractice => "common-practice",
            Self::Memory => "memory",
            Self::Regression => "regression",
        })
    }
}
