//! The columns of a table of eyes: which there are, and which a header names.

use ocellus_card::entries;
use ocellus_card::id::EntryId;

use super::line::Line;
use crate::nearest::nearest;
use crate::problem::Problem;

/// Every column that is read, under its entry's key.
const KNOWN: &[EntryId] = &[
    entries::ID.id(),
    entries::SIDE.id(),
    entries::AXIAL_LENGTH.id(),
    entries::K1.id(),
    entries::K1_AXIS.id(),
    entries::K2.id(),
    entries::K2_AXIS.id(),
    entries::INDEX.id(),
    entries::ACD.id(),
    entries::LENS_THICKNESS.id(),
    entries::TARGET.id(),
    entries::A_CONSTANT.id(),
    entries::SURGEON_FACTOR.id(),
    entries::PACD.id(),
    entries::HAIGIS_A0.id(),
    entries::HAIGIS_A1.id(),
    entries::HAIGIS_A2.id(),
    entries::LENS_POWER.id(),
    entries::K_KIND.id(),
    entries::ACD_FROM.id(),
    entries::AL_METHOD.id(),
    entries::EYE_STATE.id(),
    entries::PREVIOUS_SURGERY.id(),
    entries::VERTEX.id(),
];

/// The columns of one table, in its order.
pub(super) struct Columns(Vec<EntryId>);

impl Columns {
    /// Reads a header, or says what is wrong with it.
    pub(super) fn parse(header: &Line<'_>) -> Result<Columns, Problem> {
        let (cells, damage) = header.cells();
        if let Some(damage) = damage {
            return Err(problem(&header.text, &format!("{damage}: not a header"), &all()));
        }
        let mut entries = Vec::new();
        for name in cells.iter().map(str::trim) {
            let Some(&entry) = KNOWN.iter().find(|entry| entry.key().is(name)) else {
                let nearest = nearest(name, KNOWN.iter().map(|entry| entry.key()));
                let accepted = nearest.map_or_else(all, |key| format!("{key}, which is the nearest known"));
                return Err(problem(name, &format!("column {}: not a known column", entries.len() + 1), &accepted));
            };
            if entries.contains(&entry) {
                return Err(problem(name, &format!("column {}: given twice", entries.len() + 1), "each column once"));
            }
            entries.push(entry);
        }
        Ok(Columns(entries))
    }

    /// How many cells a row has.
    pub(super) fn count(&self) -> usize {
        self.0.len()
    }

    /// The entries, in the order of the cells.
    pub(super) fn entries(&self) -> impl Iterator<Item = EntryId> + '_ {
        self.0.iter().copied()
    }
}

/// Every known column, as a header would name them.
pub(super) fn all() -> String {
    KNOWN.iter().map(|entry| entry.key().to_string()).collect::<Vec<_>>().join(",")
}

/// What is wrong with a header.
pub(super) fn problem(typed: &str, wrong: &str, accepted: &str) -> Problem {
    Problem { typed: typed.to_owned(), ..Problem::of_file("", wrong, accepted) }
}
