//! The tables of the card: a line a method, or a line a label power with a column a method.

use crate::number;
use crate::page::Page;
use ocellus_core::decimal::fixed;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::{Item, Rows, What};
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
        Column(What::ResidualAxis, "its plus", "axis"),
        Column(What::Expected, "expected", "in all"),
        Column(What::ResidualOff5, "turned", "5 deg"),
        Column(What::ResidualOff10, "turned", "10 deg"),
        Column(What::Beyond, "beyond", "the need"),
        Column(What::LensPlaneCylinder, "label at", "the lens"),
    ],
    &[
        Column(What::ChosenResidual, "left by", "lens chosen"),
        Column(What::ChosenResidualAxis, "its plus-", "cyl. axis"),
        Column(What::ChosenCorneaSphere, "sphere", "beside it"),
        Column(What::ChosenExpected, "expected", "in all"),
    ],
    &[
        Column(What::ChosenSphere, "spectacles,", "sphere"),
        Column(What::ChosenCylinder, "minus", "cylinder"),
        Column(What::ChosenAxis, "its", "axis"),
    ],
    &[Column(What::SphereEffect, "cylinder per", "+1 D sphere")],
    &[
        Column(What::TurnTo, "best for", "the mark"),
        Column(What::TurnClock, "clockwise", "by"),
        Column(What::TurnCounter, "or counter-", "clockwise by"),
        Column(What::TurnLeft, "cylinder", "left"),
    ],
    &[
        Column(What::TurnedSphere, "spectacles,", "sphere"),
        Column(What::TurnedCylinder, "minus", "cylinder"),
        Column(What::TurnedAxis, "its", "axis"),
    ],
    &[Column(What::FoundError, "found less", "predicted")],
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

/// The cells of a line that no method leads: one a method, ordinary ones or those for an eye after laser, then those that
/// methods share; where no cell is a method's, they begin at the first.
const METHODS: usize = Method::ORDINARY.len();
const SHARED: usize = 2;
const _: () = assert!(Method::AFTER_LASER.len() <= METHODS && Method::ALL.len() <= 2 * METHODS);

/// The cell of a number in such a line.
fn slot(rows: &Rows, what: What, method: Option<Method>) -> usize {
    match method {
        Some(method) => method as usize % METHODS,
        None => {
            let is_shared = |(_, name): &&(What, &str)| !name.is_empty();
            let first = if rows.cells.iter().all(|cell| is_shared(&cell)) { 0 } else { METHODS };
            first + rows.cells.iter().filter(is_shared).position(|cell| cell.0 == what).unwrap_or(0)
        }
    }
}

/// A line that is being gathered.
#[derive(Default)]
pub(crate) struct Row {
    method: Option<Method>,
    /// What leads a line that no method leads.
    leader: Option<f64>,
    cells: [Option<f64>; METHODS + SHARED],
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

    /// Gathers a number of a line that no method leads, and prints the line before where this begins another.
    pub(crate) fn of_rows(&mut self, rows: &Rows, item: &Item, shown: u16, draft: &Draft, page: &mut Page) {
        if item.what == rows.leader {
            self.print_led(rows, shown, draft, page);
            self.leader = Some(item.value);
        } else {
            self.put(slot(rows, item.what, item.method), item.value);
        }
    }

    /// Prints such a line, if there is one; what was chosen is pointed at.
    pub(crate) fn print_led(&mut self, rows: &Rows, shown: u16, draft: &Draft, page: &mut Page) {
        let row = self.take();
        let Some(leader) = row.leader else { return };
        page.raw(if chosen(rows.leader, leader, draft) { "> " } else { "  " });
        match rows.leader {
            What::BackSource => page.field(Field::BackFrom, leader),
            what => page.number(leader, what.places(), what.signed() && leader != 0.0, what.unit()),
        }
        page.to(led_label(rows));
        each_column(rows, shown, &mut |what, method, name| {
            let value = row.cells.get(slot(rows, what, method)).copied().flatten();
            let text = value.and_then(|value| fixed(value, what.places(), number::sign(what.signed())));
            page.cell(led_width(name), text.as_ref().map_or("-", |text| text.as_str()));
        });
        page.end();
    }
}

/// Whether a line is the one that was chosen.
fn chosen(leader: What, value: f64, draft: &Draft) -> bool {
    let entry = match leader {
        What::LadderPower => Field::LensPower,
        What::BackSource => Field::BackFrom,
        _ => return false,
    };
    draft.number(entry).or(entry.default()) == Some(value)
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

/// The heading of a table that no method leads.
pub(crate) fn led_heading(rows: &Rows, shown: u16, page: &mut Page) {
    page.paragraph("  ", rows.heading);
    page.raw("  ");
    page.text(rows.of);
    page.to(led_label(rows));
    each_column(rows, shown, &mut |_, _, name| page.cell(led_width(name), name));
    page.end();
}

/// The columns before the cells: a number's, or a word's.
fn led_label(rows: &Rows) -> usize {
    if rows.leader == What::BackSource { 20 } else { 11 }
}

fn led_width(name: &str) -> usize {
    (name.len() + 1).max(8)
}

/// Every column of a table that no method leads, with its heading: a number of each method has one a method shown.
fn each_column(rows: &Rows, shown: u16, tell: &mut dyn FnMut(What, Option<Method>, &'static str)) {
    for (what, name) in rows.cells {
        if name.is_empty() {
            let is_shown = |method: &&Method| shown >> **method as u8 & 1 != 0;
            Method::ALL.iter().filter(is_shown).for_each(|method| tell(*what, Some(*method), method.name()));
        } else {
            tell(*what, None, name);
        }
    }
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
