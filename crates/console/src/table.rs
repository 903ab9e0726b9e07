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
        Column(What::BackupExact, "exact power", "in place"),
        Column(What::BackupStep, "change for", "its place"),
        Column(What::ThumbLess, "by thumb", "0.5 D less"),
        Column(What::ThumbMuch, "by thumb", "1.0 D less"),
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
    &[Column(What::AdjustedLength, "length,", "adjusted"), Column(What::AdjustedStep, "step where", "it begins")],
    &[
        Column(What::FirstSet, "1st 2011", "power"),
        Column(What::FirstStep, "its", "step"),
        Column(What::SecondSet, "2nd 2011", "power"),
        Column(What::SecondStep, "its", "step"),
        Column(What::Set2018, "2018", "power"),
        Column(What::Step2018, "its", "step"),
    ],
    &[Column(What::RulePower, "label by", "the rule"), Column(What::RuleRefraction, "refraction", "with it")],
    &[
        Column(What::ErrorAl, "AL 0.1 mm", "too long"),
        Column(What::ErrorK, "K 0.5 D", "too steep"),
        Column(What::ErrorAcd, "ACD 0.1", "too deep"),
        Column(What::ErrorPosition, "lens 0.5", "far back"),
        Column(What::ErrorConstant, "constant", "0.1 high"),
    ],
    &[
        Column(What::ShareAl, "axial", "length"),
        Column(What::ShareK, "K", ""),
        Column(What::ShareAcd, "chamber", "depth"),
        Column(What::SharePosition, "lens", "position"),
        Column(What::ShareLabel, "label", ""),
        Column(What::ShareRefraction, "refr.", "after"),
    ],
    &[
        Column(What::TotalSd, "SD of", "all"),
        Column(What::Low50, "half of", "from"),
        Column(What::High50, "eyes", "to"),
        Column(What::Low95, "95 in", "from"),
        Column(What::High95, "100", "to"),
        Column(What::Chance05, "within", "0.5 D"),
        Column(What::Chance10, "within", "1.0 D"),
    ],
    &[
        Column(What::AllowedPower, "power, half", "allowed for"),
        Column(What::AllowedRefraction, "lens chosen,", "half added"),
    ],
    &[
        Column(What::SecondAt, "lens", "position"),
        Column(What::SecondExact, "power for", "target"),
        Column(What::SecondLeft, "refraction,", "lens chosen"),
    ],
    &[
        Column(What::AsFront, "position is", "front vertex"),
        Column(What::AsCentre, "position is", "centre"),
        Column(What::AsBack, "position is", "back vertex"),
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

/// Columns of text before the cells, of all the cells, and of the widest cell.
const NAME: usize = 16;
const CELLS: usize = 63;
const CELL: usize = 13;

/// The width of a cell where so many stand in a line.
fn width(columns: &[Column]) -> usize {
    (CELLS / columns.len().max(1)).min(CELL)
}

/// The last cell of a ladder's line, after those of the methods: ordinary ones, or those for an eye after laser.
const SPREAD: usize = Method::ORDINARY.len();
const _: () = assert!(Method::AFTER_LASER.len() <= SPREAD && Method::ALL.len() <= 2 * SPREAD);

/// The cell of a method in a ladder's line.
const fn slot(method: Method) -> usize {
    method as usize % SPREAD
}

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
            cell(*what, *value, width(columns), page);
        }
        page.end();
    }

    /// Gathers a number of the ladder, and prints the line before where this begins another.
    pub(crate) fn of_ladder(&mut self, item: &Item, shown: u16, chosen: Option<f64>, page: &mut Page) {
        match (item.what, item.method) {
            (What::LadderPower, _) => {
                self.print_ladder(shown, chosen, page);
                self.label = Some(item.value);
            }
            (_, Some(method)) => self.put(slot(method), item.value),
            _ => self.put(SPREAD, item.value),
        }
    }

    /// Prints a line of the ladder, if there is one; the lens chosen is pointed at.
    pub(crate) fn print_ladder(&mut self, shown: u16, chosen: Option<f64>, page: &mut Page) {
        let row = self.take();
        let Some(label) = row.label else { return };
        page.raw(if chosen == Some(label) { "> " } else { "  " });
        page.number(label, What::LadderPower.places(), true, What::LadderPower.unit());
        page.to(11);
        let mut print = |what: What, place: usize, name: &str| {
            let value = row.cells.get(place).copied().flatten();
            let text = value.and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
            page.cell(ladder_width(name), text.as_ref().map_or("-", |text| text.as_str()));
        };
        columns_of(shown).for_each(|method| print(What::LadderRefraction, slot(method), method.name()));
        print(What::LadderSpread, SPREAD, SPREAD_NAME);
        page.end();
    }
}

/// The heading of a table with a line a method.
pub(crate) fn heading(columns: &[Column], page: &mut Page) {
    page.raw("  method");
    page.to(NAME);
    columns.iter().for_each(|column| page.cell(width(columns), column.1));
    page.end();
    page.to(NAME);
    columns.iter().for_each(|column| page.cell(width(columns), column.2));
    page.end();
}

pub(crate) fn ladder_heading(shown: u16, page: &mut Page) {
    page.paragraph("  ", "Refraction at the spectacles with each label power, D:");
    page.raw("  label");
    page.to(11);
    columns_of(shown).map(Method::name).chain([SPREAD_NAME]).for_each(|name| page.cell(ladder_width(name), name));
    page.end();
}

const SPREAD_NAME: &str = "spread";

fn ladder_width(name: &str) -> usize {
    (name.len() + 1).max(8)
}

/// The methods of a ladder, a bit each.
fn columns_of(shown: u16) -> impl Iterator<Item = Method> {
    Method::ALL.iter().copied().filter(move |method| shown >> *method as u8 & 1 != 0)
}

/// A number with its unit at the right end of its cell.
fn cell(what: What, value: Option<f64>, width: usize, page: &mut Page) {
    let text = value.and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
    let unit = number::unit(what.unit());
    match (value, &text) {
        (Some(value), _) if number::is_answer(what) => page.cell(width, number::answer(value)),
        (_, Some(text)) if unit.is_empty() => page.cell(width, text.as_str()),
        (_, Some(text)) => {
            page.cell(width.saturating_sub(1 + unit.len()), text.as_str());
            page.raw(" ");
            page.raw(unit);
        }
        (_, None) => page.cell(width, "-"),
    }
}
