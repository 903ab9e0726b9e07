//! The code that two people compare by voice.

use crate::case::sheet;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::readback::{Answers, Identifiers};

pub(crate) fn run(draft: &mut Draft, _rest: &str, page: &mut Page) -> Outcome {
    of(draft, None, page);
    Outcome::Told
}

/// Prints the code of the entries, with two identifiers or without.
pub(crate) fn of(draft: &Draft, identifiers: Option<&Identifiers>, page: &mut Page) {
    let Some(sheet) = sheet(draft, page) else { return };
    let mut answers = Answers::default();
    sheet.plan(&mut answers);
    print(&answers, draft, identifiers, page);
}

pub(crate) fn print(answers: &Answers, draft: &Draft, identifiers: Option<&Identifiers>, page: &mut Page) {
    page.end();
    page.heading("Read-back", "");
    page.raw("  ");
    match answers.code(draft, identifiers) {
        Ok(code) => {
            page.text(code.as_str());
            page.raw("  ");
            for word in code.words() {
                page.text(" ");
                page.text(if word.is_empty() { "-" } else { word });
            }
        }
        Err(error) => {
            page.text("none: ");
            page.text(error.field.map_or("an entry", Field::what));
            page.text(" has more decimals than can be typed again");
        }
    }
    page.end();
    let covers = match identifiers {
        Some(_) => "It covers the entries and two patient identifiers, which are kept nowhere.",
        None => "It covers the entries but no patient identifiers; identify asks for two.",
    };
    page.paragraph("  ", covers);
    page.paragraph(
        "  ",
        "Two people each type from the original printout, never from the other's screen, and compare by voice. First \
         four the same: same entries. It does not prove the correct patient or a correct printout.",
    );
}
