//! The conversation on any bytes, typed and pasted: it never panics, prints plain text that fits the screen, and takes
//! nothing that lies outside its range.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;
use ocellus_console::{Air, Around, Console};

/// A machine on which an eighth of a second passes between two bytes, with a barometer that says anything.
struct Machine {
    now: u32,
    hpa: f64,
}

impl Around for Machine {
    fn millis(&self) -> u32 {
        self.now
    }

    fn air(&self) -> Air {
        Air::Measured { hpa: self.hpa, celsius: 20.0 }
    }
}

/// An eye, a lens and a surge, so that a few bytes are enough to plan.
const USUAL: &[u8] = b"eye left\ral 23.50\rk1 43.50 @ 5\rk2 44.50 @ 95\rkkind keratometric\ralmethod optical\r\
    state phakic\rsurgery none\rtarget -0.25\ra 118.4\riol 21.5\rsite 180\rsia 0.2\rcut 2.5\r\
    open 90\reyelevel 0\rpumpkind flow\raspiration 30\rrin 0.2\rrasp 6\rnucleus 400\rceye 1\rctube 0.09\r";

fuzz_target!(|input: (bool, u16, &[u8])| {
    let (paste, hpa, bytes) = input;
    let mut machine = Machine { now: 0, hpa: f64::from(hpa) };
    // its own terminal echoes: what comes back is answers alone
    let (mut console, mut said) = (Console::without_echo(), String::new());
    USUAL.iter().for_each(|byte| console.byte(*byte, 0, &machine, &mut |_| {}));
    for (place, byte) in bytes.iter().enumerate() {
        let waiting = if paste { bytes.len() - 1 - place } else { 0 };
        console.byte(*byte, waiting, &machine, &mut |text| said.push_str(text));
        machine.now += 125;
        console.tick(&machine, &mut |text| said.push_str(text));
    }
    assert!(said.bytes().all(|byte| matches!(byte, b' '..=b'~' | b'\r' | b'\n')), "{said:?}");
    // a prompt and its unseen answer share a line
    assert!(said.lines().all(|line| line.rsplit("ocellus> ").next().is_some_and(|line| line.len() <= 110)), "{said}");
    for entry in EntryId::all() {
        if let (Some(value), Kind::Number(_, bounds)) = (console.draft().number(entry), entry.kind()) {
            assert!(bounds.check(value).is_ok(), "{} {value}", entry.key());
        }
    }
});
