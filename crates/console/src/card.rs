//! The theatre card, whole or a part of it. It is planned twice: once for what must be known before it, once to print.

use crate::case::sheet;
use crate::head::{Head, capitals, eye, side};
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::readback;
use crate::table::{self, Row};
use crate::word::same_word;
use ocellus_core::astigmatism::site;
use ocellus_core::caution::{Caution, Code};
use ocellus_core::choice::CylinderPlane;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::{Item, Part, Rows, What};
use ocellus_core::quantity::Site;
use ocellus_core::sign_off::SignOff;
use ocellus_core::sink::Sink;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let wanted = match part(rest, page) {
        Ok(wanted) => wanted,
        Err(()) => return Outcome::Refused,
    };
    let Some(sheet) = sheet(draft, page) else { return Outcome::Told };
    let mut head = Head::of(wanted);
    sheet.plan(&mut head);
    match wanted {
        None => head.print(draft, page),
        Some(_) => head.refusals(page),
    }
    let mut card = Card::after(&head, draft, page);
    sheet.plan(&mut card);
    card.close();
    if !card.any {
        page.line("Nothing stands on the card there.");
    }
    if wanted.is_none() || !head.cautions.all().is_empty() {
        page.end();
        page.heading("Cautions", side(draft));
        head.cautions.tell(draft, page);
    }
    if wanted.is_none() {
        readback::print(&head.answers, draft, None, page);
    }
    Outcome::Told
}

/// The part that was asked for; where there is none of this name, all of them are told.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn part(rest: &str, page: &mut Page) -> Result<Option<Part>, ()> {
    if rest.is_empty() {
        return Ok(None);
    }
    let found = Part::ALL.iter().copied().find(|part| same_word(part.key(), rest));
    if found.is_none() {
        let mut nearest = Nearest::to(rest);
        Part::ALL.iter().for_each(|part| nearest.offer(part.key()));
        nearest.tell(page, "no part of the card");
        page.raw("    accepted: ");
        page.hang();
        parts(page);
    }
    found.map(Some).ok_or(())
}

pub(crate) fn parts(page: &mut Page) {
    for part in Part::ALL {
        page.text(" ");
        page.text(part.key());
    }
    page.end();
}

/// What the line belongs to that is being printed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Block {
    Lines,
    /// The cylinders that a model comes in, on one line.
    Cylinders,
    /// A table with a line a method, by its number.
    Table(usize),
    /// A table that no method leads, by what leads it.
    Rows(What),
}

/// Columns at which values and remarks begin.
const VALUE: usize = 39;
const REMARK: usize = 52;

/// Why a method is not counted in the spread: said under its table.
const WHY_LEFT_OUT: &[Code] = &[Code::Unoptimised, Code::DepartsFromT2, Code::Radicand, Code::Superseded];

/// Prints a card as it is streamed.
struct Card<'a, 'p> {
    head: &'a Head,
    draft: &'a Draft,
    page: &'a mut Page<'p>,
    part: Part,
    headed: bool,
    any: bool,
    block: Block,
    row: Row,
    /// A bit for each method that this part has told of.
    shown: u16,
}

impl<'a, 'p> Card<'a, 'p> {
    fn after(head: &'a Head, draft: &'a Draft, page: &'a mut Page<'p>) -> Card<'a, 'p> {
        let (part, block, row) = (Part::Identity, Block::Lines, Row::default());
        Card { head, draft, page, part, headed: false, any: false, block, row, shown: 0 }
    }

    /// Begins or goes on with a block of lines; the answer is whether this part is printed at all.
    fn open(&mut self, block: Block) -> bool {
        if self.head.wanted.is_some_and(|wanted| wanted != self.part) {
            return false;
        }
        if !self.headed {
            self.heading();
        }
        if self.block != block {
            let after_rows = matches!(self.block, Block::Rows(_));
            self.close();
            if after_rows && matches!(block, Block::Lines | Block::Cylinders) {
                self.page.end();
            }
            self.block = block;
            self.begin();
        }
        true
    }

    fn heading(&mut self) {
        (self.headed, self.any) = (true, true);
        self.page.end();
        self.page.heading(self.part.heading(), side(self.draft));
        if self.part == Part::Lens && !self.head.lens && self.head.cautions.refuse() {
            self.page.paragraph("  ", "No lens is computed: the reason stands under REFUSED.");
        }
        // what to know before anyone reads the tables below
        for code in self.part.first().iter().filter(|code| self.head.cautions.has(**code)) {
            self.page.paragraph("  * ", code.text());
        }
    }

    fn begin(&mut self) {
        match self.block {
            Block::Lines => {}
            Block::Cylinders => {
                self.page.raw("  ");
                self.page.text("label cylinders");
                self.page.to(VALUE);
                self.page.hang();
            }
            Block::Table(index) => {
                self.page.end();
                let columns = self.columns(index);
                if columns.first().is_some_and(is_of_chosen) {
                    self.page.raw("> ");
                    self.page.text("lens chosen, cylinder ");
                    self.page.value(self.draft, Field::LensCylinder);
                    self.page.end();
                }
                table::heading(columns, self.page);
            }
            Block::Rows(leader) => {
                self.page.end();
                if let Some(rows) = Rows::with(leader) {
                    table::led_heading(rows, self.shown, self.page);
                }
            }
        }
    }

    /// Ends what was begun.
    fn close(&mut self) {
        match self.block {
            Block::Lines => {}
            Block::Cylinders => self.page.end(),
            Block::Table(table) => {
                self.row.print(self.columns(table), self.page);
                if table == 0 {
                    self.left_out();
                }
                self.direction(self.columns(table));
            }
            Block::Rows(leader) => {
                if let Some(rows) = Rows::with(leader) {
                    self.row.print_led(rows, self.shown, self.draft, self.page);
                }
            }
        }
        self.block = Block::Lines;
    }

    fn columns(&self, table: usize) -> &'static [table::Column] {
        let plane = self.draft.number(Field::CylinderPlane);
        table::columns(table, plane == Some(CylinderPlane::Cornea.code()))
    }

    /// What a sign means where a table tells of errors.
    fn direction(&mut self, columns: &[table::Column]) {
        if columns.first().is_some_and(|column| column.0 == What::ErrorAl) {
            self.page.paragraph("  ", "+ leaves the eye hyperopic, - myopic.");
        }
        if columns.first().is_some_and(|column| column.0 == What::TurnTo) {
            self.page.raw("  FROM ");
            self.page.hang();
            self.page.value(self.draft, Field::MarkFound);
            self.page.text(" TO the meridian in the first column, the eye seen from the front; both ways end there.");
            self.page.end();
        }
    }

    fn left_out(&mut self) {
        for caution in self.head.cautions.all().iter().filter(|caution| WHY_LEFT_OUT.contains(&caution.code)) {
            self.page.raw("  * ");
            self.page.hang();
            self.page.text(caution.method.map_or("", |method| method.name()));
            self.page.text(": ");
            self.page.line(caution.code.text());
        }
    }

    fn name(&mut self, name: &str) {
        self.page.raw("  ");
        self.page.text(name);
        self.page.to(VALUE);
    }

    fn remark(&mut self, remark: &str) {
        if !remark.is_empty() {
            self.page.to(REMARK);
            self.page.hang();
            self.page.text(remark);
        }
        self.page.end();
    }

    fn row(&mut self, field: Field) {
        self.name(field.what());
        match (field, self.draft.number(field)) {
            (Field::Side, _) => self.page.line(capitals(eye(self.draft))),
            (Field::IncisionSite | Field::OtherSite, Some(degrees)) => {
                self.page.value(self.draft, field);
                let eye = eye(self.draft);
                self.remark(Site::from_deg(degrees).map_or("", |site| site::word(site, eye)));
            }
            (_, number) => {
                self.page.value(self.draft, field);
                self.remark(if self.draft.has(field) { "" } else { "not entered, usual value" });
                if let Some(number) = number.filter(|_| field.spoken()) {
                    self.page.to(VALUE);
                    self.page.spoken(number);
                    self.page.end();
                }
            }
        }
    }

    fn single(&mut self, item: &Item) {
        self.name(item.what.name());
        self.page.item(item);
        if item.what == What::SiteDegrees {
            let eye = eye(self.draft);
            return self.remark(Site::from_deg(item.value).map_or("", |site| site::word(site, eye)));
        }
        self.page.to(REMARK);
        self.page.text("[");
        self.page.text(item.what.mark().word());
        self.page.line("]");
    }

    /// The label whose remnants follow; the one chosen is pointed at.
    fn label(&mut self, item: &Item, table: usize) {
        self.row.print(self.columns(table), self.page);
        let chosen = self.draft.number(Field::LensCylinder) == Some(item.value);
        self.page.raw(if chosen { "> " } else { "  " });
        self.page.text(item.what.name());
        self.page.text(" ");
        self.page.item(item);
        self.page.end();
    }
}

fn is_of_chosen(column: &table::Column) -> bool {
    column.0 == What::ChosenResidual
}

impl Sink for Card<'_, '_> {
    fn part(&mut self, part: Part) {
        self.close();
        (self.part, self.headed, self.shown) = (part, false, 0);
    }

    fn entry(&mut self, field: Field) {
        if field.what() != Field::Cylinder1.what() {
            if self.open(Block::Lines) {
                self.row(field);
            }
        } else {
            let first = self.block != Block::Cylinders;
            if self.open(Block::Cylinders) {
                self.page.text(if first { "" } else { ", " });
                self.page.value(self.draft, field);
            }
        }
    }

    fn item(&mut self, item: Item) {
        let leads = Rows::with(item.what);
        if leads.is_none() {
            self.shown |= item.method.map_or(0, |method| 1 << method as u8);
        }
        if let Some(rows) = leads {
            if self.open(Block::Rows(rows.leader)) {
                self.row.of_rows(rows, &item, self.shown, self.draft, self.page);
            }
            return;
        }
        match item.what {
            What::LabelCylinder => {
                if let Some((table, _)) =
                    table::place(What::Residual).filter(|(table, _)| self.open(Block::Table(*table)))
                {
                    self.label(&item, table);
                }
            }
            _ => match (item.method, table::place(item.what)) {
                (Some(_), Some((table, column))) => {
                    if self.open(Block::Table(table)) {
                        self.row.of_method(self.columns(table), column, &item, self.page);
                    }
                }
                _ => {
                    if self.open(Block::Lines) {
                        self.single(&item);
                    }
                }
            },
        }
    }

    fn caution(&mut self, _caution: Caution) {}

    fn sign_off(&mut self, line: SignOff) {
        if self.open(Block::Lines) {
            self.page.paragraph("  [ ] [ ]  ", line.text());
        }
    }
}
