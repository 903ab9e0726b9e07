//! What was entered, and what a case still needs.

use crate::case::needs;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_card::draft::Draft;
use ocellus_card::entry::ShownAs;
use ocellus_card::id::EntryId;
use ocellus_text::text;

pub(crate) fn run(draft: &mut Draft, _rest: &str, page: &mut Page) -> Outcome {
    if draft.made().next().is_none() {
        page.line(text!("Nothing is entered."));
    }
    draft.made().for_each(|entry| row(draft, entry, page));
    if let Some(case) = needs(draft, text!("Needed for a case:"), page) {
        page.line(if case.has_eye() {
            text!("These entries make a case: plan prints its card.")
        } else {
            text!("These entries make a set-up of fluids, without an eye: plan prints its card.")
        });
    }
    Outcome::Answered
}

/// One entry, made or not.
pub(crate) fn entry(draft: &Draft, entry: EntryId, page: &mut Page) {
    if draft.has(entry) {
        return row(draft, entry, page);
    }
    page.word(entry.word());
    page.text(text!("not entered"));
    if entry.default().is_some() {
        page.text(text!("; the usual value is "));
        page.value(draft, entry);
    }
    page.text(": ");
    page.line(entry.what());
}

/// Word, value, meaning; what is read out at the table in words too.
pub(crate) fn row(draft: &Draft, entry: EntryId, page: &mut Page) {
    page.word(entry.word());
    page.value(draft, entry);
    page.to(40);
    page.line(entry.what());
    if let Some(number) = draft.number(entry).filter(|_| entry.shown_as() == Some(ShownAs::Spoken)) {
        page.to(14);
        page.spoken(number);
        page.end();
    }
}
