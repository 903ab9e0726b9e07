//! A plain terminal with a console at its other end.

use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_console::{Air, Around, Console};
use std::path::{Path, PathBuf};

/// A machine on which time passes only where a test says so.
pub(crate) struct Machine {
    pub(crate) now: u32,
    pub(crate) air: Air,
}

impl Around for Machine {
    fn millis(&self) -> u32 {
        self.now
    }

    fn air(&self) -> Air {
        self.air
    }
}

pub(crate) struct Terminal {
    pub(crate) console: Console,
    pub(crate) machine: Machine,
    /// What stands on the screen, line by line.
    pub(crate) screen: Vec<String>,
    /// The next character's column.
    column: usize,
    pub(crate) bells: usize,
    /// All bytes that came.
    pub(crate) bytes: usize,
    /// What the terminal was sent since last asked.
    pub(crate) fresh: String,
}

impl Terminal {
    pub(crate) fn new() -> Terminal {
        Terminal::at(Console::new())
    }

    pub(crate) fn at(console: Console) -> Terminal {
        let screen = vec![String::new()];
        let machine = Machine { now: 0, air: Air::Absent };
        Terminal { console, machine, screen, column: 0, bells: 0, bytes: 0, fresh: String::new() }
    }

    pub(crate) fn greet(&mut self) {
        let mut said = String::new();
        self.console.greet(&mut |text| said.push_str(text));
        self.show(&said);
    }

    pub(crate) fn byte(&mut self, byte: u8, waiting: usize) {
        let mut said = String::new();
        self.console.byte(byte, waiting, &self.machine, &mut |text| said.push_str(text));
        self.show(&said);
    }

    /// So many milliseconds pass, and nothing is typed.
    pub(crate) fn waits(&mut self, millis: u32) {
        self.machine.now += millis;
        let mut said = String::new();
        self.console.tick(&self.machine, &mut |text| said.push_str(text));
        self.show(&said);
    }

    fn show(&mut self, said: &str) {
        assert!(said.is_ascii(), "{said:?}");
        self.bytes += said.len();
        self.fresh.push_str(said);
        for character in said.chars() {
            let line = self.screen.last_mut().unwrap();
            match character {
                '\r' => self.column = 0,
                '\n' => {
                    assert_eq!(self.column, 0, "a line feed alone after {line:?}");
                    self.screen.push(String::new());
                }
                '\x08' => self.column = self.column.checked_sub(1).expect("backspace at the start of a line"),
                '\x07' => self.bells += 1,
                ' '..='~' => {
                    if self.column < line.len() {
                        line.replace_range(self.column..=self.column, character.encode_utf8(&mut [0; 4]));
                    } else {
                        line.push(character);
                    }
                    self.column += 1;
                }
                other => panic!("{other:?} sent to a plain terminal"),
            }
        }
    }

    /// Typed slowly, ended by Enter; the answer is what the terminal was sent after it.
    pub(crate) fn line(&mut self, line: &str) -> String {
        line.bytes().for_each(|byte| self.byte(byte, 0));
        self.fresh.clear();
        self.byte(b'\r', 0);
        self.fresh.replace("\r\n", "\n")
    }

    /// All at once.
    pub(crate) fn paste(&mut self, bytes: &[u8]) -> String {
        self.fresh.clear();
        for (place, byte) in bytes.iter().enumerate() {
            self.byte(*byte, bytes.len() - 1 - place);
        }
        self.fresh.replace("\r\n", "\n")
    }

    pub(crate) fn text(&self) -> String {
        let mut text: String = self.screen.iter().map(|line| format!("{}\n", line.trim_end())).collect();
        text.truncate(text.trim_end().len());
        text + "\n"
    }

    pub(crate) fn draft(&self) -> &Draft {
        self.console.draft()
    }
}

pub(crate) fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

pub(crate) fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The demonstration cases that read without an error: name and text.
pub(crate) fn demo_cases() -> Vec<(String, String)> {
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(here("../../demo-data")).unwrap().map(|e| e.unwrap().path()).collect();
    paths.retain(|path| path.extension().is_some_and(|extension| extension == "toml"));
    paths.push(here("../../demo-data/mistakes/swapped.toml"));
    paths.sort();
    assert!(paths.len() >= 11, "{paths:?}");
    paths.iter().map(|path| (path.file_stem().unwrap().to_str().unwrap().to_owned(), read(path))).collect()
}

/// A case file read by another way: by the toml crate.
pub(crate) fn by_toml(text: &str) -> Draft {
    fn enter(draft: &mut Draft, table: &toml::Table) {
        for (key, value) in table {
            let text = match value {
                toml::Value::Table(table) => {
                    enter(draft, table);
                    continue;
                }
                toml::Value::String(text) => text.clone(),
                toml::Value::Datetime(date) => date.to_string(),
                toml::Value::Integer(number) => number.to_string(),
                toml::Value::Float(number) => number.to_string(),
                other => panic!("{key}: {other}"),
            };
            draft.enter(EntryId::of_key(key).expect(key), &text).unwrap_or_else(|error| panic!("{key}: {error:?}"));
        }
    }
    let mut draft = Draft::default();
    enter(&mut draft, &text.parse().unwrap());
    draft
}

/// Value bits of every entry, and its name.
pub(crate) fn bits(draft: &Draft) -> Vec<(Option<u64>, Option<String>)> {
    EntryId::all()
        .map(|entry| (draft.number(entry).map(f64::to_bits), draft.name(entry).map(|name| name.as_str().to_owned())))
        .collect()
}
