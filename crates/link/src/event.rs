//! What a plan or an explanation streams, with core's own types; on the line each is one message of
//! [`crate::message::Streamed`].

use ocellus_core::caution::{Caution, Code as CautionCode};
use ocellus_core::error::{Code as ErrorCode, Error};
use ocellus_core::field::{Field, Kind};
use ocellus_core::item::{Item, Part, What};
use ocellus_core::lens::Method;
use ocellus_core::sign_off::SignOff;
use ocellus_core::sink::Sink;
use ocellus_core::working::{Step, Topic};

use crate::message::*;
use crate::number::Numbered;

/// One event of a stream.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Event {
    /// A part of the card begins.
    Part(Part),
    /// An entry belongs here.
    Entry(Field),
    /// A computed number.
    Item(Item),
    /// Something to know.
    Caution(Caution),
    /// A line to tick.
    SignOff(SignOff),
    /// An intermediate value.
    Step(Step),
    /// Something is wrong with the entries, and they are no case.
    Wrong(Error),
}

impl Event {
    /// Its message, at a place of the stream.
    ///
    /// ```
    /// use ocellus_core::field::Field;
    /// use ocellus_link::event::Event;
    /// let event = Event::Entry(Field::AxialLength);
    /// assert_eq!(Event::of(&event.message(7)), Some((7, event)));
    /// ```
    pub fn message(self, index: u16) -> Streamed {
        match self {
            Event::Part(part) => PartEvent { index, part: part.number() }.into(),
            Event::Entry(field) => EntryEvent { index, field: field.number() }.into(),
            Event::Item(Item { what, method, row, value }) => {
                let (what, method) = (what.number(), Method::number_or_none(method));
                ItemEvent { index, what, method, row, value }.into()
            }
            Event::Caution(Caution { code, field, method }) => {
                let (field, method) = (Field::number_or_none(field), Method::number_or_none(method));
                CautionEvent { index, code: code.number(), field, method }.into()
            }
            Event::SignOff(line) => SignOffEvent { index, line: line.number() }.into(),
            Event::Step(Step { topic, index: step, value }) => {
                StepEvent { index, topic: topic.number(), step, value }.into()
            }
            Event::Wrong(Error { code, field, value, bounds }) => WrongEvent {
                index,
                code: code.number(),
                field: Field::number_or_none(field),
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
            Streamed::PartEvent(PartEvent { index, part }) => (index, Event::Part(Part::from_number(part)?)),
            Streamed::EntryEvent(EntryEvent { index, field }) => (index, Event::Entry(Field::from_number(field)?)),
            Streamed::ItemEvent(ItemEvent { index, what, method, row, value }) => {
                let (what, method) = (What::from_number(what)?, Method::from_number_or_none(method)?);
                (index, Event::Item(Item { what, method, row, value }))
            }
            Streamed::CautionEvent(CautionEvent { index, code, field, method }) => {
                let (field, method) = (Field::from_number_or_none(field)?, Method::from_number_or_none(method)?);
                (index, Event::Caution(Caution { code: CautionCode::from_number(code)?, field, method }))
            }
            Streamed::SignOffEvent(SignOffEvent { index, line }) => {
                (index, Event::SignOff(SignOff::from_number(line)?))
            }
            Streamed::StepEvent(StepEvent { index, topic, step, value }) => {
                let topic = Topic::from_number(topic)?;
                topic.lines().get(usize::from(step))?;
                (index, Event::Step(Step { topic, index: step, value }))
            }
            Streamed::WrongEvent(WrongEvent { index, code, field, has_value, has_bounds, value }) => {
                let code = ErrorCode::from_number(code)?;
                let field = Field::from_number_or_none(field)?;
                let bounds = match (flag(has_bounds)?, field.map(Field::kind)) {
                    (false, _) => None,
                    (true, Some(Kind::Number(_, bounds))) => Some(bounds),
                    (true, _) => return None,
                };
                (index, Event::Wrong(Error { code, field, value: flag(has_value)?.then_some(value), bounds }))
            }
        })
    }

    /// Gives it to a sink, which is how a desk prints or compares what a device computed. What is wrong with the entries
    /// is nothing that a sink takes: see [`Event::Wrong`].
    pub fn play(self, sink: &mut dyn Sink) {
        match self {
            Event::Part(part) => sink.part(part),
            Event::Entry(field) => sink.entry(field),
            Event::Item(item) => sink.item(item),
            Event::Caution(caution) => sink.caution(caution),
            Event::SignOff(line) => sink.sign_off(line),
            Event::Step(step) => sink.step(step),
            Event::Wrong(_) => {}
        }
    }
}

/// A sink that keeps everything, as a device would send it: what a desk compares a device's answer with.
///
/// ```
/// use ocellus_core::{item::Part, sink::Sink};
/// use ocellus_link::event::{Event, Events};
/// let mut events = Events::default();
/// events.part(Part::Lens);
/// assert_eq!(events.0, [Event::Part(Part::Lens)]);
/// ```
#[cfg(feature = "alloc")]
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Events(pub alloc::vec::Vec<Event>);

#[cfg(feature = "alloc")]
impl Sink for Events {
    fn part(&mut self, part: Part) {
        self.0.push(Event::Part(part));
    }

    fn entry(&mut self, field: Field) {
        self.0.push(Event::Entry(field));
    }

    fn item(&mut self, item: Item) {
        self.0.push(Event::Item(item));
    }

    fn caution(&mut self, caution: Caution) {
        self.0.push(Event::Caution(caution));
    }

    fn sign_off(&mut self, line: SignOff) {
        self.0.push(Event::SignOff(line));
    }

    fn step(&mut self, step: Step) {
        self.0.push(Event::Step(step));
    }
}

fn flag(byte: u8) -> Option<bool> {
    match byte {
        0 => Some(false),
        1 => Some(true),
        _ => None,
    }
}
