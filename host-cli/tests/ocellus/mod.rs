//! Runs the command in a folder of its own.
#![allow(clippy::unwrap_used, reason = "a test may stop where it stands")]
#![allow(dead_code, reason = "no test needs all of it")]

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// A case that is accepted as it stands.
pub(crate) const GOOD: &str = r#"id = "test"
eye = "right"
surgery_date = 2026-12-01

[biometry]
axial_length_mm = 23.46
k1_d = 43.25
k2_d = 44.00
k_kind = "keratometric"
acd_mm = 3.12
acd_from = "epithelium"
al_method = "optical"
eye_state = "phakic"
previous_surgery = "none"
biometry_date = 2026-10-12

[target]
target_d = -0.25

[lens]
lens_model = "Test Lens"
a_constant = 118.90
iol_power_d = +21.50

[pressure]
altitude_m = 1609

[risks]
guttata = "no"
"#;

/// How the command ended.
pub(crate) struct Done {
    pub(crate) code: i32,
    pub(crate) out: String,
    pub(crate) err: String,
}

/// A folder that is gone after the test.
pub(crate) struct Folder(TempDir);

impl Folder {
    pub(crate) fn new() -> Folder {
        Folder(TempDir::new().unwrap())
    }

    pub(crate) fn with(self, name: &str, bytes: impl AsRef<[u8]>) -> Folder {
        fs::write(self.0.path().join(name), bytes).unwrap();
        self
    }

    pub(crate) fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_ocellus"));
        command.args(arguments).current_dir(self.0.path());
        command
    }

    pub(crate) fn run(&self, arguments: &[&str], input: &str) -> Done {
        let mut command = self.command(arguments);
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        // the command may end without having read it
        let _ = child.stdin.take().unwrap().write_all(input.as_bytes());
        let done = child.wait_with_output().unwrap();
        Done {
            code: done.status.code().unwrap(),
            out: String::from_utf8(done.stdout).unwrap(),
            err: String::from_utf8(done.stderr).unwrap(),
        }
    }
}

/// Every invented case that reads well.
pub(crate) fn demo_cases() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-data");
    let files = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut cases: Vec<PathBuf> = files.filter(|path| path.extension().is_some_and(|end| end == "toml")).collect();
    cases.sort();
    assert!(cases.len() > 5);
    cases
}

/// The problems of a file, each with its line of what is accepted.
pub(crate) fn problems(err: &str) -> Vec<String> {
    let mut problems: Vec<String> = Vec::new();
    for line in err.lines() {
        match problems.last_mut() {
            Some(last) if line.starts_with("    ") => *last = format!("{last}\n{line}"),
            _ => problems.push(line.to_owned()),
        }
    }
    problems
}
