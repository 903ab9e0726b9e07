//! What stands first on a card: whose eye, what is refused, what to read before using a number.

use crate::cautions::{Cautions, Codes};
use crate::page::Page;
use ocellus_core::caution::{Caution, Code, Severity};
use ocellus_core::choice::Eye;
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::{Item, Part, What};
use ocellus_core::readback::Answers;
use ocellus_core::sink::Sink;

/// What is known of a card before a line of it is printed.
pub(crate) struct Head {
    /// The part asked for, or all.
    pub(crate) wanted: Option<Part>,
    part: Part,
    /// Those of the part asked for, and whatever is refused.
    pub(crate) cautions: Cautions,
    /// Those of the other parts.
    elsewhere: Codes,
    pub(crate) answers: Answers,
    /// Whether any method gives a power.
    pub(crate) lens: bool,
}

impl Head {
    pub(crate) fn of(wanted: Option<Part>) -> Head {
        let cautions = Cautions::new();
        Head {
            wanted,
            part: Part::Identity,
            cautions,
            elsewhere: Codes::NONE,
            answers: Answers::default(),
            lens: false,
        }
    }

    /// The head of a whole card.
    pub(crate) fn print(&self, draft: &Draft, page: &mut Page) {
        page.text(side(draft).1);
        page.text(" EYE");
        page.raw("   ");
        page.value(draft, Field::Id);
        page.end();
        page.line(Code::NotADevice.text());
        self.refusals(page);
        match self.cautions.codes(Severity::Caution).count() {
            0 => {}
            1 => page.line("One caution below: read it before using a number."),
            several => {
                page.count(several);
                page.line(" cautions below: read them before using a number.");
            }
        }
        page.line(
            "In brackets, how well a number's origin is known: read in its source; two independent roads to it; from \
             memory; common practice; chosen here. What the methods give is from memory; explain tells every step.",
        );
    }

    pub(crate) fn refusals(&self, page: &mut Page) {
        if self.cautions.refuse() {
            page.line("REFUSED: part of this card has no numbers.");
        }
        self.cautions.codes(Severity::Refuse).for_each(|code| page.paragraph("  ", code.text()));
    }

    /// How many codes to look at stand in other parts.
    pub(crate) fn elsewhere(&self) -> usize {
        let other = |code: &&Code| {
            self.elsewhere.has(**code) && code.severity() == Severity::Caution && !self.cautions.has(**code)
        };
        Code::ALL.iter().filter(other).count()
    }
}

impl Sink for Head {
    fn part(&mut self, part: Part) {
        self.part = part;
    }

    fn item(&mut self, item: Item) {
        self.answers.item(item);
        self.lens |= item.what == What::ExactPower;
    }

    fn caution(&mut self, caution: Caution) {
        self.answers.caution(caution);
        // what the methods say comes before their part
        let part = if self.part == Part::Identity { Part::Lens } else { self.part };
        if caution.code.severity() == Severity::Refuse || self.wanted.is_none_or(|wanted| wanted == part) {
            self.cautions.push(caution);
        } else {
            self.elsewhere.put(caution.code);
        }
    }
}

/// The eye, and its word in capitals.
pub(crate) fn side(draft: &Draft) -> (Eye, &'static str) {
    match draft.number(Field::Side) {
        Some(code) if code == Eye::Left.code() => (Eye::Left, "LEFT"),
        _ => (Eye::Right, "RIGHT"),
    }
}
