//! Forgetting entries: one, or all; never by a slip.

use crate::entry;
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_text::text;

pub(crate) fn run(draft: &mut Draft, rest: &str, page: &mut Page) -> Outcome {
    if rest.eq_ignore_ascii_case("all") {
        page.count(draft.made().count());
        page.line(text!(" entries forgotten."));
        draft.clear_all();
        return Outcome::Answered;
    }
    let Some(entry) = entry::named(rest) else {
        if !rest.is_empty() {
            let mut nearest = Nearest::to(rest);
            EntryId::all().for_each(|entry| nearest.offer(entry.word()));
            nearest.tell(page, "not an entry");
        }
        page.line(text!("clear WORD forgets one entry, clear all every one; nothing was forgotten."));
        return Outcome::Refused;
    };
    page.text(entry.what());
    page.line(if draft.has(entry) { text!(": forgotten.") } else { text!(": was not entered.") });
    draft.clear(entry);
    Outcome::Answered
}
