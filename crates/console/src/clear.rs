//! Forgetting entries: one, or all; never by a slip.

use crate::entry;
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    if rest.eq_ignore_ascii_case("all") {
        page.count(Field::ALL.iter().filter(|field| draft.has(**field)).count());
        page.line(" entries forgotten.");
        // field by field: an empty draft to copy would be a kilobyte of flash and of stack
        Field::ALL.iter().for_each(|field| draft.clear(*field));
        return Outcome::Told;
    }
    let Some(field) = entry::field(rest) else {
        if !rest.is_empty() {
            let mut nearest = Nearest::to(rest);
            Field::ALL.iter().for_each(|field| nearest.offer(field.word()));
            nearest.tell(page, "not an entry");
        }
        page.line("clear WORD forgets one entry, clear all every one; nothing was forgotten.");
        return Outcome::Refused;
    };
    page.text(field.what());
    page.line(if draft.has(field) { ": forgotten." } else { ": was not entered." });
    draft.clear(field);
    Outcome::Told
}
