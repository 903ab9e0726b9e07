//! A stream on its way: every event in a frame of its own, counted and summed at both ends.

use crate::code::Outcome;
use crate::crc32::Crc32;
use crate::event::{Event, Takes};
use crate::frame::Frame;
use crate::message::Done;

/// How many events there were, and the sum over them.
#[derive(Clone)]
pub(crate) struct Sum {
    pub(crate) count: u16,
    crc: Crc32,
}

impl Sum {
    pub(crate) fn new() -> Sum {
        Sum { count: 0, crc: Crc32::new() }
    }

    pub(crate) fn add(&mut self, event: &Frame) {
        self.count = self.count.wrapping_add(1);
        self.crc.update(&[event.kind()]);
        self.crc.update(event.payload());
    }

    pub(crate) fn done(mut self, outcome: u8) -> Done {
        self.crc.update(&[outcome]);
        Done { count: self.count, crc: self.crc.finish(), outcome }
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

impl Takes for Stream<'_> {
    fn take(&mut self, event: Event) {
        self.event(event);
    }
}
