//! What must hold of any device, on this machine or in an emulator.

use crate::faults::{Damage, Faulty};
use ocellus_card::case::Case;
use ocellus_card::draft::{Draft, with_text};
use ocellus_card::id::EntryId;
use ocellus_card::readback;
use ocellus_cli::case_file;
use ocellus_cli::device::compare::Comparison;
use ocellus_cli::device::line::{Line, Trouble};
use ocellus_cli::device::port::{self, Port};
use ocellus_console::{Around, Console, PROMPTS};
use std::fs;
use std::io::Write;
use std::path::PathBuf;
use std::sync::atomic::Ordering;
use std::thread::sleep;
use std::time::{Duration, Instant};

/// The case files meant to be planned, those of set-ups without an eye too.
pub fn demo_cases() -> Vec<PathBuf> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data");
    let folders = [PathBuf::from(folder), PathBuf::from(folder).join("fluids")];
    let files = folders.into_iter().flat_map(|folder| fs::read_dir(folder).expect("demo-data"));
    let files = files.map(|entry| entry.expect("a file of demo-data").path());
    let mut cases: Vec<_> = files.filter(|path| path.extension().is_some_and(|end| end == "toml")).collect();
    cases.sort();
    cases
}

/// The entries of a case file.
pub fn demo_draft(path: &std::path::Path) -> Draft {
    let bytes = fs::read(path).expect("a case file");
    case_file::case("demo", &bytes, None).unwrap_or_else(|problems| panic!("{}: {}", path.display(), problems[0]))
}

/// A fresh line to a device.
pub fn open(port: &str) -> Line {
    Line::open(port::open(port).expect("a port")).unwrap_or_else(|trouble| panic!("{port}: {trouble}"))
}

/// Every number of these cases is the same there and here.
pub fn compare(port: &str, drafts: impl Iterator<Item = Draft>) -> Comparison {
    let (mut line, mut comparison) = (open(port), Comparison::default());
    comparison.units(&mut line).expect("an answer");
    for (place, draft) in drafts.enumerate() {
        comparison.case(&format!("case {place}"), &draft, &mut line).expect("an answer");
    }
    assert_eq!(comparison.differences, Vec::<String>::new());
    comparison
}

/// Over a line that damages bytes both ways until that many are damaged and a case has come through, or ten times as many
/// and none has: no wrong number, and it always comes back.
pub fn survives_damage(port: &str, seed: u64, damaged: u64) -> Comparison {
    let (there, back) = (Damage::new(seed, 400), Damage::new(seed + 1, 4000));
    // a card is some ten thousand bytes, and is asked for again where one of them is damaged
    let counts = [there.done(), back.done()];
    let done = || counts.iter().map(|count| count.load(Ordering::Relaxed)).sum::<u64>();
    let mut faulty: Option<Box<dyn Port>> = Some(Box::new(Faulty::new(port::open(port).expect("a port"), there, back)));
    let drafts: Vec<Draft> = demo_cases().iter().map(|path| demo_draft(path)).collect();
    let mut comparison = Comparison::default();
    // the line is opened once: what was damaged before is still on it
    let mut line = Line::open(faulty.take().expect("a port")).expect("an answer in the end").patient(PATIENCE);
    for draft in drafts.iter().cycle() {
        if done() >= damaged && comparison.cases > 0 || done() >= 10 * damaged {
            break;
        }
        match comparison.case("a damaged line", draft, &mut line) {
            Ok(()) | Err(Trouble::NoAnswer(_)) => {}
            Err(trouble) => panic!("{trouble}"),
        }
    }
    assert_eq!(comparison.differences, Vec::<String>::new());
    assert!(comparison.cases > 0, "no case came through");
    assert!(line.asked_again() > damaged / 20, "{damaged} bytes damaged, {} asked again", line.asked_again());
    drop(line);
    // a clean line finds it well
    compare(port, drafts.into_iter().take(1));
    comparison
}

/// A strip chart goes on by itself several times a second, takes single keys, and ends; and the run that needs no keys is the
/// same, character by character, as on this machine.
pub fn draws_a_strip(port: &str) {
    let mut typist = Typist::at(port);
    typist.types("clear all");
    let begun = Instant::now();
    typist.sends(b"strip\r");
    sleep(Duration::from_secs(2));
    typist.sends(b"o");
    sleep(Duration::from_secs(3));
    typist.sends(b"r");
    sleep(Duration::from_secs(1));
    typist.sends(b"q");
    let (said, seconds) = (typist.hears(), begun.elapsed().as_secs_f64());
    let lines: Vec<&str> =
        said.lines().filter(|line| line.matches('|').count() == 4 && !line.contains("vac")).collect();
    assert!(lines.len() as f64 > 5.0 * seconds && (lines.len() as f64) < 9.0 * seconds, "{seconds} s:\n{said}");
    assert!(lines.iter().any(|line| line.contains("| 400 |")), "no vacuum was built up:\n{said}");
    assert!(said.matches("ILLUSTRATION").count() > 2, "{said}");
    let there = typist.types("strip run");
    assert_eq!(drawn(&there), drawn(&here("strip run")), "{there}");
    assert!(drawn(&there).len() > 50, "{there}");
    assert!(typist.types("barometer").contains("There is no barometer on this machine"));
}

/// The lines of a conversation that are of a chart.
fn drawn(said: &str) -> Vec<String> {
    said.lines().filter(|line| line.contains('|')).map(|line| line.trim().to_owned()).collect()
}

/// What a console on this machine says to a line.
fn here(line: &str) -> String {
    struct Nobody;
    impl Around for Nobody {
        fn millis(&self) -> u32 {
            0
        }
    }
    let (mut console, mut said) = (Console::new(), String::new());
    for byte in line.bytes().chain(*b"\r") {
        console.byte(byte, 0, &Nobody, &mut |text| said.push_str(text));
    }
    said
}

/// How long an emulator or this machine may be silent: they compute faster than a board.
const PATIENCE: Duration = Duration::from_millis(400);

/// A person at a terminal, who waits for the prompt.
pub struct Typist {
    port: Box<dyn Port>,
}

impl Typist {
    /// Begins at a device; what it said before is dropped.
    pub fn at(port: &str) -> Typist {
        let mut typist = Typist { port: port::open(port).expect("a port") };
        typist.sends(b"\x03");
        typist.settles();
        typist
    }

    /// Types a line and gives what the device says to it.
    pub fn types(&mut self, line: &str) -> String {
        self.sends(format!("{line}\r").as_bytes());
        self.hears()
    }

    /// Sends bytes, whatever they are.
    pub fn sends(&mut self, bytes: &[u8]) {
        self.port.write_all(bytes).expect("a line");
    }

    /// Listens until it asks for the next line, or says nothing for a while.
    pub fn hears(&mut self) -> String {
        let ends = |said: &Vec<u8>| PROMPTS.iter().any(|prompt| said.ends_with(prompt.as_bytes()));
        self.listens(&ends)
    }

    /// Listens until it says nothing for a while.
    pub fn settles(&mut self) -> String {
        self.listens(&|_| false)
    }

    fn listens(&mut self, ends: &dyn Fn(&Vec<u8>) -> bool) -> String {
        let (mut said, mut bytes, mut heard) = (Vec::new(), [0; 4096], Instant::now());
        while heard.elapsed() < Duration::from_secs(1) && !ends(&said) {
            let count = port::read(&mut *self.port, &mut bytes).expect("a line");
            if count > 0 {
                heard = Instant::now();
                said.extend(&bytes[..count]);
            }
        }
        String::from_utf8_lossy(&said).into_owned()
    }
}

/// An entry as it is typed.
fn value(draft: &Draft, entry: EntryId) -> String {
    let name = draft.name(entry).map(|name| name.as_str().to_owned());
    name.or_else(|| with_text(entry, draft.number(entry)?, str::to_owned)).expect("an entry that was made")
}

/// The read-back of a draft, as this machine gives it.
pub fn code(draft: &Draft) -> String {
    let case = Case::check(draft, &mut |_| {}).expect("a case or a set-up");
    readback::of(&case, None).expect("a read-back").as_str().to_owned()
}

/// A case file pasted whole, frames between the lines: the device takes both for what they are.
pub fn takes_text_and_frames(port: &str) {
    let path = &demo_cases()[0];
    let text = fs::read_to_string(path).expect("a case file");
    let mut typist = Typist::at(port);
    typist.types("clear all");
    typist.sends(text.as_bytes());
    // the device asks for the next line whenever it has caught up
    let said = typist.settles();
    assert!(!said.contains("accepted"), "{said}");
    let said = typist.types("readback");
    assert!(said.contains(&code(&demo_draft(path))), "{said}");

    // a frame in the middle of a typed line leaves the line as it was
    let mut hello = Vec::new();
    let request: ocellus_link::message::Request = ocellus_link::message::Hello {}.into();
    request.frame(77).write(&mut |byte| hello.push(byte));
    typist.sends(b"read");
    typist.sends(&hello);
    typist.sends(b"back\r");
    let said = typist.hears();
    assert!(said.contains(&code(&demo_draft(path))), "{said:?}");
}

/// A case typed in the short words gives the same code as the case file.
pub fn typed_session(port: &str) {
    let mut typist = Typist::at(port);
    typist.types("clear all");
    for draft in demo_cases().iter().map(|path| demo_draft(path)) {
        typist.types("clear all");
        for entry in draft.made() {
            let said = typist.types(&format!("{} {}", entry.word(), value(&draft, entry)));
            assert!(!said.contains("accepted"), "{said}");
        }
        let said = typist.types("readback");
        assert!(said.contains(&code(&draft)), "{said}");
    }
}

/// Noise of every byte, then silence: the device hears again, and its numbers are right.
pub fn outlives_noise(port: &str, seed: u64, bytes: usize) {
    let mut random = fastrand::Rng::with_seed(seed);
    let mut typist = Typist { port: port::open(port).expect("a port") };
    let mut echo = [0; 4096];
    for sent in (0..bytes).step_by(8192) {
        let noise: Vec<u8> = (0..8192.min(bytes - sent)).map(|_| random.u8(..)).collect();
        typist.sends(&noise);
        while port::read(&mut *typist.port, &mut echo).expect("a line") == echo.len() {}
    }
    drop(typist);
    // it answers once it has heard all of it, at whatever pace an emulator lets it
    let started = Instant::now();
    while let Err(trouble) = port::open(port).map_err(Trouble::NotOpened).and_then(Line::open) {
        assert!(started.elapsed() < Duration::from_secs(180), "{trouble}");
    }
    compare(port, demo_cases().iter().take(1).map(|path| demo_draft(path)));
    // and the typist is heard: what was being typed is given up
    let mut typist = Typist::at(port);
    typist.sends(b"\x03");
    typist.hears();
    assert!(typist.types("help").contains("plan"), "no help after noise");
}
