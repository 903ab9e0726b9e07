//! A line for tests: drafts, a board, and bytes from one end to the other.

use std::cell::Cell;

use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_link::frame::Frame;
use ocellus_link::receiver::{Received, Receiver};
use ocellus_link::respond::{Host, Responder};

/// A board whose clock ticks each time it is looked at.
#[derive(Default)]
pub(crate) struct Board(Cell<u32>);

impl Host for Board {
    fn board(&self) -> &str {
        "a board whose name is too long"
    }
    fn build(&self) -> &str {
        "0123abcd"
    }
    fn target(&self) -> &str {
        "host"
    }
    fn ticks(&self) -> u32 {
        self.0.set(self.0.get().wrapping_add(u32::MAX / 2));
        self.0.get()
    }
    fn ticks_per_second(&self) -> u32 {
        25_000_000
    }
    fn overruns(&self) -> u32 {
        3
    }
    fn stack_used(&self) -> u32 {
        2900
    }
    fn stack_size(&self) -> u32 {
        4096
    }
}

/// Every part and number that two bytes can name.
pub(crate) fn pairs() -> impl Iterator<Item = (u8, u8)> {
    (0..=u8::MAX).flat_map(|part| (0..=u8::MAX).map(move |number| (part, number)))
}

/// The bytes of a frame.
pub(crate) fn bytes(frame: &Frame) -> Vec<u8> {
    let mut bytes = Vec::new();
    frame.write(&mut |byte| bytes.push(byte));
    bytes
}

/// The frames among bytes.
pub(crate) fn frames(bytes: &[u8]) -> Vec<Frame> {
    let mut receiver = Receiver::new();
    let received = bytes.iter().map(|byte| receiver.push(*byte, 0));
    received.filter_map(|received| if let Received::Frame(frame) = received { Some(frame) } else { None }).collect()
}

/// What a device says to these bytes.
pub(crate) fn say(device: &mut Responder, said: &[u8]) -> Vec<Frame> {
    let mut answer = Vec::new();
    for byte in said {
        let typed = device.push(*byte, 0, &Board::default(), &mut |byte| answer.push(byte));
        assert_eq!(typed, None);
    }
    frames(&answer)
}

/// A demo case, read line by line: its keys are the entries' keys.
pub(crate) fn draft(text: &str) -> Draft {
    let mut draft = Draft::default();
    for line in text.lines().map(|line| line.split('#').next().unwrap().trim()) {
        if let Some((key, value)) = line.split_once(" = ") {
            draft.enter(EntryId::of_key(key).unwrap(), value.trim_matches('"')).unwrap();
        }
    }
    draft
}

/// The demo cases.
pub(crate) fn drafts() -> Vec<(String, Draft)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-data");
    let paths = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let cases = paths.filter(|path| path.extension().is_some_and(|extension| extension == "toml"));
    let drafts: Vec<_> =
        cases.map(|path| (path.display().to_string(), draft(&std::fs::read_to_string(path).unwrap()))).collect();
    assert!(drafts.len() > 5);
    drafts
}
