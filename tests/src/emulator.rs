//! A board's own program in an emulator, as `cargo xtask emulate` starts it.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

/// The boards that can be emulated.
pub const BOARDS: [&str; 2] = ["microbit", "mps2-an386"];

/// An emulator that runs until this is dropped.
pub struct Emulator {
    process: Child,
    /// The port of its serial line.
    pub port: String,
}

impl Emulator {
    /// Builds the program and starts it at any free port.
    pub fn start(board: &str) -> Emulator {
        let mut process = Command::new(env!("CARGO"))
            .args(["xtask", "emulate", board, "--tcp", "0"])
            .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
            .stdout(Stdio::piped())
            .spawn()
            .expect("cargo");
        let lines = BufReader::new(process.stdout.take().expect("its standard output")).lines();
        let ready = lines.map_while(Result::ok).find_map(|line| line.strip_prefix("ready ").map(str::to_owned));
        Emulator { process, port: ready.expect("an emulator that is ready") }
    }
}

impl Drop for Emulator {
    fn drop(&mut self) {
        // it may have ended by itself, and nobody needs to know
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}
