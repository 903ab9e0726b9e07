//! From the entries to a case, or to what keeps them from it.

use crate::page::Page;
use crate::wrong;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_text::Text;
use ocellus_text::text;

/// The case of the entries; where they are not one, the reasons are printed.
pub(crate) fn case<'a>(draft: &'a Draft, page: &mut Page) -> Option<Case<'a>> {
    needs(draft, text!("These entries are not a case yet, and nothing is computed. Needed:"), page)
}

/// The case of the entries, or a heading and what they lack below it.
pub(crate) fn needs<'a>(draft: &'a Draft, heading: Text, page: &mut Page) -> Option<Case<'a>> {
    let mut heading = Some(heading);
    Case::check(draft, &mut |error| {
        if let Some(heading) = heading.take() {
            page.line(heading);
        }
        wrong::of_case(&error, draft, page);
    })
}
