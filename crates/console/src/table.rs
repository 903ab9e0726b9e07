//! The tables of the card: a line for each method, or a line for each of something else with a column for each method.

use crate::number;
use crate::page::Page;
use heapless::Vec;
use ocellus_card::draft::Draft;
use ocellus_card::id::ItemId;
use ocellus_card::item::{Form, Item};
use ocellus_card::layout::{ByMethod, Column, Led};
use ocellus_core::lens::method::Method;
use ocellus_text::Text;

/// Columns of text before the cells, of all the cells, and of the widest cell.
const NAME: usize = 16;
const CELLS: usize = 63;
const CELL: usize = 13;

/// The columns of a table that are printed: all, or those of the short card.
#[derive(Clone, Copy)]
pub(crate) struct Columns<'a> {
    table: &'static ByMethod,
    draft: &'a Draft,
    is_short: bool,
}

impl<'a> Columns<'a> {
    pub(crate) fn of(table: &'static ByMethod, draft: &'a Draft, is_short: bool) -> Columns<'a> {
        Columns { table, draft, is_short }
    }

    fn each(self) -> impl Iterator<Item = &'static Column> + use<'a> {
        let Columns { draft, is_short, table } = self;
        let asked = move |column: &&Column| {
            column.only.is_none_or(|(entry, value)| draft.number(entry) == Some(f64::from(value)))
        };
        table.columns.iter().filter(asked).filter(move |column| !is_short || column.item.is_short())
    }

    /// The width of a cell where so many stand in a line.
    fn width(self) -> usize {
        (CELLS / self.each().count().max(1)).min(CELL)
    }

    /// The heading of the table, on two lines.
    pub(crate) fn heading(self, page: &mut Page) {
        page.raw("  method");
        for line in 0..2 {
            page.to(NAME);
            for column in self.each() {
                let rest = column.heading.bytes().skip_while(|byte| line == 1 && *byte != b'|').skip(line);
                page.cell_by(self.width(), rest.take_while(|byte| *byte != b'|'));
            }
            page.end();
        }
    }
}

/// The most numbers of one line.
const ROOM: usize = 10;

/// A line that is being gathered.
#[derive(Default)]
pub(crate) struct Row {
    method: Option<Method>,
    /// What leads a line that no method leads.
    leader: Option<f64>,
    cells: Vec<(ItemId, Option<Method>, f64), ROOM>,
}

impl Row {
    fn put(&mut self, item: &Item) {
        // a number that has no room would be missing: a test shows that no line has more
        let _ = self.cells.push((item.what, item.method, item.value));
    }

    fn get(&self, what: ItemId, method: Option<Method>) -> Option<f64> {
        self.cells.iter().find(|(of, by, _)| *of == what && *by == method).map(|(.., value)| *value)
    }

    /// Forgets the line, once it is printed.
    fn clear(&mut self) {
        (self.method, self.leader) = (None, None);
        self.cells.clear();
    }

    /// Gathers a number of one method, and prints the line before where this begins another.
    pub(crate) fn of_method(&mut self, columns: Columns, item: &Item, page: &mut Page) {
        if self.method != item.method {
            self.print(columns, page);
            self.method = item.method;
        }
        self.put(item);
    }

    /// Prints the line of a method, if there is one.
    pub(crate) fn print(&mut self, columns: Columns, page: &mut Page) {
        let Some(method) = self.method else { return self.clear() };
        page.raw("  ");
        page.text(method.name());
        let left_out = columns.table.left_out.map(|(what, _)| self.get(*what, Some(method)));
        if left_out.flatten() == Some(0.0) {
            page.text(" *");
        }
        page.to(NAME);
        columns.each().for_each(|column| cell(column.item, self.get(column.item, Some(method)), columns.width(), page));
        page.end();
        self.clear();
    }

    /// Gathers a number of a line that no method leads, and prints the line before where this begins another.
    pub(crate) fn of_led(&mut self, led: &Led, item: &Item, shown: u16, draft: &Draft, page: &mut Page) {
        if item.what == led.leader {
            self.print_led(led, shown, draft, page);
            self.leader = Some(item.value);
        } else {
            self.put(item);
        }
    }

    /// Prints such a line, if there is one; what was chosen is pointed at.
    pub(crate) fn print_led(&mut self, led: &Led, shown: u16, draft: &Draft, page: &mut Page) {
        let Some(leader) = self.leader else { return self.clear() };
        let chosen = led.chosen.and_then(|entry| draft.number(entry).or(entry.default()));
        page.raw(if chosen == Some(leader) { "> " } else { "  " });
        let what = led.leader;
        match what.form() {
            Form::Number => page.number(leader, what.places(), what.signed() && leader != 0.0, what.unit()),
            _ => page.item(&Item { what, method: None, row: 0, value: leader }),
        }
        page.to(led_label(led));
        each_column(led, shown, &mut |what, method, name| {
            cell_of_number(what, self.get(what, method), led_width(name), page);
        });
        page.end();
        self.clear();
    }
}

/// The heading of a table that no method leads.
pub(crate) fn led_heading(led: &Led, shown: u16, page: &mut Page) {
    page.paragraph("  ", led.heading);
    page.raw("  ");
    page.text(led.of);
    page.to(led_label(led));
    each_column(led, shown, &mut |_, _, name| match name {
        Name::Folded(text) => page.cell_of(led_width(name), text),
        Name::Plain(text) => page.cell(led_width(name), text),
    });
    page.end();
}

/// The columns before the cells: a number's, or a word's.
fn led_label(led: &Led) -> usize {
    if matches!(led.leader.form(), Form::Number) { 11 } else { 20 }
}

/// The heading of a column: its own, or the method's.
#[derive(Clone, Copy)]
enum Name {
    Folded(Text),
    Plain(&'static str),
}

fn led_width(name: Name) -> usize {
    let length = match name {
        Name::Folded(text) => text.len(),
        Name::Plain(text) => text.len(),
    };
    (length + 1).max(8)
}

/// Every column of a table that no method leads, with its heading: a number of each method has one for each method shown.
fn each_column(led: &Led, shown: u16, tell: &mut dyn FnMut(ItemId, Option<Method>, Name)) {
    for (what, name) in led.cells {
        if name.is_empty() {
            let is_shown = |method: &&Method| shown >> **method as u8 & 1 != 0;
            let methods = Method::ALL.iter().filter(is_shown);
            methods.for_each(|method| tell(*what, Some(*method), Name::Plain(method.name())));
        } else {
            tell(*what, None, Name::Folded(*name));
        }
    }
}

/// A number without its unit at the right end of its cell.
fn cell_of_number(what: ItemId, value: Option<f64>, width: usize, page: &mut Page) {
    let text = value.and_then(|value| number::of(&Item { what, method: None, row: 0, value }));
    page.cell(width, text.as_ref().map_or("-", |text| text.as_str()));
}

/// A number with its unit at the right end of its cell.
fn cell(what: ItemId, value: Option<f64>, width: usize, page: &mut Page) {
    let unit = number::unit(what.unit());
    match value.and_then(|value| number::word(what.form(), value)) {
        Some(word) => page.cell(width, word),
        None if unit.is_empty() || value.is_none() => cell_of_number(what, value, width, page),
        None => {
            cell_of_number(what, value, width.saturating_sub(1 + unit.len()), page);
            page.raw(" ");
            page.raw(unit);
        }
    }
}
