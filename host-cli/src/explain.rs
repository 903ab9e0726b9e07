//! How a number came about, on paper: enough for a student to do it again by hand.

use crate::text::{self, paragraph};
use ocellus_core::caution::{Caution, Severity};
use ocellus_core::decimal::places_for;
use ocellus_core::draft::Draft;
use ocellus_core::explain::{NO_ENTRY_HELPS, Subject};
use ocellus_core::field::Field;
use ocellus_core::item::Item;
use ocellus_core::sheet::Sheet;
use ocellus_core::sink::Sink;
use ocellus_core::source::{Mark, Source};
use ocellus_core::working::Step;
use std::io::{self, Write};

/// Prints the working of a subject; the answer is whether there were steps, and none was refused.
pub fn print(subject: Subject, sheet: &Sheet, out: &mut dyn Write) -> io::Result<bool> {
    let mut working = Working::default();
    let any = sheet.explain(subject, &mut working);
    let mut page = Page { draft: sheet.draft(), sources: Vec::new(), out };
    writeln!(page.out, "{}", subject.name())?;
    page.entries(&working.entries)?;
    page.steps(&working.steps)?;
    let refused = working.cautions.iter().any(|caution| caution.code.severity() == Severity::Refuse);
    if !any {
        // no entry would make a method that is made for other eyes one for this
        let other = working.cautions.iter().any(|caution| NO_ENTRY_HELPS.contains(&caution.code));
        page.missing(subject, refused || other)?;
    }
    page.cautions(&working.cautions)?;
    page.list_sources()?;
    Ok(any && !refused)
}

/// What was streamed, kept in its order.
#[derive(Default)]
struct Working {
    entries: Vec<Field>,
    steps: Vec<Line>,
    cautions: Vec<Caution>,
}

enum Line {
    Step(Step),
    Item(Item),
}

impl Sink for Working {
    fn entry(&mut self, field: Field) {
        self.entries.push(field);
    }

    fn item(&mut self, item: Item) {
        self.steps.push(Line::Item(item));
    }

    fn caution(&mut self, caution: Caution) {
        if !self.cautions.contains(&caution) {
            self.cautions.push(caution);
        }
    }

    fn step(&mut self, step: Step) {
        self.steps.push(Line::Step(step));
    }
}

/// Significant digits of a step: enough to go on from by hand and come to the numbers on the card.
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

    fn entries(&mut self, fields: &[Field]) -> io::Result<()> {
        writeln!(self.out, "\nEntries")?;
        for &field in fields {
            let usual = if self.draft.has(field) { "" } else { "; not entered, usual value" };
            let first = format!("  {:24} {:14} ", field.key(), text::value(self.draft, field));
            paragraph(self.out, &first, &format!("{}{usual}", field.what()))?;
        }
        Ok(())
    }

    fn steps(&mut self, lines: &[Line]) -> io::Result<()> {
        let mut current = None;
        for line in lines {
            match line {
                Line::Step(step) => {
                    if current != Some(step.topic) {
                        writeln!(self.out, "\n{}", step.topic.heading())?;
                        current = Some(step.topic);
                    }
                    self.step(*step)?;
                }
                Line::Item(item) => {
                    self.item(*item)?;
                    current = None;
                }
            }
        }
        Ok(())
    }

    fn step(&mut self, step: Step) -> io::Result<()> {
        let index = usize::from(step.index);
        let (Some(line), Some(prose)) = (step.topic.lines().get(index), step.topic.prose().get(index)) else {
            return Ok(());
        };
        let value = quantity(step.value, line.unit());
        let origin = self.origin(line.source, line.mark);
        paragraph(self.out, &format!("  {} = {value}  ", line.symbol), &format!("{} {origin}", prose.meaning))?;
        paragraph(self.out, "      ", prose.equation)?;
        for constant in prose.constants {
            let unit = if constant.unit == "1" { String::new() } else { format!(" {}", constant.unit) };
            let origin = self.origin(constant.source, constant.mark);
            paragraph(self.out, "        ", &format!("{} = {}{unit} {origin}", constant.name, constant.digits))?;
        }
        Ok(())
    }

    fn item(&mut self, item: Item) -> io::Result<()> {
        let (source, mark) = (item.method.map_or(item.what.source(), |m| m.source()), item.what.mark());
        let method = item.method.map_or(String::new(), |method| format!("{}: ", method.name()));
        let value = quantity(item.value, item.what.unit());
        let origin = self.origin(source, mark);
        writeln!(self.out)?;
        paragraph(self.out, "", &format!("{method}{} = {value} {origin}", item.what.name()))
    }

    /// What could still be entered; a refusal is told in the cautions, and no entry would lift it.
    fn missing(&mut self, subject: Subject, refused: bool) -> io::Result<()> {
        writeln!(self.out)?;
        paragraph(self.out, "", &format!("{}: not computed, this case does not allow it.", subject.name()))?;
        let absent = |field: &&Field| !self.draft.has(**field) && field.default().is_none();
        let absent: Vec<Field> = subject.inputs().iter().filter(absent).copied().collect();
        if !refused && !absent.is_empty() {
            writeln!(self.out, "Not entered, of what it can start from:")?;
            for field in absent {
                let table = crate::problem::table(field.section());
                paragraph(self.out, &format!("  {:24} ", field.key()), &format!("{} ({table})", field.what()))?;
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
            paragraph(self.out, &first, &format!("{about}{} {origin}", code.text()))?;
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
