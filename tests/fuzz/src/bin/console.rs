//! The conversation on any bytes, typed and pasted: it never panics, prints plain text that fits the screen, and takes
//! nothing that lies outside its range.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_console::Console;
use ocellus_core::field::{Field, Kind};

/// An eye and a lens, so that a few bytes are enough to plan.
const USUAL: &[u8] = b"eye left\ral 23.50\rk1 43.50 @ 5\rk2 44.50 @ 95\rkkind keratometric\ralmethod optical\r\
    state phakic\rsurgery none\rtarget -0.25\ra 118.4\riol 21.5\rsite 180\rsia 0.2\rcut 2.5\r";

fuzz_target!(|input: (bool, &[u8])| {
    let (paste, bytes) = input;
    // its own terminal echoes: what comes back is answers alone
    let (mut console, mut said) = (Console::without_echo(), String::new());
    USUAL.iter().for_each(|byte| console.byte(*byte, 0, &mut |_| {}));
    for (place, byte) in bytes.iter().enumerate() {
        let waiting = if paste { bytes.len() - 1 - place } else { 0 };
        console.byte(*byte, waiting, &mut |text| said.push_str(text));
    }
    assert!(said.bytes().all(|byte| matches!(byte, b' '..=b'~' | b'\r' | b'\n')), "{said:?}");
    // a prompt and its unseen answer share a line
    assert!(said.lines().all(|line| line.rsplit("ocellus> ").next().is_some_and(|line| line.len() <= 110)), "{said}");
    for field in Field::ALL {
        if let (Some(value), Kind::Number(_, bounds)) = (console.draft().number(*field), field.kind()) {
            assert!(bounds.check(value).is_ok(), "{field:?} {value}");
        }
    }
});
