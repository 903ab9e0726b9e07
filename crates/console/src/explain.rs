//! How a number came about: each step under the paper's own symbol. The sentences and sources are a desk's.

use crate::case::sheet;
use crate::cautions::{Cautions, origin};
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::show;
use ocellus_core::caution::Caution;
use ocellus_core::draft::Draft;
use ocellus_core::explain::{NO_ENTRY_HELPS, Subject};
use ocellus_core::field::Field;
use ocellus_core::item::Item;
use ocellus_core::sink::Sink;
use ocellus_core::working::{Step, Topic};

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some(subject) = Subject::all().find(|subject| subject.key().eq_ignore_ascii_case(rest)) else {
        if rest.is_empty() {
            page.line("Explain what?");
        } else {
            let mut nearest = Nearest::to(rest);
            Subject::all().for_each(|subject| nearest.offer(subject.key()));
            nearest.tell(page, "nothing that can be explained");
        }
        page.raw("    accepted: ");
        page.hang();
        subjects(page);
        return Outcome::Refused;
    };
    let Some(sheet) = sheet(draft, page) else { return Outcome::Told };
    page.line(subject.name());
    let mut working = Working { draft, page, topic: None, cautions: Cautions::new() };
    let any = sheet.explain(subject, &mut working);
    let cautions = working.cautions;
    if !any {
        // no entry would make a method that is made for other eyes one for this
        missing(subject, draft, cautions.refuse() || NO_ENTRY_HELPS.iter().any(|code| cautions.has(*code)), page);
    }
    if !cautions.all().is_empty() {
        page.end();
        page.line("Cautions");
        cautions.tell(draft, page);
    }
    page.end();
    page.line("What each symbol means, its equation and the sources by number: ocellus explain on a desk.");
    Outcome::Told
}

pub(crate) fn subjects(page: &mut Page) {
    for subject in Subject::all() {
        page.text(" ");
        page.text(subject.key());
    }
    page.end();
}

/// What could still be entered; a refusal is told in the cautions, and no entry would lift it.
fn missing(subject: Subject, draft: &Draft, refused: bool, page: &mut Page) {
    page.end();
    page.text(subject.name());
    page.line(": not computed, this case does not allow it.");
    let mut absent =
        subject.inputs().iter().filter(|field| !draft.has(**field) && field.default().is_none()).peekable();
    if !refused && absent.peek().is_some() {
        page.line("Not entered, of what it can start from:");
        absent.for_each(|field| show::entry(draft, *field, page));
    }
}

/// Prints steps that are of no case.
pub(crate) fn steps(draft: &Draft, page: &mut Page, show: &mut dyn FnMut(&mut dyn Sink)) {
    show(&mut Working { draft, page, topic: None, cautions: Cautions::new() });
}

/// Prints a working as it is streamed.
struct Working<'a, 'p> {
    draft: &'a Draft,
    page: &'a mut Page<'p>,
    topic: Option<Topic>,
    cautions: Cautions,
}

impl Sink for Working<'_, '_> {
    fn entry(&mut self, field: Field) {
        self.page.word(field.word());
        self.page.value(self.draft, field);
        self.page.to(40);
        self.page.hang();
        self.page.text(field.what());
        self.page.line(if self.draft.has(field) { "" } else { " (usual value)" });
    }

    fn item(&mut self, item: Item) {
        self.topic = None;
        self.page.end();
        if let Some(method) = item.method {
            self.page.text(method.name());
            self.page.text(": ");
        }
        self.page.text(item.what.name());
        self.page.text(" = ");
        self.page.exact(item.value, item.what.unit());
        self.page.text(" [");
        let source = item.method.map_or(item.what.source(), |method| method.source());
        origin(source, item.what.mark(), self.page);
        self.page.line("]");
    }

    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }

    fn step(&mut self, step: Step) {
        let Some(line) = step.topic.lines().get(usize::from(step.index)) else { return };
        if self.topic.replace(step.topic) != Some(step.topic) {
            self.page.end();
            self.page.line(step.topic.heading());
        }
        self.page.word(line.symbol);
        self.page.exact(step.value, line.unit());
        self.page.to(40);
        self.page.text("[");
        origin(line.source, line.mark, self.page);
        self.page.line("]");
    }
}
