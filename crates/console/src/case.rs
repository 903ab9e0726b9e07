//! From the entries to a case, or to what keeps them from it.

use crate::page::Page;
use crate::wrong;
use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::error::Error;
use ocellus_core::sheet::Sheet;

/// The case of the entries, or the set-up of fluids that they are; where they are neither, what keeps them from it is told.
pub(crate) fn sheet<'a>(draft: &'a Draft, page: &mut Page) -> Option<Sheet<'a>> {
    needs(draft, NO_CASE, page)
}

/// The case of an eye alone.
pub(crate) fn case<'a>(draft: &'a Draft, page: &mut Page) -> Option<Case<'a>> {
    let mut lacks = Lacks { heading: Some(NO_CASE), draft, page };
    Case::check(draft, &mut |error| lacks.tell(&error))
}

/// The case or set-up of the entries, or a heading and what they lack below it.
pub(crate) fn needs<'a>(draft: &'a Draft, heading: &'static str, page: &mut Page) -> Option<Sheet<'a>> {
    let mut lacks = Lacks { heading: Some(heading), draft, page };
    Sheet::check(draft, &mut |error| lacks.tell(&error))
}

const NO_CASE: &str = "These entries are no case yet, and nothing is computed. Needed:";

struct Lacks<'a, 'p> {
    heading: Option<&'static str>,
    draft: &'a Draft,
    page: &'a mut Page<'p>,
}

impl Lacks<'_, '_> {
    fn tell(&mut self, error: &Error) {
        if let Some(heading) = self.heading.take() {
            self.page.line(heading);
        }
        wrong::of_case(error, self.draft, self.page);
    }
}
