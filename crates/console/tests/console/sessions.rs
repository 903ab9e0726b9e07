//! Whole conversations, as they stand on a screen of 80 columns. Each was read by a person before it was kept.
//!
//! A script is typed line by line; `@paste FILE` pastes a file, `@keys` goes on with escaped bytes.
//! `BLESS=1 cargo test -p ocellus-console --test console sessions` writes the transcripts again.

use crate::terminal::{Terminal, here, read};
use std::path::Path;

fn play(script: &str) -> String {
    let mut terminal = Terminal::new();
    terminal.greet();
    for line in script.lines() {
        if let Some(file) = line.strip_prefix("@paste ") {
            terminal.paste(read(&here("../../demo-data").join(file)).as_bytes());
        } else if let Some(keys) = line.strip_prefix("@keys ") {
            let keys = keys
                .replace("\\e", "\x1b")
                .replace("\\r", "\r")
                .replace("\\b", "\x7f")
                .replace("\\c", "\x03")
                .replace("\\u", "\x15");
            keys.bytes().for_each(|byte| terminal.byte(byte, 0));
        } else {
            terminal.line(line);
        }
    }
    terminal.text()
}

fn check(script: &Path) {
    let kept = script.with_extension("screen");
    let text = play(&read(script));
    for line in text.lines() {
        assert!(line.len() <= 80, "{}: {} columns: {line}", kept.display(), line.len());
    }
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(&kept, &text).unwrap();
    }
    let expected = read(&kept);
    if let Some((place, (now, then))) = text.lines().zip(expected.lines()).enumerate().find(|(_, (a, b))| a != b) {
        panic!("{}:{}:\n  now  {now}\n  then {then}", kept.display(), place + 1);
    }
    assert_eq!(text, expected, "{}", kept.display());
}

#[test]
fn conversations_read_as_they_did() {
    let mut scripts: Vec<_> =
        std::fs::read_dir(here("tests/console/sessions")).unwrap().map(|entry| entry.unwrap().path()).collect();
    scripts.retain(|path| path.extension().is_some_and(|extension| extension == "script"));
    assert!(scripts.len() >= 6, "{scripts:?}");
    scripts.iter().for_each(|script| check(script));
}
