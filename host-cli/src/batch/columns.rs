//! The columns of a table of eyes: which there are, and which a header names.

use ocellus_core::field::Field;

use super::line::Line;

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
    pub(super) fn parse(header: Line<'_>) -> Result<Columns, String> {
        let (cells, damage) = header.cells();
        if let Some(damage) = damage {
            return Err(format!("{damage}; the first line names the columns"));
        }
        let mut fields = Vec::new();
        for (place, name) in cells.iter().map(str::trim).enumerate() {
            let Some(&field) = KNOWN.iter().find(|field| field.key() == name) else {
                return Err(format!("column {} is {name:?}, which is not known; {}", place + 1, known_near(name)));
            };
            if fields.contains(&field) {
                return Err(format!("column {} is {name:?} for the second time", place + 1));
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

/// The nearest known column where one is near, else all of them.
fn known_near(name: &str) -> String {
    let keys = || KNOWN.iter().map(|field| field.key());
    let nearest = keys().map(|key| (distance(key, name), key)).min();
    match nearest {
        Some((far, key)) if far <= key.len() / 2 => format!("nearest: {key:?}"),
        _ => format!("known, separated by commas: {}", keys().collect::<Vec<_>>().join(", ")),
    }
}

/// How many characters must be put in, taken out or changed to turn one word into another.
fn distance(from: &str, to: &str) -> usize {
    let mut costs: Vec<usize> = (0..=to.chars().count()).collect();
    for (row, a) in from.chars().enumerate() {
        let mut diagonal = std::mem::replace(&mut costs[0], row + 1);
        for (column, b) in to.chars().enumerate() {
            let changed = diagonal + usize::from(a != b);
            diagonal = costs[column + 1];
            costs[column + 1] = changed.min(diagonal + 1).min(costs[column] + 1);
        }
    }
    costs[to.chars().count()]
}
