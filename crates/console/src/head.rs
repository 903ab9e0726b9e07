//! What stands first on a card: whose eye, what is refused, what to read before using a number.

use crate::cautions::Cautions;
use crate::page::Page;
use ocellus_core::bench::Bench;
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
    /// All there are, but of the notes only those of the part asked for.
    pub(crate) cautions: Cautions,
    pub(crate) answers: Answers,
    /// Whether any method gives a power.
    pub(crate) lens: bool,
}

impl Head {
    pub(crate) fn of(wanted: Option<Part>) -> Head {
        let cautions = Cautions::new();
        Head { wanted, part: Part::Identity, cautions, answers: Answers::default(), lens: false }
    }

    /// The head of a whole card.
    pub(crate) fn print(&self, draft: &Draft, page: &mut Page) {
        if Bench::alone(draft) {
            page.text("SET-UP OF FLUIDS, WITHOUT AN EYE");
        } else {
            page.text(side(draft));
            page.text(" EYE");
        }
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
        // what bears on one part may be said of another: only notes are left to their own
        if caution.code.severity() != Severity::Note || self.wanted.is_none_or(|wanted| wanted == self.part) {
            self.cautions.push(caution);
        }
    }
}

/// The eye of the case; right where it is a set-up of fluids without one, which tells of none.
pub(crate) fn eye(draft: &Draft) -> Eye {
    if draft.number(Field::Side) == Some(Eye::Left.code()) { Eye::Left } else { Eye::Right }
}

/// Its word in capitals.
pub(crate) fn capitals(eye: Eye) -> &'static str {
    match eye {
        Eye::Left => "LEFT",
        Eye::Right => "RIGHT",
    }
}

/// The word of the eye that a card is of; empty where it is of a set-up of fluids.
pub(crate) fn side(draft: &Draft) -> &'static str {
    if Bench::alone(draft) { "" } else { capitals(eye(draft)) }
}
