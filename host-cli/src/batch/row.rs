//! One row: from its cells to the entries of a case.

use std::fmt;

use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_card::parts::eye::choices::{AcdFrom, AlMethod, EyeState, KKind, PreviousSurgery};
use ocellus_core::astigmatism::site::Side;
use ocellus_core::decimal::{self, Unreadable};

use super::columns::Columns;
use super::line::Line;

/// What is wrong with a row, and with which entry; with none where it is the row itself.
#[derive(Clone, Copy)]
pub struct Fault {
    code: &'static str,
    entry: Option<EntryId>,
}

impl Fault {
    const fn row(code: &'static str) -> Fault {
        Fault { code, entry: None }
    }

    const fn of(wrong: Wrong, entry: EntryId) -> Fault {
        Fault { code: wrong.word(), entry: Some(entry) }
    }
}

impl From<Error> for Fault {
    fn from(error: Error) -> Fault {
        Fault::of(error.wrong, error.entry)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:", self.code)?;
        match self.entry {
            Some(entry) => write!(f, "{}", entry.key()),
            None => f.write_str("row"),
        }
    }
}

/// Short words for an eye, which tables use and a case file does not.
const EYES: &[(&str, Side)] = &[
    ("right", Side::Right),
    ("r", Side::Right),
    ("od", Side::Right),
    ("left", Side::Left),
    ("l", Side::Left),
    ("os", Side::Left),
];

/// The label of a row, and its entries or what is wrong with them.
pub(super) fn read(line: &Line<'_>, columns: &Columns) -> (String, Result<Draft, Fault>) {
    let (cells, damage) = line.cells();
    let id = columns.entries().zip(&cells).find(|(entry, _)| *entry == entries::ID).map_or("", |(_, cell)| cell);
    let read = match damage {
        Some(damage) => Err(Fault::row(damage)),
        None if cells.len() != columns.count() => Err(Fault::row("ragged")),
        None => draft(columns.entries().zip(&cells)),
    };
    (id.to_owned(), read)
}

fn draft<'a>(cells: impl Iterator<Item = (EntryId, &'a str)>) -> Result<Draft, Fault> {
    let mut draft = usual();
    for (entry, text) in cells.map(|(entry, cell)| (entry, cell.trim())) {
        match entry.kind() {
            // a column that is there and says nothing is not known, and is not taken for the usual
            Kind::Choice(_) if text.is_empty() && entry != entries::SIDE => draft.clear(entry),
            _ if text.is_empty() || entry == entries::ID => {}
            _ if entry == entries::SIDE => draft.set(entry, eye(text)?.code()),
            Kind::Number(..) => draft.set(entry, number(entry, text)?),
            _ => draft.enter(entry, text)?,
        }
    }
    // where a depth starts says nothing where there is no depth
    if !draft.has(entries::ACD) {
        draft.clear(entries::ACD_FROM);
    }
    Ok(draft)
}

/// The case of a row. Of several faults the first is reported, what was typed wrong before what is missing.
pub(super) fn case(draft: &Draft) -> Result<Case<'_>, Fault> {
    let mut errors = Vec::new();
    let case = Case::check(draft, &mut |error| errors.push(error));
    let rank = |error: &&Error| match error.wrong {
        Wrong::Incomplete => 1,
        Wrong::Missing => 2,
        Wrong::Disagree | Wrong::NoCornea => 3,
        _ => 0,
    };
    let first = errors.iter().min_by_key(|error| (rank(error), error.entry.part())).copied();
    case.ok_or(first.unwrap_or(Error::of(Wrong::Missing, entries::SIDE.id())).into())
}

/// What a table means where it says nothing; a case file must say it.
fn usual() -> Draft {
    let mut draft = Draft::default();
    for (entry, value) in [
        // no number depends on it
        (entries::SIDE.id(), Side::Right.code()),
        (entries::K_KIND.id(), KKind::Keratometric.code()),
        (entries::ACD_FROM.id(), AcdFrom::Epithelium.code()),
        (entries::AL_METHOD.id(), AlMethod::Optical.code()),
        (entries::EYE_STATE.id(), EyeState::Phakic.code()),
        (entries::PREVIOUS_SURGERY.id(), PreviousSurgery::None.code()),
        (entries::TARGET.id(), 0.0),
    ] {
        draft.set(entry, value);
    }
    draft
}

fn eye(text: &str) -> Result<Side, Fault> {
    let found = EYES.iter().find(|(word, _)| word.eq_ignore_ascii_case(text));
    found.map(|(_, eye)| *eye).ok_or(Fault::of(Wrong::NotAWord, entries::SIDE.id()))
}

/// A plain decimal number of any length, as programs write them: the nearest f64.
fn number(entry: EntryId, text: &str) -> Result<f64, Fault> {
    match decimal::parse(text) {
        Ok(parsed) => Ok(parsed.value),
        // digits and points only, but more digits than a person would type: the standard parser is exact for them too
        Err(Unreadable::TooLong) => text.parse().map_err(|_| Fault::of(Wrong::NotANumber, entry)),
        Err(wrong) => Err(Fault::of(wrong.into(), entry)),
    }
}
