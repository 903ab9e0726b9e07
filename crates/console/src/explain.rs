//! How a number came about: each step under the paper's own symbol. The sentences and sources are a desk's.

use crate::case::case;
use crate::cautions::{Cautions, origin};
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::show;
use crate::word::is_word;
use ocellus_card::Subject;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::working::{Step, Steps, Table};
use ocellus_text::Text;
use ocellus_text::text;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    let Some(subject) = Subject::all().find(|subject| is_word(subject.key(), rest)) else {
        if rest.is_empty() {
            page.line(text!("Explain what?"));
        } else {
            let mut nearest = Nearest::to(rest);
            Subject::all().for_each(|subject| nearest.offer(subject.key()));
            nearest.tell(page, text!("nothing that can be explained"));
        }
        page.accepted();
        subjects(page);
        return Outcome::Refused;
    };
    let Some(case) = case(draft, page) else { return Outcome::Answered };
    page.line(subject.name());
    let mut working = Working::of(draft, page);
    working.lacks = Lacks::Waiting(subject);
    if !case.explain(subject, &mut working) {
        working.not_computed();
    }
    let Working { cautions, page, .. } = &mut working;
    if !cautions.is_empty() {
        page.end();
        page.line("Cautions");
        cautions.tell(draft, page);
    }
    page.end();
    page.line(text!("What each symbol means, its equation and the sources by number: ocellus explain on a desk."));
    Outcome::Answered
}

pub(crate) fn subjects(page: &mut Page) {
    page.words(Subject::all().map(Subject::key));
}

/// Prints steps that are of no case.
pub(crate) fn steps(draft: &Draft, page: &mut Page, show: &mut dyn FnMut(&mut dyn Steps)) {
    show(&mut Working::of(draft, page));
}

/// Whether it was said that nothing was computed, and what could still be entered.
enum Lacks {
    /// Not of this subject, yet.
    Waiting(Subject),
    /// It was.
    Said,
}

/// Prints a working as it is streamed.
struct Working<'a, 'p> {
    draft: &'a Draft,
    page: &'a mut Page<'p>,
    table: Option<&'static Table>,
    cautions: Cautions,
    lacks: Lacks,
}

impl<'a, 'p> Working<'a, 'p> {
    fn of(draft: &'a Draft, page: &'a mut Page<'p>) -> Working<'a, 'p> {
        Working { draft, page, table: None, cautions: Cautions::new(), lacks: Lacks::Said }
    }

    /// Says once that nothing was computed; the answer is whether this was the first time.
    fn not_computed(&mut self) -> bool {
        let Lacks::Waiting(subject) = core::mem::replace(&mut self.lacks, Lacks::Said) else { return false };
        self.page.end();
        self.page.text(subject.name());
        self.page.line(text!(": not computed, this case does not allow it."));
        true
    }
}

impl Steps for Working<'_, '_> {
    fn step(&mut self, step: Step) {
        let Some(line) = step.line() else { return };
        if !self.table.replace(step.table).is_some_and(|table| core::ptr::eq(table, step.table)) {
            self.page.end();
            self.page.line(step.table.heading);
        }
        self.page.word(line.symbol);
        self.page.exact(step.value, line.unit());
        self.page.to(40);
        self.page.text("[");
        origin(line.source, line.mark, self.page);
        self.page.line("]");
    }
}

impl Sink for Working<'_, '_> {
    fn entry(&mut self, entry: EntryId) {
        self.page.word(entry.word());
        self.page.value(self.draft, entry);
        self.page.to(40);
        self.page.hang();
        self.page.text(entry.what());
        self.page.line(if self.draft.has(entry) { Text::EMPTY } else { text!(" (usual value)") });
    }

    fn lacks(&mut self, entry: EntryId) {
        // a refusal is shown in the cautions, and no entry would lift it
        if self.cautions.refuse() || self.cautions.end_it() {
            return;
        }
        if self.not_computed() {
            self.page.line(text!("Not entered, of what it can start from:"));
        }
        show::entry(self.draft, entry, self.page);
    }

    fn item(&mut self, item: Item) {
        self.table = None;
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
}
