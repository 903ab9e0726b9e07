//! Everything that a case streams, kept to be compared; numbers by their bits.

use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::cautions::UNUSED;
use ocellus_card::draft::Draft;
use ocellus_card::id::{EntryId, PartId, SignOffId};
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_card::workings;
use ocellus_core::working::{Step, Steps};

/// A step: the numbers of its table, its place there, its value.
pub(crate) type StepBits = ((u8, u8), u8, u64);

/// What was streamed, each in its order.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Stream {
    /// The parts, and the entries shown in each.
    pub(crate) parts: Vec<(PartId, Vec<EntryId>)>,
    pub(crate) lacks: Vec<EntryId>,
    pub(crate) items: Vec<(Item, u64)>,
    pub(crate) steps: Vec<StepBits>,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) sign_offs: Vec<SignOffId>,
    /// Whether an explanation said that there were steps.
    pub(crate) explained: bool,
}

impl Stream {
    /// The card of a valid draft.
    pub(crate) fn card(draft: &Draft) -> Stream {
        let mut stream = Stream::default();
        Case::try_from(draft).unwrap().plan(&mut stream);
        stream
    }

    /// How a valid draft explains a subject.
    pub(crate) fn working(draft: &Draft, subject: Subject) -> Stream {
        let mut stream = Stream::default();
        stream.explained = Case::try_from(draft).unwrap().explain(subject, &mut stream);
        stream
    }

    /// With no sign on any number that is nothing: two equal meridians have no order, and so it has no meaning.
    pub(crate) fn plain_zeros(mut self) -> Stream {
        self.items.iter_mut().for_each(|(item, bits)| *bits = (item.value + 0.0).to_bits());
        self
    }

    /// What this has and the other has not, to be read by people.
    pub(crate) fn but_not(&self, other: &Stream) -> Vec<String> {
        let others = other.lines();
        self.lines().into_iter().filter(|line| !others.contains(line)).collect()
    }

    /// Parts, numbers, cautions and lines to tick, as text.
    fn lines(&self) -> Vec<String> {
        let key = |entry: &EntryId| entry.key().to_string();
        let part = |(part, entries): &(PartId, Vec<EntryId>)| {
            format!("part {} with {}", part.key(), entries.iter().map(key).collect::<Vec<_>>().join(" "))
        };
        let item = |(item, _): &(Item, u64)| {
            format!("{} of {:?} in {} = {:?}", item.what.key(), item.method, item.row, item.value)
        };
        let caution = |caution: &Caution| {
            format!("{} of {:?} about {:?}", caution.code.word(), caution.method, caution.entry.as_ref().map(key))
        };
        let lines = self.parts.iter().map(part).chain(self.items.iter().map(item));
        let lines = lines.chain(self.cautions.iter().map(caution));
        lines.chain(self.sign_offs.iter().map(|line| format!("tick {}", line.key()))).collect()
    }

    /// Every entry shown.
    pub(crate) fn entries(&self) -> impl Iterator<Item = EntryId> + '_ {
        self.parts.iter().flat_map(|(_, entries)| entries).copied()
    }

    /// The entries shown as used for nothing.
    pub(crate) fn unused(&self) -> Vec<EntryId> {
        let of = self.parts.iter().filter(|(part, _)| *part == UNUSED.part());
        of.flat_map(|(_, entries)| entries).copied().collect()
    }
}

impl Steps for Stream {
    fn step(&mut self, step: Step) {
        assert!(step.value.is_finite() && step.line().is_some(), "{step:?}");
        let table = workings::numbers(step.table).unwrap_or_else(|| panic!("no part has the table of {step:?}"));
        self.steps.push((table, step.index, step.value.to_bits()));
    }
}

impl Sink for Stream {
    fn part(&mut self, part: PartId) {
        self.parts.push((part, Vec::new()));
    }

    fn entry(&mut self, entry: EntryId) {
        // an explanation has no parts
        if self.parts.is_empty() {
            self.part(entry.part());
        }
        self.parts.last_mut().unwrap().1.push(entry);
    }

    fn lacks(&mut self, entry: EntryId) {
        self.lacks.push(entry);
    }

    fn item(&mut self, item: Item) {
        assert!(item.value.is_finite(), "{item:?}");
        self.items.push((item, item.value.to_bits()));
    }

    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }

    fn sign_off(&mut self, line: SignOffId) {
        self.sign_offs.push(line);
    }
}
