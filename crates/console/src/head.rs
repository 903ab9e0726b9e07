//! What stands first on a card: whose eye, what is refused, what to read before using a number.

use crate::cautions::Cautions;
use crate::page::Page;
use ocellus_card::case::is_set_up;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::cautions::NOT_A_DEVICE;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::id::PartId;
use ocellus_card::item::Item;
use ocellus_card::readback::Answers;
use ocellus_card::sink::Sink;
use ocellus_core::astigmatism::site::Side;
use ocellus_core::working::Steps;
use ocellus_text::text;

/// What is printed of a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// All of it.
    All,
    /// One part.
    Part(PartId),
    /// What is needed at the table.
    Short,
}

/// What is known of a card before a line of it is printed.
pub(crate) struct Head {
    pub(crate) wanted: Wanted,
    part: PartId,
    /// All there are, but of the notes only those of the part asked for.
    pub(crate) cautions: Cautions,
    pub(crate) answers: Answers,
    /// A bit for each part that gave the number without which it says why.
    given: u64,
}

impl Head {
    pub(crate) fn of(wanted: Wanted) -> Head {
        Head { wanted, part: PartId(0), cautions: Cautions::new(), answers: Answers::default(), given: 0 }
    }

    /// Whether a part gave the number without which it says why.
    pub(crate) fn is_given(&self, part: PartId) -> bool {
        self.given >> part.0 & 1 != 0
    }

    /// The head of a whole card.
    pub(crate) fn print(&self, draft: &Draft, page: &mut Page) {
        page.bold(true);
        if is_set_up(draft) {
            page.text(text!("SET-UP OF FLUIDS, WITHOUT AN EYE"));
        } else {
            page.text(side(draft));
            page.text(" EYE");
        }
        page.bold(false);
        page.raw("   ");
        page.value(draft, entries::ID);
        page.end();
        if let Some(desk) = page.desk.filter(|_| !is_set_up(draft)) {
            page.raw(desk.patient);
            page.end();
        }
        page.line(NOT_A_DEVICE.text());
        self.refusals(page);
        match self.cautions.of(Severity::Caution).count() {
            0 => {}
            1 => page.line(text!("One caution below: read it before using a number.")),
            several => {
                page.count(several);
                page.line(text!(" cautions below: read them before using a number."));
            }
        }
        page.line(text!(
            "In brackets, how well the origin of a number is known: read in its source; found in two independent ways; from \
             memory; common practice; chosen here. What the methods give is from memory; explain shows every step."
        ));
    }

    pub(crate) fn refusals(&self, page: &mut Page) {
        if self.cautions.refuse() {
            page.bold(true);
            page.text(text!("REFUSED: part of this card has no numbers."));
            page.bold(false);
            page.end();
        }
        self.cautions.of(Severity::Refuse).for_each(|code| page.paragraph("  ", code.text()));
    }
}

impl Steps for Head {}

impl Sink for Head {
    fn part(&mut self, part: PartId) {
        self.part = part;
    }

    fn item(&mut self, item: Item) {
        self.answers.item(item);
        let part = item.what.part();
        if part.without().is_some_and(|(what, _)| what == item.what) {
            self.given |= 1 << part.0;
        }
    }

    fn caution(&mut self, caution: Caution) {
        self.answers.caution(caution);
        // what bears on one part may be said of another: only notes are left to their own
        let is_here = match self.wanted {
            Wanted::Part(wanted) => wanted == self.part,
            Wanted::All => true,
            Wanted::Short => false,
        };
        if caution.code.severity() != Severity::Note || is_here {
            self.cautions.push(caution);
        }
    }
}

/// The eye of the case; right where it is a set-up of fluids without one, which shows none.
pub(crate) fn eye(draft: &Draft) -> Side {
    if draft.number(entries::SIDE) == Some(Side::Left.code()) { Side::Left } else { Side::Right }
}

/// Its word in capitals.
pub(crate) fn capitals(eye: Side) -> &'static str {
    match eye {
        Side::Left => "LEFT",
        Side::Right => "RIGHT",
    }
}

/// The word of the eye that a card is of; empty where it is of a set-up of fluids.
pub(crate) fn side(draft: &Draft) -> &'static str {
    if is_set_up(draft) { "" } else { capitals(eye(draft)) }
}
