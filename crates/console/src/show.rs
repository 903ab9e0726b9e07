//! What was entered, and what a case still needs.

use crate::case::needs;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::sheet::Sheet;

pub(crate) fn run(draft: &mut Draft, _rest: &str, page: &mut Page) -> Outcome {
    let entered = || Field::ALL.iter().copied().filter(|field| draft.has(*field));
    if entered().next().is_none() {
        page.line("Nothing is entered.");
    }
    entered().for_each(|field| row(draft, field, page));
    match needs(draft, "Needed for a case:", page) {
        Some(Sheet::Eye(_)) => page.line("These entries make a case: plan prints its card."),
        Some(Sheet::Bench(_)) => {
            page.line("These entries make a set-up of fluids, without an eye: plan prints its card.")
        }
        None => {}
    }
    Outcome::Told
}

/// One entry, made or not.
pub(crate) fn entry(draft: &Draft, field: Field, page: &mut Page) {
    if draft.has(field) {
        return row(draft, field, page);
    }
    page.word(field.word());
    page.text("not entered");
    if field.default().is_some() {
        page.text("; the usual value is ");
        page.value(draft, field);
    }
    page.text(": ");
    page.line(field.what());
}

/// Word, value, meaning; what is read out at the table in words too.
pub(crate) fn row(draft: &Draft, field: Field, page: &mut Page) {
    page.word(field.word());
    page.value(draft, field);
    page.to(40);
    page.line(field.what());
    if let Some(number) = draft.number(field).filter(|_| field.spoken()) {
        page.to(14);
        page.spoken(number);
        page.end();
    }
}
