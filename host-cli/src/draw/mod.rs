//! Drawings as SVG: an eye as the surgeon sees it from the seat, and curves. Every number printed is the card's.

mod axis;
mod eye;
mod off_axis;
pub mod plot;
mod strip;
mod surge;
mod turn;

use crate::problem::Problem;
use crate::text;
use clap::ValueEnum;
use ocellus_card::Known;
use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::cautions::NOT_A_DEVICE;
use ocellus_card::draft::Draft;
use ocellus_card::id::{CautionId, EntryId, ItemId};
use ocellus_card::item::Item;
use ocellus_card::readback::Answers;
use ocellus_card::sink::Sink;
use ocellus_core::lens::method::Method;
use ocellus_core::working::Steps;

/// What can be drawn of a case.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Picture {
    /// The toric lens on the eye: incision, steep meridian, mark, from the stated seat
    Axis,
    /// A lens that sits wrong: before, the best turn, after
    Turn,
    /// What the lens chosen leaves, turn by turn
    OffAxis,
    /// Chamber and line after an occlusion breaks: an illustration
    Surge,
    /// The strip chart of `strip run`, as curves: an illustration
    Strip,
}

/// The picture as SVG; what the case lacks for it is reported.
///
/// # Errors
/// Where there is nothing to draw.
pub fn draw(picture: Picture, case: &Case) -> Result<String, Vec<Problem>> {
    let seen = Seen::of(case);
    let drawn = match picture {
        Picture::Axis => axis::draw(&seen),
        Picture::Turn => turn::draw(&seen),
        Picture::OffAxis => off_axis::draw(&seen),
        Picture::Surge => surge::draw(&seen),
        Picture::Strip => strip::draw(&seen),
    };
    drawn.map_err(|needs| vec![Problem::of_file("nothing to draw", "the case lacks what this picture shows", needs)])
}

/// A case and the numbers of its card.
struct Seen<'a> {
    draft: &'a Draft,
    items: Vec<Item>,
    cautions: Vec<CautionId>,
    answers: Answers,
}

impl<'a> Seen<'a> {
    fn of(case: &Case<'a>) -> Seen<'a> {
        let mut seen =
            Seen { draft: case.draft(), items: Vec::new(), cautions: Vec::new(), answers: Answers::default() };
        case.plan(&mut seen);
        seen
    }

    fn item(&self, what: ItemId) -> Option<&Item> {
        self.items.iter().find(|item| item.what == what)
    }

    fn get(&self, what: ItemId) -> Option<f64> {
        self.item(what).map(|item| item.value)
    }

    /// A number of the card as the card prints it.
    fn printed(&self, what: ItemId) -> Option<String> {
        self.get(what).map(|value| text::number(value, what.places(), what.signed(), what.unit()))
    }

    /// The method of a picture: the first that the card shows.
    fn method(&self, what: ItemId) -> &'static str {
        self.item(what).and_then(|item| item.method).map_or("", Method::name)
    }

    /// What is known of the fluids alone.
    fn of_fluids<T>(&self, ask: impl FnOnce(&Known) -> Option<T>) -> Option<T> {
        Case::check_set_up(self.draft, &mut |_| {})?.known(ask)
    }

    fn entry(&self, entry: impl Into<EntryId>) -> Option<f64> {
        self.draft.number(entry)
    }

    /// What is said under every picture.
    fn foot(&self) -> Vec<String> {
        let severe = |severity| self.cautions.iter().filter(|code| code.severity() == severity).count();
        let count = severe(Severity::Caution) + severe(Severity::Refuse);
        // none where an entry has more decimals than can be typed
        let code = self.answers.code(self.draft, None);
        let code = code.map_or(String::new(), |code| format!("Read-back {}. ", code.as_str()));
        let cautions = match count {
            0 => String::new(),
            1 => "One caution stands on the card of this case: read it first. ".to_owned(),
            count => format!("{count} cautions stand on the card of this case: read them first. "),
        };
        vec![format!("{code}{cautions}"), NOT_A_DEVICE.text().to_string()]
    }
}

impl Steps for Seen<'_> {}

impl Sink for Seen<'_> {
    fn item(&mut self, item: Item) {
        self.answers.item(item);
        self.items.push(item);
    }

    fn caution(&mut self, caution: Caution) {
        self.answers.caution(caution);
        if !self.cautions.contains(&caution.code) && caution.code != NOT_A_DEVICE {
            self.cautions.push(caution.code);
        }
    }
}
