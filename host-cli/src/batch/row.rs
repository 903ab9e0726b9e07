//! One row: from its cells to the entries of a case.

use std::fmt;

use ocellus_core::choice::{AcdFrom, AlMethod, Eye, EyeState, KKind, PreviousSurgery};
use ocellus_core::decimal;
use ocellus_core::draft::Draft;
use ocellus_core::error::{Code, Error};
use ocellus_core::field::{Field, Kind};

use super::columns::Columns;
use super::line::Line;

/// What is wrong with a row, and where.
#[derive(Clone, Copy)]
pub struct Wrong {
    code: &'static str,
    place: &'static str,
}

impl Wrong {
    const fn row(code: &'static str) -> Wrong {
        Wrong { code, place: "row" }
    }
}

impl From<Error> for Wrong {
    fn from(error: Error) -> Wrong {
        Wrong { code: error.code.word(), place: error.field.map_or("row", Field::key) }
    }
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.code, self.place)
    }
}

/// Short words for an eye, which tables use and a case file does not.
const EYES: &[(&str, Eye)] = &[
    ("right", Eye::Right),
    ("r", Eye::Right),
    ("od", Eye::Right),
    ("left", Eye::Left),
    ("l", Eye::Left),
    ("os", Eye::Left),
];

/// The label of a row, and its entries or what is wrong with them.
pub(super) fn read(line: &Line<'_>, columns: &Columns) -> (String, Result<Draft, Wrong>) {
    let (cells, damage) = line.cells();
    let id = columns.fields().zip(&cells).find(|(field, _)| *field == Field::Id).map_or("", |(_, cell)| cell);
    let read = match damage {
        Some(damage) => Err(Wrong::row(damage)),
        None if cells.len() != columns.count() => Err(Wrong::row("ragged")),
        None => entries(columns.fields().zip(&cells)),
    };
    (id.to_owned(), read)
}

fn entries<'a>(cells: impl Iterator<Item = (Field, &'a str)>) -> Result<Draft, Wrong> {
    let mut draft = usual();
    for (field, text) in cells.map(|(field, cell)| (field, cell.trim())) {
        match (field, field.kind()) {
            // a column that is there and says nothing is not known, and is not taken for the usual
            (_, Kind::Choice(_)) if text.is_empty() && field != Field::Side => draft.clear(field),
            _ if text.is_empty() => {}
            (Field::Id, _) => {}
            (Field::Side, _) => draft.set(field, eye(text)?.code()),
            (_, Kind::Number(..)) => draft.set(field, number(field, text)?),
            _ => draft.enter(field, text)?,
        }
    }
    // where a depth starts says nothing where there is no depth
    if !draft.has(Field::Acd) {
        draft.clear(Field::AcdFrom);
    }
    Ok(draft)
}

/// What a table means where it says nothing; a case file must say it.
fn usual() -> Draft {
    let mut draft = Draft::default();
    for (field, value) in [
        // no number depends on it
        (Field::Side, Eye::Right.code()),
        (Field::KKind, KKind::Keratometric.code()),
        (Field::AcdFrom, AcdFrom::Epithelium.code()),
        (Field::AlMethod, AlMethod::Optical.code()),
        (Field::EyeState, EyeState::Phakic.code()),
        (Field::PreviousSurgery, PreviousSurgery::None.code()),
        (Field::Target, 0.0),
    ] {
        draft.set(field, value);
    }
    draft
}

fn eye(text: &str) -> Result<Eye, Wrong> {
    let found = EYES.iter().find(|(word, _)| word.eq_ignore_ascii_case(text));
    found.map(|(_, eye)| *eye).ok_or(Wrong { code: Code::NotAWord.word(), place: Field::Side.key() })
}

/// A plain decimal number of any length, as programs write them: the nearest f64.
fn number(field: Field, text: &str) -> Result<f64, Wrong> {
    let wrong = |code: Code| Wrong { code: code.word(), place: field.key() };
    match decimal::parse(text) {
        Ok(parsed) => Ok(parsed.value),
        // digits and points only, but more digits than a person would type: the standard parser is exact for them too
        Err(Code::TooLong) => text.parse().map_err(|_| wrong(Code::NotANumber)),
        Err(code) => Err(wrong(code)),
    }
}
