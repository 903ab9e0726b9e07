//! The theatre card, whole or a part of it. It is planned twice: once for what must be known before it, once to print.

use crate::case::case;
use crate::head::{Head, Wanted, capitals, eye, side};
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::{Desk, Page, VALUE};
use crate::readback;
use crate::table::{self, Columns, Row};
use crate::word::is_word;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_card::entry::ShownAs;
use ocellus_card::id::{EntryId, PartId, SignOffId};
use ocellus_card::item::{Form, Item};
use ocellus_card::layout::{Below, ByMethod, Led};
use ocellus_card::readback::Identifiers;
use ocellus_card::sink::Sink;
use ocellus_core::astigmatism::site;
use ocellus_core::quantity::Site;
use ocellus_core::working::Steps;
use ocellus_text::text;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some(wanted) = wanted(rest, page) else { return Outcome::Refused };
    let Some(case) = case(draft, page) else { return Outcome::Answered };
    print(wanted, draft, &|sink| case.plan(sink), None, page);
    Outcome::Answered
}

/// Prints a card on a desk, by whoever streams it; it is streamed twice. The answer is whether something of it is refused.
///
/// ```
/// use ocellus_card::{case::Case, draft::Draft, entries};
/// use ocellus_console::{Desk, Wanted, print_card};
/// let mut draft = Draft::default();
/// draft.enter(entries::ALTITUDE, "1600")?;
/// let (case, mut text) = (Case::try_from(&draft)?, String::new());
/// let desk = Desk { bold: false, source: |source| source.text(), patient: "", signatures: "", identify: "--identify" };
/// print_card(Wanted::All, &draft, &|sink| case.plan(sink), None, &desk, &mut |piece| text.push_str(piece));
/// assert!(text.starts_with("SET-UP OF FLUIDS"));
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn print_card(
    wanted: Wanted,
    draft: &Draft,
    plan: &dyn Fn(&mut dyn Sink),
    identifiers: Option<&Identifiers>,
    desk: &Desk,
    out: &mut dyn FnMut(&str),
) -> bool {
    print(wanted, draft, plan, identifiers, &mut Page::on(desk, out))
}

fn print(
    wanted: Wanted,
    draft: &Draft,
    plan: &dyn Fn(&mut dyn Sink),
    identifiers: Option<&Identifiers>,
    page: &mut Page,
) -> bool {
    let mut head = Head::of(wanted);
    plan(&mut head);
    match wanted {
        Wanted::Part(_) => head.refusals(page),
        Wanted::All | Wanted::Short => head.print(draft, page),
    }
    let mut card = Card::after(&head, draft, page);
    plan(&mut card);
    card.close();
    let (any, signed) = (card.any, card.signed);
    if let Some(desk) = page.desk.filter(|_| signed) {
        page.end();
        page.raw(desk.signatures);
        page.end();
    }
    if !any {
        page.line(text!("Nothing stands on the card there."));
    }
    if wanted == Wanted::All || !head.cautions.is_empty() {
        page.end();
        page.heading("Cautions", side(draft));
        head.cautions.tell(draft, page);
    }
    if !matches!(wanted, Wanted::Part(_)) {
        readback::print(&head.answers, draft, identifiers, page);
    }
    head.cautions.refuse()
}

/// What was asked for; where there is no part of this name, all of them are listed.
// apart, so that its room on the stack is free again while a card is planned
#[inline(never)]
fn wanted(rest: &str, page: &mut Page) -> Option<Wanted> {
    if rest.is_empty() {
        return Some(Wanted::All);
    }
    if is_word("short", rest) {
        return Some(Wanted::Short);
    }
    let found = parts().find(|part| is_word(part.key(), rest));
    if found.is_none() {
        let mut nearest = Nearest::to(rest);
        parts().for_each(|part| nearest.offer(part.key()));
        nearest.tell(page, text!("no part of the card"));
        page.accepted();
        page.text("short");
        names(page);
    }
    found.map(Wanted::Part)
}

/// The parts that have a heading of their own.
fn parts() -> impl Iterator<Item = PartId> {
    PartId::all().filter(|part| !part.heading().is_empty())
}

pub(crate) fn names(page: &mut Page) {
    page.words(parts().map(PartId::key));
}

/// What the line belongs to that is being printed.
#[derive(Clone, Copy)]
enum Block {
    Lines,
    /// Entries of one name, on one line.
    Together,
    /// A table with a line for each method.
    Table(&'static ByMethod),
    /// A table that no method leads.
    Led(&'static Led),
}

impl PartialEq for Block {
    fn eq(&self, other: &Block) -> bool {
        match (self, other) {
            (Block::Lines, Block::Lines) | (Block::Together, Block::Together) => true,
            (Block::Table(one), Block::Table(other)) => core::ptr::eq(*one, *other),
            (Block::Led(one), Block::Led(other)) => core::ptr::eq(*one, *other),
            _ => false,
        }
    }
}

/// The column at which remarks begin.
const REMARK: usize = 52;

/// Prints a card as it is streamed.
struct Card<'a, 'p> {
    head: &'a Head,
    draft: &'a Draft,
    page: &'a mut Page<'p>,
    part: PartId,
    headed: bool,
    any: bool,
    block: Block,
    row: Row,
    /// A bit for each method that this part has shown.
    shown: u16,
    /// Lines to tick were printed.
    signed: bool,
}

impl<'a, 'p> Card<'a, 'p> {
    fn after(head: &'a Head, draft: &'a Draft, page: &'a mut Page<'p>) -> Card<'a, 'p> {
        let (part, block, row) = (PartId(0), Block::Lines, Row::default());
        Card { head, draft, page, part, headed: false, any: false, block, row, shown: 0, signed: false }
    }

    /// Whether something is printed at all: of the part that was asked for, or on the short card.
    fn is_wanted(&self, on_short: impl FnOnce() -> bool) -> bool {
        match self.head.wanted {
            Wanted::All => true,
            Wanted::Part(wanted) => wanted == self.part,
            Wanted::Short => on_short(),
        }
    }

    /// Whether an entry of several parts stands in its own, or has none: a short card shows it once.
    fn is_at_home(&self, entry: EntryId) -> bool {
        entry.part() == self.part || entry.part().heading().is_empty()
    }

    /// Begins or goes on with a block of lines.
    fn open(&mut self, block: Block) {
        if !self.headed {
            self.heading();
        }
        if self.block != block {
            let after_led = matches!(self.block, Block::Led(_));
            self.close();
            if after_led && matches!(block, Block::Lines | Block::Together) {
                self.page.end();
            }
            self.block = block;
            self.begin();
        }
    }

    // apart as `begin` is, so that their room on the stack is free while a line is printed
    #[inline(never)]
    fn heading(&mut self) {
        (self.headed, self.any) = (true, true);
        self.page.end();
        self.page.heading(self.part.heading(), side(self.draft));
        if let Some((_, why)) = self.part.without()
            && !self.head.is_given(self.part)
            && self.head.cautions.refuse()
        {
            self.page.paragraph("  ", why);
        }
        // what to know before anyone reads the tables below
        for code in self.part.first().filter(|code| self.head.cautions.has(**code)) {
            self.page.paragraph("  * ", code.text());
        }
    }

    #[inline(never)]
    fn begin(&mut self) {
        match self.block {
            Block::Lines => {}
            Block::Together => {}
            Block::Table(table) => {
                self.page.end();
                if let Some((title, entry)) = table.title {
                    self.page.raw("> ");
                    self.page.text(*title);
                    self.page.text(" ");
                    self.page.value(self.draft, *entry);
                    self.page.end();
                }
                self.columns(table).heading(self.page);
            }
            Block::Led(led) => {
                self.page.end();
                table::led_heading(led, self.shown, self.page);
            }
        }
    }

    /// Ends what was begun.
    fn close(&mut self) {
        match self.block {
            Block::Lines => {}
            Block::Together => self.page.end(),
            Block::Table(table) => {
                self.row.print(self.columns(table), self.page);
                self.left_out(table);
                self.below(table);
            }
            Block::Led(led) => self.row.print_led(led, self.shown, self.draft, self.page),
        }
        self.block = Block::Lines;
    }

    fn columns(&self, table: &'static ByMethod) -> Columns<'a> {
        Columns::of(table, self.draft, self.head.wanted == Wanted::Short)
    }

    /// What is said below a table.
    fn below(&mut self, table: &ByMethod) {
        match table.below {
            Below::Nothing => {}
            Below::Says(text) => self.page.paragraph("  ", text),
            Below::Around([before, after], entry) => {
                self.page.raw("  ");
                self.page.hang();
                self.page.text(*before);
                self.page.value(self.draft, entry);
                self.page.line(*after);
            }
        }
    }

    /// Why methods are left out of the comparison.
    fn left_out(&mut self, table: &ByMethod) {
        let Some((_, codes)) = table.left_out else { return };
        for code in *codes {
            for method in self.head.cautions.methods(*code) {
                self.page.raw("  * ");
                self.page.hang();
                self.page.text(method.name());
                self.page.text(": ");
                self.page.line(code.text());
            }
        }
    }

    /// Goes on with what is to be known of the value that stands there.
    fn remark(&mut self) {
        self.page.to(REMARK);
        self.page.hang();
    }

    /// A place on the limbus in words.
    fn place(&mut self, degrees: f64) {
        if let Ok(site) = Site::from_deg(degrees) {
            self.remark();
            self.page.text(site::word(site, eye(self.draft)));
        }
        self.page.end();
    }

    fn row(&mut self, entry: EntryId) {
        self.page.name(entry.what());
        let (shown_as, number) = (entry.shown_as(), self.draft.number(entry));
        if shown_as == Some(ShownAs::Capitals) {
            return self.page.line(capitals(eye(self.draft)));
        }
        self.page.value(self.draft, entry);
        if let Some(degrees) = number.filter(|_| shown_as == Some(ShownAs::Site)) {
            return self.place(degrees);
        }
        if !self.draft.has(entry) {
            self.remark();
            self.page.text(text!("not entered, usual value"));
        }
        self.page.end();
        if let Some(number) = number.filter(|_| shown_as == Some(ShownAs::Spoken)) {
            self.page.to(VALUE);
            self.page.spoken(number);
            self.page.end();
        }
    }

    /// An entry beside others of the same name.
    fn beside(&mut self, entry: EntryId) {
        if self.block != Block::Together {
            self.open(Block::Together);
            self.page.raw("  ");
            self.page.text(entry.what());
            self.page.text("s");
            self.page.to(VALUE);
            self.page.hang();
        } else {
            self.page.text(", ");
        }
        self.page.value(self.draft, entry);
    }

    fn single(&mut self, item: &Item) {
        self.page.name(item.what.name());
        self.page.item(item);
        if item.what.form() == Form::Site {
            return self.place(item.value);
        }
        self.page.to(REMARK);
        self.page.text("[");
        self.page.text(item.what.mark().word());
        self.page.line("]");
    }

    /// A number that begins another block of lines in a table; the one that was chosen is pointed at.
    fn leader(&mut self, item: &Item, table: &'static ByMethod, entry: EntryId) {
        self.row.print(self.columns(table), self.page);
        let chosen = self.draft.number(entry) == Some(item.value);
        self.page.raw(if chosen { "> " } else { "  " });
        self.page.text(item.what.name());
        self.page.text(" ");
        self.page.item(item);
        self.page.end();
    }
}

impl Steps for Card<'_, '_> {}

impl Sink for Card<'_, '_> {
    fn part(&mut self, part: PartId) {
        self.close();
        (self.part, self.headed, self.shown) = (part, false, 0);
    }

    fn entry(&mut self, entry: EntryId) {
        if !self.is_wanted(|| entry.is_short() && self.is_at_home(entry)) {
            return;
        }
        if entry.shown_as() == Some(ShownAs::Together) {
            self.beside(entry);
        } else {
            self.open(Block::Lines);
            self.row(entry);
        }
    }

    fn item(&mut self, item: Item) {
        let led = item.what.led();
        if led.is_none() {
            self.shown |= item.method.map_or(0, |method| 1 << method as u8);
        }
        let mut tables = item.what.part().by_method();
        let marks = |table: &ByMethod| table.left_out.is_some_and(|(what, _)| *what == item.what);
        if !self.is_wanted(|| item.what.is_short() || tables.clone().any(marks)) {
            return;
        }
        if let Some(led) = led {
            self.open(Block::Led(led));
            return self.row.of_led(led, &item, self.shown, self.draft, self.page);
        }
        let leads = |table: &&ByMethod| table.leader.is_some_and(|(leader, _)| leader == item.what);
        let has = |table: &&ByMethod| table.columns.iter().any(|column| column.item == item.what);
        if let Some(table) = tables.clone().find(leads) {
            self.open(Block::Table(table));
            if let Some((_, entry)) = table.leader {
                self.leader(&item, table, entry);
            }
        } else if let Some(table) = tables.find(has).filter(|_| item.method.is_some()) {
            self.open(Block::Table(table));
            self.row.of_method(self.columns(table), &item, self.page);
        } else {
            self.open(Block::Lines);
            self.single(&item);
        }
    }

    fn caution(&mut self, _caution: Caution) {}

    fn sign_off(&mut self, line: SignOffId) {
        if self.is_wanted(|| false) {
            self.open(Block::Lines);
            self.page.paragraph("  [ ] [ ]  ", line.text());
            self.signed = true;
        }
    }
}
