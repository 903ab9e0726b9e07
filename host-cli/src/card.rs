//! The theatre card as text. Nothing is computed here: numbers are rounded once, and set where they are looked for.

use crate::text::{self, WIDTH, paragraph};
use ocellus_core::astigmatism::site;
use ocellus_core::bench::Bench;
use ocellus_core::caution::{Caution, Code, Severity};
use ocellus_core::choice::{BackFrom, Eye};
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::{Item, Part, Rows, What};
use ocellus_core::lens::Method;
use ocellus_core::quantity::Site;
use ocellus_core::readback::{Answers, Identifiers};
use ocellus_core::sheet::Sheet;
use ocellus_core::sign_off::SignOff;
use ocellus_core::sink::Sink;
use ocellus_core::source::Source;
use std::io::{self, Write};

/// Prints the card of a case; the answer is whether anything was refused.
pub fn print(sheet: &Sheet, identifiers: Option<&Identifiers>, bold: bool, out: &mut dyn Write) -> io::Result<bool> {
    let mut card = Card::default();
    sheet.plan(&mut card);
    card.print(sheet.draft(), identifiers, bold, out)
}

impl Card {
    /// Prints what was streamed, whoever computed it; the answer is whether anything was refused.
    pub fn print(
        &self,
        draft: &Draft,
        identifiers: Option<&Identifiers>,
        bold: bool,
        out: &mut dyn Write,
    ) -> io::Result<bool> {
        let mut page = Page { draft, bold, out };
        page.head(self)?;
        for (part, lines) in &self.parts {
            page.part(*part, lines, &self.cautions)?;
        }
        page.cautions(&self.cautions)?;
        page.read_back(&self.answers, identifiers)?;
        Ok(self.cautions.iter().any(|c| c.code.severity() == Severity::Refuse))
    }
}

/// What was streamed, kept in its order.
#[derive(Default)]
pub struct Card {
    parts: Vec<(Part, Vec<Line>)>,
    cautions: Vec<Caution>,
    answers: Answers,
}

enum Line {
    Entry(Field),
    Item(Item),
    SignOff(SignOff),
}

impl Card {
    /// The read-back of what was streamed; none where an entry has more decimals than can be typed.
    pub fn code(&self, draft: &Draft) -> Option<String> {
        self.answers.code(draft, None).ok().map(|code| code.as_str().to_owned())
    }

    fn push(&mut self, line: Line) {
        if let Some((_, lines)) = self.parts.last_mut() {
            lines.push(line);
        }
    }
}

impl Sink for Card {
    fn part(&mut self, part: Part) {
        self.parts.push((part, Vec::new()));
    }

    fn entry(&mut self, field: Field) {
        self.push(Line::Entry(field));
    }

    fn item(&mut self, item: Item) {
        self.answers.item(item);
        self.push(Line::Item(item));
    }

    fn caution(&mut self, caution: Caution) {
        self.answers.caution(caution);
        self.cautions.push(caution);
    }

    fn sign_off(&mut self, line: SignOff) {
        self.push(Line::SignOff(line));
    }
}

/// Columns of the text before the numbers.
const LABEL: usize = 30;
const NAME: usize = 36;

struct Page<'a> {
    draft: &'a Draft,
    bold: bool,
    out: &'a mut dyn Write,
}

impl Page<'_> {
    fn strong(&self, text: &str) -> String {
        if self.bold { format!("\x1b[1m{text}\x1b[0m") } else { text.to_owned() }
    }

    /// The side in capitals; a set-up of fluids may have none.
    fn side(&self) -> Option<&'static str> {
        let is = |eye: Eye| !Bench::alone(self.draft) && self.draft.number(Field::Side) == Some(eye.code());
        [(Eye::Right, "RIGHT"), (Eye::Left, "LEFT")].into_iter().find(|(eye, _)| is(*eye)).map(|(_, word)| word)
    }

    /// A heading that says which eye it is of.
    fn of_side(&self, heading: &str) -> String {
        self.side().map_or(heading.to_owned(), |side| format!("{heading} ({side})"))
    }

    fn head(&mut self, card: &Card) -> io::Result<()> {
        let title = self.side().map_or("SET-UP OF FLUIDS, WITHOUT AN EYE".to_owned(), |side| format!("{side} EYE"));
        let title = self.strong(&title);
        let label = format!("{title}   theatre card   {}", text::value(self.draft, Field::Id));
        writeln!(self.out, "{}", label.trim_end())?;
        if self.side().is_some() {
            writeln!(self.out, "patient ______________________________   born ______________   or a sticker")?;
        }
        paragraph(self.out, "", Code::NotADevice.text())?;
        let codes = distinct(&card.cautions);
        let of = |severity| codes.iter().filter(|code| code.severity() == severity).count();
        let (refused, cautions) = (of(Severity::Refuse), of(Severity::Caution));
        if refused > 0 {
            let text = self.strong("REFUSED: part of this card has no numbers.");
            writeln!(self.out, "{text}")?;
            for code in codes.iter().filter(|code| code.severity() == Severity::Refuse) {
                paragraph(self.out, "  ", code.text())?;
            }
        }
        match cautions {
            0 => {}
            1 => writeln!(self.out, "One caution below: read it before using a number.")?,
            _ => writeln!(self.out, "{cautions} cautions below: read them before using a number.")?,
        }
        paragraph(
            self.out,
            "",
            "In brackets, how well a number's origin is known: read in its source; two independent roads to it; from \
             memory; common practice; chosen here. What the methods give is from memory; `ocellus explain METHOD CASE` \
             shows every step with its source.",
        )
    }

    /// One part: entries and single numbers a line each, numbers of several methods as a table.
    fn part(&mut self, part: Part, lines: &[Line], cautions: &[Caution]) -> io::Result<()> {
        if lines.is_empty() {
            return Ok(());
        }
        let heading = self.of_side(part.heading());
        let rule = "-".repeat(WIDTH - 1 - heading.chars().count());
        let heading = self.strong(&heading);
        writeln!(self.out, "\n{heading} {rule}")?;
        let table: Vec<&Item> = lines.iter().filter_map(in_table).collect();
        let refused = cautions.iter().any(|c| c.code.severity() == Severity::Refuse);
        if part == Part::Lens && table.is_empty() && refused {
            paragraph(self.out, "  ", "No lens is computed: the reason stands under REFUSED.")?;
        }
        // what to know before anyone reads the table below
        for code in part.first().iter().filter(|code| cautions.iter().any(|caution| caution.code == **code)) {
            paragraph(self.out, "  * ", code.text())?;
        }
        let mut table_done = false;
        let cylinders: Vec<String> = lines.iter().filter_map(|line| self.label_cylinder(line)).collect();
        let mut cylinders = Some(cylinders.join(", ")).filter(|text| !text.is_empty());
        for (place, line) in lines.iter().enumerate() {
            match line {
                // the cylinders a model comes in are one line
                entry if self.label_cylinder(entry).is_some() => {
                    if let Some(all) = cylinders.take() {
                        paragraph(self.out, "  label cylinders                      ", &all)?;
                    }
                }
                Line::Entry(field) => self.entry(*field)?,
                Line::SignOff(line) => paragraph(self.out, "  [ ] [ ]  ", line.text())?,
                item if in_table(item).is_some() => {
                    if !table_done {
                        self.table(&table, cautions)?;
                        table_done = true;
                        let goes_on = lines.iter().skip(place).any(|line| in_table(line).is_none());
                        if goes_on && table.iter().any(|item| Rows::with(item.what).is_some()) {
                            writeln!(self.out)?;
                        }
                    }
                }
                Line::Item(item) => {
                    let what = item.what;
                    let value = text::number(item.value, what.places(), what.signed(), what.unit());
                    let remark = match what {
                        What::SiteDegrees => self.site_word(item.value).to_owned(),
                        _ => format!("[{}]", what.mark().word()),
                    };
                    self.row(what.name(), &value, &remark)?;
                }
            }
        }
        if part == Part::SignOff {
            writeln!(self.out, "\n  first person ______________________   second person ______________________")?;
        }
        Ok(())
    }

    fn label_cylinder(&self, line: &Line) -> Option<String> {
        match line {
            Line::Entry(field) if field.what() == Field::Cylinder1.what() => Some(text::value(self.draft, *field)),
            _ => None,
        }
    }

    fn row(&mut self, name: &str, value: &str, remark: &str) -> io::Result<()> {
        let line = format!("  {name:NAME$} {value:12} {remark}");
        if line.trim_end().chars().count() <= WIDTH {
            return writeln!(self.out, "{}", line.trim_end());
        }
        writeln!(self.out, "  {name:NAME$} {value}")?;
        paragraph(self.out, &" ".repeat(NAME + 3), remark)
    }

    fn site_word(&self, degrees: f64) -> &'static str {
        let eye = if self.side() == Some("LEFT") { Eye::Left } else { Eye::Right };
        Site::from_deg(degrees).map_or("", |place| site::word(place, eye))
    }

    fn entry(&mut self, field: Field) -> io::Result<()> {
        let value = text::value(self.draft, field);
        let number = self.draft.number(field);
        let remark = match (field, number) {
            (Field::Side, _) => return self.row(field.what(), &text::value(self.draft, field).to_uppercase(), ""),
            (Field::IncisionSite | Field::OtherSite, Some(degrees)) => self.site_word(degrees).to_owned(),
            (_, Some(number)) if field.spoken() => text::spoken(number),
            _ if !self.draft.has(field) => "not entered, usual value".to_owned(),
            _ => String::new(),
        };
        self.row(field.what(), &value, &remark)
    }

    fn table(&mut self, items: &[&Item], cautions: &[Caution]) -> io::Result<()> {
        let of_method = |m: &Method| items.iter().any(|i| i.method == Some(*m));
        let methods: Vec<Method> = Method::ALL.iter().copied().filter(of_method).collect();
        let plain: Vec<&Item> = items.iter().filter(|i| Rows::with(i.what).is_none()).copied().collect();
        let left_out: Vec<Method> =
            items.iter().filter(|i| i.what == What::Compared && i.value == 0.0).filter_map(|i| i.method).collect();
        let names: Vec<String> = methods.iter().map(|m| marked(*m, &left_out)).collect();
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        if !plain.is_empty() {
            self.by_method(&plain, &methods, &names)?;
        }
        if items.iter().any(|i| i.what == What::Compared) {
            for caution in cautions.iter().filter(|c| WHY_LEFT_OUT.contains(&c.code)) {
                let method = caution.method.map_or("", Method::name);
                paragraph(self.out, "  * ", &format!("{method}: {}", caution.code.text()))?;
            }
        }
        for rows in Rows::ALL {
            let of_rows = |i: &&&Item| Rows::with(i.what).is_some_and(|of| of.leader == rows.leader);
            let items: Vec<&Item> = items.iter().filter(of_rows).copied().collect();
            if !items.is_empty() {
                self.led(rows, &names, &methods, &items)?;
            }
        }
        Ok(())
    }

    /// Tables with as many methods side by side as a page has room for, and what some of them say in words.
    fn by_method(&mut self, plain: &[&Item], methods: &[Method], names: &[&str]) -> io::Result<()> {
        let together = side_by_side(names);
        for (methods, names) in methods.chunks(together).zip(names.chunks(together)) {
            writeln!(self.out)?;
            self.rows(plain, methods, names)?;
        }
        self.in_words(plain)?;
        self.turns(plain, methods)
    }

    /// Each turn as a sentence that nobody can take the other way, once for the methods that say the same.
    fn turns(&mut self, plain: &[&Item], methods: &[Method]) -> io::Result<()> {
        let from = text::value(self.draft, Field::MarkFound);
        let mut said: Vec<(String, Vec<&str>)> = Vec::new();
        for &method in methods {
            let value = |what: What| plain.iter().find(|i| i.what == what && i.method == Some(method)).map(|i| i.value);
            let (Some(to), Some(clock), Some(counter)) =
                (value(What::TurnTo), value(What::TurnClock), value(What::TurnCounter))
            else {
                continue;
            };
            let turn =
                format!("FROM {from} TO {}: {}", text::number(to, 0, false, "deg"), text::both_ways(clock, counter));
            match said.iter_mut().find(|(other, _)| *other == turn) {
                Some((_, names)) => names.push(method.name()),
                None => said.push((turn, vec![method.name()])),
            }
        }
        for (turn, names) in said {
            paragraph(self.out, "  ", &format!("{turn} ({})", names.join(", ")))?;
        }
        Ok(())
    }

    /// A row a number, a column a method.
    fn rows(&mut self, plain: &[&Item], methods: &[Method], names: &[&str]) -> io::Result<()> {
        let widths = widths(names, 2);
        self.cells("", LABEL, &widths, names)?;
        let mut rows: Vec<(u8, What)> = Vec::new();
        // where only a later method has a number, its row stands after the one that it followed, not last
        let mut last: Option<(usize, &Item)> = None;
        for &item in plain {
            let after = last.filter(|(_, before)| (before.method, before.row) == (item.method, item.row));
            let place = rows.iter().position(|row| *row == (item.row, item.what)).unwrap_or_else(|| {
                let place = after.map_or(rows.len(), |(place, _)| place + 1);
                rows.insert(place, (item.row, item.what));
                place
            });
            last = Some((place, item));
        }
        for (row, what) in rows {
            if what == What::LabelCylinder {
                let value = plain.iter().find(|i| i.row == row && i.what == what).map_or(0.0, |i| i.value);
                let label = text::number(value, what.places(), what.signed(), what.unit());
                let chosen = self.draft.number(Field::LensCylinder) == Some(value);
                writeln!(self.out, "\n{} {} {label}", if chosen { ">" } else { " " }, what.name())?;
                continue;
            }
            if what == What::ChosenResidual {
                writeln!(self.out, "\n> lens chosen, cylinder {}", text::value(self.draft, Field::LensCylinder))?;
            }
            let unit = if what.unit() == "1" { String::new() } else { format!(", {}", what.unit()) };
            let cells: Vec<String> = methods.iter().map(|m| cell(plain, row, what, Some(*m))).collect();
            let cells: Vec<&str> = cells.iter().map(String::as_str).collect();
            self.cells(&format!("  {}{unit}", what.name()), LABEL, &widths, &cells)?;
        }
        Ok(())
    }

    /// What each error of an entry leaves, in words: the least and the most that a method says.
    fn in_words(&mut self, plain: &[&Item]) -> io::Result<()> {
        for what in [What::ErrorAl, What::ErrorK, What::ErrorAcd, What::ErrorPosition, What::ErrorConstant] {
            let left: Vec<f64> = plain.iter().filter(|item| item.what == what).map(|item| item.value).collect();
            let sizes = left.iter().map(|value| value.abs());
            let (least, most) = (sizes.clone().fold(f64::MAX, f64::min), sizes.fold(0.0, f64::max));
            let direction = match left.first() {
                None => continue,
                Some(_) if left.iter().all(|value| *value >= 0.0) => "hyperopic",
                Some(_) if left.iter().all(|value| *value <= 0.0) => "myopic",
                Some(_) => "either way",
            };
            let (least, most) = (text::number(least, 2, false, "D"), text::number(most, 2, false, "D"));
            let by = if least == most { most } else { format!("{least} to {most}") };
            paragraph(self.out, "  ", &format!("{}: {direction}, by {by}", what.name()))?;
        }
        Ok(())
    }

    /// A table whose rows are no methods; the row that was chosen is pointed at.
    fn led(&mut self, rows: &Rows, names: &[&str], methods: &[Method], items: &[&Item]) -> io::Result<()> {
        let columns: Vec<(What, Option<Method>, &str)> = rows
            .cells
            .iter()
            .flat_map(|(what, name)| match *name {
                "" => methods.iter().zip(names).map(|(m, name)| (*what, Some(*m), *name)).collect(),
                name => vec![(*what, None, name)],
            })
            .collect();
        let leaders: Vec<&&Item> = items.iter().filter(|i| i.what == rows.leader).collect();
        let label = |leader: &Item| {
            let pointer = if self.chosen(leader) { ">" } else { " " };
            format!("{pointer} {}", self.leader(leader))
        };
        let labels: Vec<String> = leaders.iter().map(|leader| label(leader)).collect();
        let label_width = labels.iter().map(|label| label.chars().count() + 1).max().unwrap_or(0).max(14);
        writeln!(self.out)?;
        paragraph(self.out, "  ", rows.heading)?;
        let names: Vec<&str> = columns.iter().map(|(.., name)| *name).collect();
        let gap = if label_width + widths(&names, 2).iter().sum::<usize>() > WIDTH { 1 } else { 2 };
        let widths = widths(&names, gap);
        self.cells(&format!("  {}", rows.of), label_width, &widths, &names)?;
        for (leader, label) in leaders.iter().zip(&labels) {
            let cells: Vec<String> = columns.iter().map(|(what, m, _)| cell(items, leader.row, *what, *m)).collect();
            let cells: Vec<&str> = cells.iter().map(String::as_str).collect();
            self.cells(label, label_width, &widths, &cells)?;
        }
        Ok(())
    }

    /// What leads a row: a number, or a word of the entry that it stands for.
    fn leader(&self, item: &Item) -> String {
        match item.what {
            What::BackSource => BackFrom::WORDS.get(item.value as usize).unwrap_or(&"").replace('_', " "),
            what => text::number(item.value, what.places(), what.signed() && item.value != 0.0, what.unit()),
        }
    }

    /// Whether a row is the one that was chosen.
    fn chosen(&self, leader: &Item) -> bool {
        match leader.what {
            What::LadderPower => self.draft.number(Field::LensPower) == Some(leader.value),
            What::BackSource => self.draft.number(Field::BackFrom).or(Field::BackFrom.default()) == Some(leader.value),
            _ => false,
        }
    }

    fn cells(&mut self, label: &str, width: usize, widths: &[usize], cells: &[&str]) -> io::Result<()> {
        let mut line = format!("{label:width$}");
        for (cell, width) in cells.iter().zip(widths) {
            line.push_str(&format!("{cell:>width$}"));
        }
        writeln!(self.out, "{}", line.trim_end())
    }

    /// The gravest first; one paragraph a code, with all it is about.
    fn cautions(&mut self, cautions: &[Caution]) -> io::Result<()> {
        let heading = self.of_side("Cautions");
        let rule = "-".repeat(WIDTH - 1 - heading.chars().count());
        let heading = self.strong(&heading);
        writeln!(self.out, "\n{heading} {rule}")?;
        let mut codes = distinct(cautions);
        codes.sort_by_key(|code| code.severity());
        for code in codes {
            let mut about: Vec<String> = Vec::new();
            for one in cautions.iter().filter(|c| c.code == code).filter_map(|c| self.about(c)) {
                if !about.contains(&one) {
                    about.push(one);
                }
            }
            let about = if about.is_empty() { String::new() } else { format!("{}: ", about.join(", ")) };
            let first = format!("  {:8} ", code.severity().word());
            paragraph(self.out, &first, &format!("{about}{} ({})", code.text(), origin(code)))?;
        }
        Ok(())
    }

    /// The method, or the entry with its value; a word speaks for itself in the text of the caution.
    fn about(&self, caution: &Caution) -> Option<String> {
        match (caution.method, caution.field) {
            (Some(method), _) => Some(method.name().to_owned()),
            (None, Some(field)) if matches!(field.kind(), Kind::Number(..) | Kind::Date) => {
                let value = text::value(self.draft, field);
                (!value.is_empty()).then(|| format!("{} {value}", field.what()))
            }
            (None, _) => None,
        }
    }

    fn read_back(&mut self, answers: &Answers, identifiers: Option<&Identifiers>) -> io::Result<()> {
        let heading = self.strong("Read-back");
        writeln!(self.out, "\n{heading} {}", "-".repeat(WIDTH - 10))?;
        match answers.code(self.draft, identifiers) {
            Ok(code) => {
                let words: Vec<&str> = code.words().map(|word| if word.is_empty() { "-" } else { word }).collect();
                let symbols = self.strong(code.as_str());
                writeln!(self.out, "  {symbols}   {}", words.join(" "))?;
            }
            Err(error) => {
                let what = error.field.map_or("an entry", Field::what);
                writeln!(self.out, "  none: {what} has more decimals than can be typed again")?;
            }
        }
        let covers = match identifiers {
            Some(_) => "It covers the entries and two patient identifiers, which are kept nowhere.",
            None => "It covers the entries but no patient identifiers; --identify asks for two.",
        };
        paragraph(self.out, "  ", covers)?;
        paragraph(
            self.out,
            "  ",
            "Two people each type from the original printout, never from the other's screen, and compare by voice. \
             First four the same: same entries. It does not prove the correct patient or a correct printout.",
        )
    }
}

/// Why a method is not counted in the spread: said under its column.
const WHY_LEFT_OUT: &[Code] = &[Code::Unoptimised, Code::DepartsFromT2, Code::Radicand, Code::Superseded];

/// The name of a method, with a mark when it is not counted.
fn marked(method: Method, left_out: &[Method]) -> String {
    let mark = if left_out.contains(&method) { " *" } else { "" };
    format!("{}{mark}", method.name())
}

/// Each code once, in the order they came; the one at the head of the card is not among them.
fn distinct(cautions: &[Caution]) -> Vec<Code> {
    let mut codes: Vec<Code> = Vec::new();
    for caution in cautions {
        if !codes.contains(&caution.code) && caution.code != Code::NotADevice {
            codes.push(caution.code);
        }
    }
    codes
}

/// As wide as the name of a column with the spaces before it, and as a signed power.
fn widths(names: &[&str], gap: usize) -> Vec<usize> {
    names.iter().map(|name| (name.chars().count() + gap).max(9)).collect()
}

/// How many columns a page has room for beside their labels, as many on each line as can be.
fn side_by_side(names: &[&str]) -> usize {
    let widths = widths(names, 2);
    let fits = |count: &usize| widths.chunks(*count).all(|line| LABEL + line.iter().sum::<usize>() <= WIDTH);
    let most = (1..=names.len()).rev().find(fits).unwrap_or(1);
    let lines = names.len().div_ceil(most);
    names.len().div_ceil(lines).max(1)
}

/// Where a caution comes from and how surely; said once where the two say the same.
fn origin(code: Code) -> String {
    match code.source() {
        Source::Here => code.mark().word().to_owned(),
        Source::NoSource => code.source().text().to_owned(),
        source => format!("{}; {}", source.text(), code.mark().word()),
    }
}

/// The item of a line that belongs in a table: of one method, or of a row that methods share.
fn in_table(line: &Line) -> Option<&Item> {
    match line {
        Line::Item(item) if item.method.is_some() => Some(item),
        Line::Item(item) if item.what == What::LabelCylinder || Rows::with(item.what).is_some() => Some(item),
        _ => None,
    }
}

fn cell(items: &[&Item], row: u8, what: What, method: Option<Method>) -> String {
    let Some(item) = items.iter().find(|i| i.row == row && i.what == what && i.method == method) else {
        return "-".to_owned();
    };
    match what {
        What::Guided | What::Compared => (if item.value == 1.0 { "yes" } else { "no" }).to_owned(),
        _ => text::number(item.value, what.places(), what.signed(), ""),
    }
}
