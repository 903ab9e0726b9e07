//! The code that two people compare by voice.

use crate::case::case;
use crate::outcome::Outcome;
use crate::page::Page;
use ocellus_card::draft::Draft;
use ocellus_card::readback::{Answers, Identifiers};
use ocellus_text::text;

pub(crate) fn run(draft: &mut Draft, _rest: &str, page: &mut Page) -> Outcome {
    of(draft, None, page);
    Outcome::Answered
}

/// Prints the code of the entries, with two identifiers or without.
pub(crate) fn of(draft: &Draft, identifiers: Option<&Identifiers>, page: &mut Page) {
    let Some(case) = case(draft, page) else { return };
    let mut answers = Answers::default();
    case.plan(&mut answers);
    print(&answers, draft, identifiers, page);
}

pub(crate) fn print(answers: &Answers, draft: &Draft, identifiers: Option<&Identifiers>, page: &mut Page) {
    page.end();
    page.heading("Read-back", "");
    page.raw("  ");
    match answers.code(draft, identifiers) {
        Ok(code) => {
            page.bold(true);
            page.text(code.as_str());
            page.bold(false);
            page.raw("  ");
            for word in code.words() {
                page.text(" ");
                page.text(if word.is_empty() { "-" } else { word });
            }
        }
        Err(error) => {
            page.text("none: ");
            page.text(error.entry.what());
            page.text(text!(" has more decimals than can be typed again"));
        }
    }
    page.end();
    page.raw("  ");
    page.hang();
    if identifiers.is_some() {
        page.line(text!("It covers the entries and two patient identifiers, which are kept nowhere."));
    } else {
        page.text(text!("It covers the entries but no patient identifiers; "));
        page.text(page.desk.map_or("identify", |desk| desk.identify));
        page.line(text!(" asks for two."));
    }
    page.paragraph(
        "  ",
        text!(
            "Two people each type from the original printout, never from the other's screen, and compare by voice. First \
             four the same: same entries. It does not prove the correct patient or a correct printout."
        ),
    );
}
