//! What a plan or an explanation streams, with the card's own types; on the line each is one message of
//! [`crate::message::Streamed`].

use ocellus_card::caution::Caution;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_card::workings;
use ocellus_core::lens::method::Method;
use ocellus_core::working::{Step, Steps};

use crate::message::*;
use crate::number::Numbered;

/// One event of a stream.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Event {
    /// A part of the card begins.
    Part(PartId),
    /// An entry belongs here.
    Entry(EntryId),
    /// An entry was asked for and is not there.
    Lacks(EntryId),
    /// A computed number.
    Item(Item),
    /// Something to know.
    Caution(Caution),
    /// A line to tick.
    SignOff(SignOffId),
    /// An intermediate value.
    Step(Step),
    /// Something is wrong with the entries, and they are not a case.
    Wrong(Error),
}

impl Event {
    /// Its message, at a place of the stream.
    ///
    /// ```
    /// use ocellus_card::entries;
    /// use ocellus_link::event::Event;
    /// let event = Event::Entry(entries::AXIAL_LENGTH.id());
    /// assert_eq!(Event::of(&event.message(7)), Some((7, event)));
    /// ```
    pub fn message(self, index: u16) -> Streamed {
        match self {
            Event::Part(part) => PartEvent { index, part: part.0 }.into(),
            Event::Entry(entry) => EntryEvent { index, part: entry.part().0, entry: entry.number() }.into(),
            Event::Lacks(entry) => LacksEvent { index, part: entry.part().0, entry: entry.number() }.into(),
            Event::Item(Item { what, method, row, value }) => {
                let (part, method) = (what.part().0, Method::number_or_none(method));
                ItemEvent { index, part, what: what.number(), method, row, value }.into()
            }
            Event::Caution(Caution { code, entry, method }) => {
                let (entry_part, entry) = entry.map_or((0, 0), |entry| (entry.part().0, entry.number()));
                let (part, method) = (code.part().0, Method::number_or_none(method));
                CautionEvent { index, part, code: code.number(), entry_part, entry, method }.into()
            }
            Event::SignOff(line) => SignOffEvent { index, part: line.part().0, line: line.number() }.into(),
            Event::Step(Step { table, index: step, value }) => {
                // every table that a part or a method shows has its numbers
                let (part, table) = workings::numbers(table).unwrap_or((u8::MAX, u8::MAX));
                StepEvent { index, part, table, step, value }.into()
            }
            Event::Wrong(Error { wrong, entry, value, bounds }) => WrongEvent {
                index,
                code: wrong.number(),
                part: entry.part().0,
                entry: entry.number(),
                has_value: value.is_some().into(),
                has_bounds: bounds.is_some().into(),
                value: value.unwrap_or(0.0),
            }
            .into(),
        }
    }

    /// The place in the stream and the event of a message; nothing where one of its numbers means nothing here.
    pub fn of(message: &Streamed) -> Option<(u16, Event)> {
        Some(match *message {
            Streamed::PartEvent(PartEvent { index, part }) => {
                (index, Event::Part(Some(PartId(part)).filter(|part| part.is_there())?))
            }
            Streamed::EntryEvent(EntryEvent { index, part, entry }) => {
                (index, Event::Entry(EntryId::find(part, entry)?))
            }
            Streamed::LacksEvent(LacksEvent { index, part, entry }) => {
                (index, Event::Lacks(EntryId::find(part, entry)?))
            }
            Streamed::ItemEvent(ItemEvent { index, part, what, method, row, value }) => {
                let (what, method) = (ItemId::find(part, what)?, Method::from_number_or_none(method)?);
                (index, Event::Item(Item { what, method, row, value }))
            }
            Streamed::CautionEvent(CautionEvent { index, part, code, entry_part, entry, method }) => {
                let entry = match (entry_part, entry) {
                    (0, 0) => None,
                    (part, entry) => Some(EntryId::find(part, entry)?),
                };
                let (code, method) = (CautionId::find(part, code)?, Method::from_number_or_none(method)?);
                (index, Event::Caution(Caution { code, entry, method }))
            }
            Streamed::SignOffEvent(SignOffEvent { index, part, line }) => {
                (index, Event::SignOff(SignOffId::find(part, line)?))
            }
            Streamed::StepEvent(StepEvent { index, part, table, step, value }) => {
                let of = workings::find((part, table)).filter(|of| usize::from(step) < of.count())?;
                // a table that two methods share goes by one number, the smaller
                workings::numbers(of).filter(|numbers| *numbers == (part, table))?;
                (index, Event::Step(Step { table: of, index: step, value }))
            }
            Streamed::WrongEvent(WrongEvent { index, code, part, entry, has_value, has_bounds, value }) => {
                let (wrong, entry) = (Wrong::from_number(code)?, EntryId::find(part, entry)?);
                let bounds = match (flag(has_bounds)?, entry.kind()) {
                    (false, _) => None,
                    (true, Kind::Number(_, bounds)) => Some(bounds),
                    (true, _) => return None,
                };
                (index, Event::Wrong(Error { wrong, entry, value: flag(has_value)?.then_some(value), bounds }))
            }
        })
    }

    /// Gives it to a sink, which is how a desk prints or compares what a device computed. What is wrong with the entries
    /// is nothing that a sink takes: see [`Event::Wrong`].
    pub fn play(self, sink: &mut dyn Sink) {
        match self {
            Event::Part(part) => sink.part(part),
            Event::Entry(entry) => sink.entry(entry),
            Event::Lacks(entry) => sink.lacks(entry),
            Event::Item(item) => sink.item(item),
            Event::Caution(caution) => sink.caution(caution),
            Event::SignOff(line) => sink.sign_off(line),
            Event::Step(step) => sink.step(step),
            Event::Wrong(_) => {}
        }
    }
}

/// What takes events one by one is a sink.
pub(crate) trait Takes {
    /// The next event.
    fn take(&mut self, event: Event);
}

macro_rules! sink_of_events {
    ($type:ty) => {
        impl Steps for $type {
            fn step(&mut self, step: Step) {
                self.take(Event::Step(step));
            }
        }

        impl Sink for $type {
            fn part(&mut self, part: PartId) {
                self.take(Event::Part(part));
            }

            fn entry(&mut self, entry: EntryId) {
                self.take(Event::Entry(entry));
            }

            fn lacks(&mut self, entry: EntryId) {
                self.take(Event::Lacks(entry));
            }

            fn item(&mut self, item: Item) {
                self.take(Event::Item(item));
            }

            fn caution(&mut self, caution: Caution) {
                self.take(Event::Caution(caution));
            }

            fn sign_off(&mut self, line: SignOffId) {
                self.take(Event::SignOff(line));
            }
        }
    };
}

sink_of_events!(crate::stream::Stream<'_>);
sink_of_events!(crate::respond::Count);
#[cfg(feature = "alloc")]
sink_of_events!(Events);

/// A sink that keeps everything, as a device would send it: what a desk compares a device's answer with.
///
/// ```
/// use ocellus_card::{id::PartId, sink::Sink};
/// use ocellus_link::event::{Event, Events};
/// let mut events = Events::default();
/// events.part(PartId(6));
/// assert_eq!(events.0, [Event::Part(PartId(6))]);
/// ```
#[cfg(feature = "alloc")]
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Events(pub alloc::vec::Vec<Event>);

#[cfg(feature = "alloc")]
impl Takes for Events {
    fn take(&mut self, event: Event) {
        self.0.push(event);
    }
}

fn flag(byte: u8) -> Option<bool> {
    match byte {
        0 => Some(false),
        1 => Some(true),
        _ => None,
    }
}
