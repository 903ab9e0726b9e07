//! The tables of the card: a line a method, or a line a label power with a column a method.

use crate::number;
use crate::page::Page;
use ocellus_core::decimal::fixed;
use ocellus_core::item::{Item, What};
use ocellus_core::lens::Method;

/// A column: what stands in it, and its heading on two lines.
pub(crate) struct Column(pub(crate) What, &'static str, &'static str);

/// The tables with a line a method.
const TABLES: &[&[Column]] = &[
    &[
        Column(What::ExactPower, "power for", "target"),
        Column(What::LensPosition, "lens", "position"),
        Column(What::Guided, "named by", "NICE NG77"),
        Column(What::Compared, "counts in", "the spread"),
        Column(What::Refraction, "refraction,", "lens chosen"),
    ],
    &[
        Column(What::BackupBag, "exact power", "in the bag"),
        Column(What::BackupExact, "exact power", "in its place"),
        Column(What::BackupStep, "change for", "its place"),
    ],
    &[Column(What::NeededCylinder, "cylinder", "at the lens"), Column(What::CylinderRatio, "over the", "cornea's")],
    &[
        Column(What::Residual, "left at", "cornea"),
        Column(What::ResidualAxis, "its plus-", "cyl. axis"),
        Column(What::ResidualOff5, "left, turned", "5 deg"),
        Column(What::ResidualOff10, "left, turned", "10 deg"),
        Column(What::LensPlaneCylinder, "the label", "at the lens"),
    ],
    &[
        Column(What::ChosenResidual, "left by", "lens chosen"),
        Column(What::ChosenResidualAxis, "its plus-", "cyl. axis"),
    ],
];

/// The table in which a number of one method stands, and its column.
pub(crate) fn place(what: What) -> Option<(usize, usize)> {
    let column = |columns: &&[Column]| columns.iter().position(|column| column.0 == what);
    TABLES.iter().enumerate().find_map(|(table, columns)| Some((table, column(columns)?)))
}

/// The columns of a table; a label at the lens needs no second column for the lens.
pub(crate) fn columns(table: usize, at_cornea: bool) -> &'static [Column] {
    match TABLES.get(table).copied().unwrap_or(&[]) {
        [but_last @ .., Column(What::LensPlaneCylinder, ..)] if !at_cornea => but_last,
        all => all,
    }
}

/// Columns of text before the cells, and a cell.
const NAME: usize = 14;
const CELL: usize = 13;

/// The last cell of a ladder's line.
const SPREAD: usize = Method::ALL.len();

/// A line that is being gathered.
#[derive(Default)]
pub(crate) struct Row {
    method: Option<Method>,
    /// The label power of a ladder's line.
    label: Option<f64>,
    cells: [Option<f64>; SPREAD + 1],
}

impl Row {
    fn put(&mut self, place: usize, value: f64) {
        if let Some(cell) = self.cells.get_mut(place) {
            *cell = Some(value);
        }
    }

    fn take(&mut self) -> Row {
        core::mem::take(self)
    }

    /// Gathers a number of one method, and prints the line before where this begins another.
    pub(crate) fn of_method(&mut self, columns: &[Column], column: usize, item: &Item, page: &mut Page) {
        if self.method != item.method {
            self.print(columns, page);
            self.method = item.method;
        }
        self.put(column, item.value);
    }

    /// Prints the line of a method, if there is one.
    pub(crate) fn print(&mut self, columns: &[Column], page: &mut Page) {
        let row = self.take();
        let Some(method) = row.method else { return };
        page.raw("  ");
        page.text(method.name());
        let left_out = |(column, cell): (&Column, &Option<f64>)| column.0 == What::Compared && *cell == Some(0.0);
        if columns.iter().zip(&row.cells).any(left_out) {
            page.text(" *");
        }
        page.to(NAME);
        for (Column(what, ..), value) in columns.iter().zip(&row.cells) {
            cell(*what, *value, page);
        }
        page.end();
    }

    /// Gathers a number of the ladder, and prints the line before where this begins another.
    pub(crate) fn of_ladder(&mut self, item: &Item, shown: u8, chosen: Option<f64>, page: &mut Page) {
        match (item.what, item.method) {
            (What::LadderPower, _) => {
                self.print_ladder(shown, chosen, page);
                self.label = Some(item.value);
            }
            (_, Some(method)) => self.put(method as usize, item.value),
            _ => self.put(SPREAD, item.value),
        }
    }

    /// Prints a line of the ladder, if there is one; the lens chosen is pointed at.
    pub(crate) fn print_ladder(&mut self, shown: u8, chosen: Option<f64>, page: &mut Page) {
        let row = self.take();
        let Some(label) = row.label else { return };
        page.raw(if chosen == Some(label) { "> " } else { "  " });
        page.number(label, What::LadderPower.places(), true, What::LadderPower.unit());
        page.to(11);
        for (place, value) in row.cells.iter().enumerate() {
            let what = if place == SPREAD { What::LadderSpread } else { What::LadderRefraction };
            let text = value.and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
            if is_shown(place, shown) {
                page.cell(ladder_width(place), text.as_ref().map_or("-", |text| text.as_str()));
            }
        }
        page.end();
    }
}

/// The heading of a table with a line a method.
pub(crate) fn heading(columns: &[Column], page: &mut Page) {
    page.raw("  method");
    page.to(NAME);
    columns.iter().for_each(|column| page.cell(CELL, column.1));
    page.end();
    page.to(NAME);
    columns.iter().for_each(|column| page.cell(CELL, column.2));
    page.end();
}

pub(crate) fn ladder_heading(shown: u8, page: &mut Page) {
    page.paragraph("  ", "Refraction at the spectacles with each label power, D:");
    page.raw("  label");
    page.to(11);
    for place in 0..=SPREAD {
        if is_shown(place, shown) {
            page.cell(ladder_width(place), ladder_name(place));
        }
    }
    page.end();
}

fn ladder_name(place: usize) -> &'static str {
    Method::ALL.get(place).map_or("spread", |method| method.name())
}

fn ladder_width(place: usize) -> usize {
    (ladder_name(place).len() + 1).max(8)
}

fn is_shown(place: usize, shown: u8) -> bool {
    place == SPREAD || shown & 1 << place != 0
}

/// A number with its unit at the right end of its cell.
fn cell(what: What, value: Option<f64>, page: &mut Page) {
    let text = value.and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
    let unit = number::unit(what.unit());
    match (value, &text) {
        (Some(value), _) if number::is_answer(what) => page.cell(CELL, number::answer(value)),
        (_, Some(text)) if unit.is_empty() => page.cell(CELL, text.as_str()),
        (_, Some(text)) => {
            page.cell(CELL - 1 - unit.len(), text.as_str());
            page.raw(" ");
            page.raw(unit);
        }
        (_, None) => page.cell(CELL, "-"),
    }
}
