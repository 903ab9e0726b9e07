//! How a number came about, on paper: enough for a student to do it again by hand.

use crate::problem::table;
use crate::text::{self, paragraph};
use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_card::{Subject, workings};
use ocellus_core::decimal::places_for;
use ocellus_core::source::{Mark, Source};
use ocellus_core::working::{Step, Steps, Table};
use std::io::{self, Write};

/// Prints the working of a subject; the answer is whether there were steps, and none was refused.
pub fn print(subject: Subject, case: &Case, out: &mut dyn Write) -> io::Result<bool> {
    let mut working = Working::default();
    let any = case.explain(subject, &mut working);
    let mut page = Page { draft: case.draft(), sources: Vec::new(), out };
    writeln!(page.out, "{}", subject.name())?;
    page.entries(&working.entries)?;
    page.lines(&working.lines)?;
    if !any {
        page.missing(subject, &working)?;
    }
    page.cautions(&working.cautions)?;
    page.list_sources()?;
    Ok(any && !working.is_refused())
}

/// What was streamed, kept in its order.
#[derive(Default)]
struct Working {
    entries: Vec<EntryId>,
    lacks: Vec<EntryId>,
    lines: Vec<Line>,
    cautions: Vec<Caution>,
}

enum Line {
    Step(Step),
    Item(Item),
}

impl Working {
    fn is_refused(&self) -> bool {
        self.cautions.iter().any(|caution| caution.code.severity() == Severity::Refuse)
    }

    /// Whether missing entries would bring steps.
    fn can_be_helped(&self) -> bool {
        !self.is_refused() && !self.cautions.iter().any(|caution| caution.code.ends_it())
    }
}

impl Steps for Working {
    fn step(&mut self, step: Step) {
        self.lines.push(Line::Step(step));
    }
}

impl Sink for Working {
    fn entry(&mut self, entry: EntryId) {
        self.entries.push(entry);
    }

    fn lacks(&mut self, entry: EntryId) {
        self.lacks.push(entry);
    }

    fn item(&mut self, item: Item) {
        self.lines.push(Line::Item(item));
    }

    fn caution(&mut self, caution: Caution) {
        if !self.cautions.contains(&caution) {
            self.cautions.push(caution);
        }
    }
}

/// Significant digits of a step: enough to continue by hand and get the numbers on the card.
const SIGNIFICANT: u8 = 8;

struct Page<'a> {
    draft: &'a Draft,
    sources: Vec<Source>,
    out: &'a mut dyn Write,
}

impl Page<'_> {
    /// A mark and the number of a source, which is then listed at the end.
    fn origin(&mut self, source: Source, mark: Mark) -> String {
        if !self.sources.contains(&source) {
            self.sources.push(source);
        }
        format!("[{}, source {}]", mark.word(), source.number())
    }

    fn entries(&mut self, entries: &[EntryId]) -> io::Result<()> {
        if !entries.is_empty() {
            writeln!(self.out, "\nEntries")?;
        }
        for &entry in entries {
            let usual = if self.draft.has(entry) { "" } else { "; not entered, usual value" };
            let first = format!("  {:24} {:14} ", entry.key().to_string(), text::value(self.draft, entry));
            paragraph(self.out, &first, format_args!("{}{usual}", entry.what()))?;
        }
        Ok(())
    }

    fn lines(&mut self, lines: &[Line]) -> io::Result<()> {
        let mut current: Option<&'static Table> = None;
        for line in lines {
            match line {
                Line::Step(step) => {
                    if !current.replace(step.table).is_some_and(|table| std::ptr::eq(table, step.table)) {
                        writeln!(self.out, "\n{}", step.table.heading)?;
                    }
                    self.step(step)?;
                }
                Line::Item(item) => {
                    self.item(*item)?;
                    current = None;
                }
            }
        }
        Ok(())
    }

    fn step(&mut self, step: &Step) -> io::Result<()> {
        let prose = workings::prose(step.table).get(usize::from(step.index));
        let Some((line, prose)) = step.line().zip(prose) else { return Ok(()) };
        let value = quantity(step.value, line.unit());
        let origin = self.origin(line.source, line.mark);
        paragraph(self.out, &format!("  {} = {value}  ", line.symbol), format_args!("{} {origin}", prose.meaning))?;
        paragraph(self.out, "      ", prose.equation)?;
        for constant in prose.constants {
            let unit = if constant.unit == "1" { String::new() } else { format!(" {}", constant.unit) };
            let origin = self.origin(constant.source, constant.mark);
            paragraph(self.out, "        ", format_args!("{} = {}{unit} {origin}", constant.name, constant.digits))?;
        }
        Ok(())
    }

    fn item(&mut self, item: Item) -> io::Result<()> {
        let (source, mark) = (item.method.map_or(item.what.source(), |m| m.source()), item.what.mark());
        let method = item.method.map_or(String::new(), |method| format!("{}: ", method.name()));
        let value = quantity(item.value, item.what.unit());
        let origin = self.origin(source, mark);
        writeln!(self.out)?;
        paragraph(self.out, "", format_args!("{method}{} = {value} {origin}", item.what.name()))
    }

    /// What could still be entered; a refusal is shown in the cautions, and no entry would lift it.
    fn missing(&mut self, subject: Subject, working: &Working) -> io::Result<()> {
        writeln!(self.out)?;
        paragraph(self.out, "", format_args!("{}: not computed, this case does not allow it.", subject.name()))?;
        if working.can_be_helped() && !working.lacks.is_empty() {
            writeln!(self.out, "Not entered, of what it can start from:")?;
            for entry in &working.lacks {
                let first = format!("  {:24} ", entry.key().to_string());
                paragraph(self.out, &first, format_args!("{} ({})", entry.what(), table(entry.section())))?;
            }
        }
        Ok(())
    }

    fn cautions(&mut self, cautions: &[Caution]) -> io::Result<()> {
        if !cautions.is_empty() {
            writeln!(self.out, "\nCautions")?;
        }
        for caution in cautions {
            let code = caution.code;
            let about = caution.method.map_or(String::new(), |method| format!("{}: ", method.name()));
            let origin = self.origin(code.source(), code.mark());
            let first = format!("  {:8} ", code.severity().word());
            paragraph(self.out, &first, format_args!("{about}{} {origin}", code.text()))?;
        }
        Ok(())
    }

    fn list_sources(&mut self) -> io::Result<()> {
        if self.sources.is_empty() {
            return Ok(());
        }
        self.sources.sort_by_key(|source| source.number());
        writeln!(self.out, "\nSources")?;
        for source in &self.sources {
            paragraph(self.out, &format!("  {:>2}  ", source.number()), source.text())?;
        }
        Ok(())
    }
}

/// A value with its unit; a power with its sign.
fn quantity(value: f64, unit: &str) -> String {
    text::number(value, places_for(value, SIGNIFICANT), unit == "D", unit)
}
