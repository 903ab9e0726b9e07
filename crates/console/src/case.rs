//! From the entries to a case, or to what keeps them from it.

use crate::page::Page;
use crate::wrong;
use ocellus_core::case::Case;
use ocellus_core::draft::Draft;

/// The case of the entries; where they are none, what keeps them from it is told.
pub(crate) fn case<'a>(draft: &'a Draft, page: &mut Page) -> Option<Case<'a>> {
    needs(draft, "These entries are no case yet, and nothing is computed. Needed:", page)
}

/// The case of the entries, or a heading and what they lack below it.
pub(crate) fn needs<'a>(draft: &'a Draft, heading: &str, page: &mut Page) -> Option<Case<'a>> {
    let mut told = false;
    Case::check(draft, &mut |error| {
        if !core::mem::replace(&mut told, true) {
            page.line(heading);
        }
        wrong::of_case(&error, draft, page);
    })
}
