//! Two patient identifiers: asked for, covered by one read-back, and forgotten.

use crate::case::case;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::readback;
use heapless::Vec;
use ocellus_card::date::Date;
use ocellus_card::draft::Draft;
use ocellus_card::error::Wrong;
use ocellus_card::name::{LENGTH, Name};
use ocellus_card::readback::Identifiers;
use ocellus_text::text;
use zeroize::Zeroize;

/// What a console ends its answers with, to ask for a command or for either identifier: a script waits for one of them.
pub const PROMPTS: [&str; 3] = ["ocellus> ", "Hospital number: ", "Date of birth, YYYY-MM-DD: "];

/// What the next line answers.
pub(crate) enum Asked {
    /// Nothing: it is a command.
    Nothing,
    First,
    Second,
}

pub(crate) struct Identify {
    pub(crate) asked: Asked,
    first: Vec<u8, LENGTH>,
}

pub(crate) fn run(draft: &mut Draft, _rest: &str, page: &mut Page) -> Outcome {
    if case(draft, page).is_none() {
        return Outcome::Answered;
    }
    page.line(text!("Two patient identifiers, read from the original printout; kept nowhere. Ctrl-C cancels."));
    Outcome::Identify
}

impl Identify {
    pub(crate) const fn new() -> Identify {
        Identify { asked: Asked::Nothing, first: Vec::new() }
    }

    /// What stands before the line that is typed next.
    pub(crate) fn prompt(&self) -> &'static str {
        let [command, first, second] = PROMPTS;
        match self.asked {
            Asked::Nothing => command,
            Asked::First => first,
            Asked::Second => second,
        }
    }

    /// Takes an answer; after the second the read-back is printed and both are forgotten.
    // apart, so that its room on the stack is free again while a card is planned
    #[inline(never)]
    pub(crate) fn answer(&mut self, draft: &Draft, line: &str, page: &mut Page) {
        let Ok(name) = Name::parse(line) else { return page.line(Wrong::NotAName.text()) };
        match self.asked {
            Asked::First => {
                let _ = self.first.extend_from_slice(name.as_str().as_bytes());
                self.asked = Asked::Second;
            }
            _ if Date::parse(name.as_str()).is_err() => page.line(Wrong::NotADate.text()),
            _ => {
                let first = core::str::from_utf8(&self.first).ok().and_then(|first| Name::parse(first).ok());
                if let Some(first) = first {
                    readback::of(draft, Some(&Identifiers(first, name)), page);
                }
                self.forget();
            }
        }
    }

    /// Leaves nothing of an identifier in memory.
    pub(crate) fn forget(&mut self) {
        self.first.zeroize();
        self.first.clear();
        self.asked = Asked::Nothing;
    }
}
