//! The columns of a table of eyes: which there are, and which a header names.

use ocellus_core::field::Field;

use super::line::Line;
use crate::nearest::nearest;
use crate::problem::Problem;

/// Every column that is read, under its field's key.
const KNOWN: &[Field] = &[
    Field::Id,
    Field::Side,
    Field::AxialLength,
    Field::K1,
    Field::K1Axis,
    Field::K2,
    Field::K2Axis,
    Field::Index,
    Field::Acd,
    Field::LensThickness,
    Field::Target,
    Field::AConstant,
    Field::SurgeonFactor,
    Field::Pacd,
    Field::HaigisA0,
    Field::HaigisA1,
    Field::HaigisA2,
    Field::LensPower,
    Field::KKind,
    Field::AcdFrom,
    Field::AlMethod,
    Field::EyeState,
    Field::PreviousSurgery,
    Field::Vertex,
];

/// The columns of one table, in its order.
pub(super) struct Columns(Vec<Field>);

impl Columns {
    /// Reads a header, or says what is wrong with it.
    pub(super) fn parse(header: &Line<'_>) -> Result<Columns, Problem> {
        let (cells, damage) = header.cells();
        if let Some(damage) = damage {
            return Err(problem(&header.text, &format!("{damage}: not a header"), &all()));
        }
        let mut fields = Vec::new();
        for name in cells.iter().map(str::trim) {
            let Some(&field) = KNOWN.iter().find(|field| field.key() == name) else {
                let nearest = nearest(name, KNOWN.iter().map(|field| field.key()));
                let accepted = nearest.map_or_else(all, |key| format!("{key}, which is the nearest known"));
                return Err(problem(name, &format!("column {}: not a known column", fields.len() + 1), &accepted));
            };
            if fields.contains(&field) {
                return Err(problem(name, &format!("column {}: given twice", fields.len() + 1), "each column once"));
            }
            fields.push(field);
        }
        Ok(Columns(fields))
    }

    /// How many cells a row has.
    pub(super) fn count(&self) -> usize {
        self.0.len()
    }

    /// The fields, in the order of the cells.
    pub(super) fn fields(&self) -> impl Iterator<Item = Field> + '_ {
        self.0.iter().copied()
    }
}

/// Every known column, as a header would name them.
pub(super) fn all() -> String {
    KNOWN.iter().map(|field| field.key()).collect::<Vec<_>>().join(",")
}

/// What is wrong with a header.
pub(super) fn problem(typed: &str, wrong: &str, accepted: &str) -> Problem {
    Problem { typed: typed.to_owned(), ..Problem::of_file("", wrong, accepted) }
}
