//! A stream on its way: every event in a frame of its own, counted and summed at both ends.

use crc::{Digest, NoTable};
use ocellus_core::caution::Caution;
use ocellus_core::field::Field;
use ocellus_core::item::{Item, Part};
use ocellus_core::sign_off::SignOff;
use ocellus_core::sink::Sink;
use ocellus_core::working::Step;

use crate::code::Outcome;
use crate::event::Event;
use crate::frame::{self, Frame};
use crate::message::Done;

/// How many events there were, and the sum over them.
#[derive(Clone)]
pub(crate) struct Sum {
    pub(crate) count: u16,
    crc: Digest<'static, u32, NoTable>,
}

impl Sum {
    pub(crate) fn new() -> Sum {
        Sum { count: 0, crc: frame::sum() }
    }

    pub(crate) fn add(&mut self, event: &Frame) {
        self.count = self.count.wrapping_add(1);
        self.crc.update(&[event.kind()]);
        self.crc.update(event.payload());
    }

    pub(crate) fn done(mut self, outcome: u8) -> Done {
        self.crc.update(&[outcome]);
        Done { count: self.count, crc: self.crc.finalize(), outcome }
    }
}

/// A sink that sends.
pub(crate) struct Stream<'a> {
    sequence: u8,
    sum: Sum,
    send: &'a mut dyn FnMut(u8),
}

impl<'a> Stream<'a> {
    pub(crate) fn new(sequence: u8, send: &'a mut dyn FnMut(u8)) -> Stream<'a> {
        Stream { sequence, sum: Sum::new(), send }
    }

    pub(crate) fn event(&mut self, event: Event) {
        let frame = event.message(self.sum.count).frame(self.sequence);
        self.sum.add(&frame);
        frame.write(self.send);
    }

    pub(crate) fn done(self, outcome: Outcome) -> Done {
        self.sum.done(outcome.number())
    }
}

impl Sink for Stream<'_> {
    fn part(&mut self, part: Part) {
        self.event(Event::Part(part));
    }

    fn entry(&mut self, field: Field) {
        self.event(Event::Entry(field));
    }

    fn item(&mut self, item: Item) {
        self.event(Event::Item(item));
    }

    fn caution(&mut self, caution: Caution) {
        self.event(Event::Caution(caution));
    }

    fn sign_off(&mut self, line: SignOff) {
        self.event(Event::SignOff(line));
    }

    fn step(&mut self, step: Step) {
        self.event(Event::Step(step));
    }
}
