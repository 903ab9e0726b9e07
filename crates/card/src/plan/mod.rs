//! From a case to the theatre card: one file per part, in the order of the page.
//!
//! Everything is streamed to a [`Sink`] as it is computed; nothing is collected, so a device needs no room for a card. No
//! part is inlined or hands anything to the next, so that each gives its stack back before the next.

mod after;
mod axis;
mod backup;
mod certainty;
mod chamber;
mod constants;
mod cornea;
mod end_of_case;
mod eye;
mod hard_eyes;
mod label;
mod lens;
mod pressure;
mod rhexis;
mod risks;
mod scatter;
mod second;
mod second_eye;
mod sign_off;
mod surge;
mod thick;
mod toric_chosen;
mod tube;
mod turn;
mod wound;

pub(crate) use after::changed;
pub use after::incision_found;
pub(crate) use backup::placed as backup_placed;
pub(crate) use certainty::{at as moved, chosen as moved_lens, scatter};
pub(crate) use chamber::{known_aspiration, known_pump, known_readings, known_supply};
pub(crate) use cornea::{incisions, planned as planned_cornea, surfaces, with_back};
pub(crate) use lens::mean_power;
pub(crate) use pressure::{column_working, known_air, set_working};
pub(crate) use scatter::known as toric_scatter;
pub(crate) use second::{known as known_second, places as second_places};
pub use surge::known as surge_setup;
pub(crate) use surge::step as surge_step;
pub(crate) use thick::known as known_thick;
pub(crate) use toric_chosen::chosen_lens;
pub(crate) use tube::{known_flow, known_fluid, known_opening, known_tubes, listed as listed_tubes};
pub(crate) use turn::best as best_turn;

use crate::bench::Bench;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::draft::Draft;
use crate::field::{Field, FieldSet, Section};
use crate::item::{Item, Part};
use crate::sink::Sink;

/// Streams the whole card of a case.
///
/// ```
/// use ocellus_core::{case::Case, caution::Caution, draft::Draft, field::Field, item::Item, plan::plan, sink::Sink};
/// struct Count(usize);
/// impl Sink for Count {
///     fn item(&mut self, item: Item) { assert!(item.value.is_finite()); self.0 += 1; }
///     fn caution(&mut self, _: Caution) {}
/// }
/// let mut draft = Draft::default();
/// for (field, text) in [
///     (Field::Side, "right"), (Field::AxialLength, "23.50"), (Field::K1, "43.25"), (Field::K2, "44.00"),
///     (Field::KKind, "keratometric"), (Field::AlMethod, "optical"), (Field::EyeState, "phakic"),
///     (Field::PreviousSurgery, "none"), (Field::Target, "-0.25"), (Field::AConstant, "118.9"),
/// ] {
///     draft.enter(field, text)?;
/// }
/// let mut count = Count(0);
/// plan(&Case::try_from(&draft)?, &mut count);
/// assert!(count.0 > 50);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn plan(case: &Case, sink: &mut dyn Sink) {
    let mut noting = Noting { sink, shown: FieldSet::NONE };
    let sink = &mut noting;
    sink.part(Part::Identity);
    entries(case.draft(), sink, &[Field::Id, Field::Side, Field::SurgeryDate]);
    lens::plan(case, sink);
    certainty::plan(case, sink);
    second_eye::plan(case, sink);
    second::plan(case, sink);
    thick::plan(case, sink);
    backup::plan(case, sink);
    cornea::plan(case, sink);
    axis::plan(case, sink);
    turn::plan(case, sink);
    wound::plan(case, sink);
    rhexis::plan(case, sink);
    fluids(&case.bench, sink);
    end_of_case::plan(case, sink);
    after::plan(case, sink);
    risks::plan(case, sink);
    eye::plan(case, sink);
    noting.unused(case.draft());
    sign_off::plan(case, noting.sink);
    noting.sink.caution(Caution::general(Code::NotADevice));
}

/// Streams the card of a set-up without an eye.
///
/// ```
/// use ocellus_core::{bench::Bench, caution::Caution, draft::Draft, field::Field, item::{Item, What}, plan, sink::Sink};
/// struct Ceiling(f64);
/// impl Sink for Ceiling {
///     fn item(&mut self, item: Item) { if item.what == What::Ceiling { self.0 = item.value; } }
///     fn caution(&mut self, _: Caution) {}
/// }
/// let mut draft = Draft::default();
/// draft.enter(Field::Altitude, "1609")?;
/// let mut ceiling = Ceiling(0.0);
/// plan::plan_bench(&Bench::check(&draft, &mut |_| {}).unwrap(), &mut ceiling);
/// assert!((ceiling.0 - 608.3).abs() < 0.05);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn plan_bench(bench: &Bench, sink: &mut dyn Sink) {
    let mut noting = Noting { sink, shown: FieldSet::NONE };
    noting.part(Part::SetUp);
    entries(bench.draft(), &mut noting, &[Field::Id, Field::Side, Field::SurgeryDate]);
    fluids(bench, &mut noting);
    noting.unused(bench.draft());
    noting.sink.caution(Caution::general(Code::NotADevice));
}

/// The parts that need no eye.
fn fluids(bench: &Bench, sink: &mut dyn Sink) {
    // a needle by itself has no column and no air
    let of_pressure = |field: &Field| field.section() == Section::Pressure && bench.draft().has(*field);
    if !Bench::alone(bench.draft()) || Field::ALL.iter().any(of_pressure) {
        pressure::plan(bench, sink);
    }
    chamber::plan(bench, sink);
    surge::plan(bench, sink);
    tube::plan(bench, sink);
}

/// Passes everything on and notes which entries were shown: what two people compare must all be on the card.
struct Noting<'a> {
    sink: &'a mut dyn Sink,
    shown: FieldSet,
}

impl Noting<'_> {
    /// Shows the entries that no part has shown.
    fn unused(&mut self, draft: &Draft) {
        let unused = |field: &&Field| !self.shown.has(**field) && draft.has(**field);
        let mut unused = Field::ALL.iter().filter(unused).peekable();
        if unused.peek().is_some() {
            self.sink.part(Part::Unused);
            unused.for_each(|field| self.sink.entry(*field));
            self.sink.caution(Caution::general(Code::Unused));
        }
    }
}

impl Sink for Noting<'_> {
    fn part(&mut self, part: Part) {
        self.sink.part(part);
    }

    fn entry(&mut self, field: Field) {
        self.shown.put(field, true);
        self.sink.entry(field);
    }

    fn item(&mut self, item: Item) {
        self.sink.item(item);
    }

    fn caution(&mut self, caution: Caution) {
        self.sink.caution(caution);
    }
}

/// Shows an entry that is one of a few words; a word that is the usual one speaks for itself.
fn choice_entries(case: &Case, sink: &mut dyn Sink, field: Field) {
    if case.draft().has(field) || field.default().is_some() {
        sink.entry(field);
    }
}

/// Shows the entries that were made, and says of those left to their default that they were.
fn entries(draft: &Draft, sink: &mut dyn Sink, fields: &[Field]) {
    for &field in fields {
        if draft.has(field) {
            sink.entry(field);
        } else if field.default().is_some() {
            sink.entry(field);
            sink.caution(Caution::about(Code::DefaultUsed, field));
        }
    }
}
