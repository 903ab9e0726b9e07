//! Starting other programs, and where they work.

use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The project's own folder.
pub(crate) fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// A folder for build products; one each for builds whose flags differ, so that none throws away another's.
pub(crate) fn target(name: &str) -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from).join(name)
}

/// Cargo, in the project's folder.
pub(crate) fn cargo(arguments: &[&str]) -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(root()).args(arguments);
    command
}

/// RUSTFLAGS as they are, and these.
pub(crate) fn flags(more: &[impl std::fmt::Display]) -> String {
    let mut flags = std::env::var("RUSTFLAGS").unwrap_or_default();
    for flag in more {
        flags = format!("{flags} {flag}");
    }
    flags.trim().to_owned()
}

/// Runs a program to its end.
pub(crate) fn run(command: &mut Command) -> Result<(), String> {
    let status = command.status().map_err(|error| failed(command, &error))?;
    if status.success() { Ok(()) } else { Err(failed(command, &status)) }
}

/// Runs a program to its end on this input; what it prints is not shown.
pub(crate) fn feed(command: &mut Command, input: &[u8]) -> Result<(), String> {
    let mut child =
        command.stdin(Stdio::piped()).stdout(Stdio::null()).spawn().map_err(|error| failed(command, &error))?;
    if let Some(mut stdin) = child.stdin.take() {
        stdin.write_all(input).map_err(|error| failed(command, &error))?;
    }
    let status = child.wait().map_err(|error| failed(command, &error))?;
    if status.success() { Ok(()) } else { Err(failed(command, &status)) }
}

/// What a program prints on this input, all of it short enough for a pipe; and whether it succeeds.
pub(crate) fn answer(command: &mut Command, input: &[u8]) -> Result<(bool, String), String> {
    command.stdin(Stdio::piped()).stdout(Stdio::piped());
    let mut child = command.spawn().map_err(|error| failed(command, &error))?;
    if let Some(mut stdin) = child.stdin.take() {
        // one that reads nothing may have ended
        let _ = stdin.write_all(input);
    }
    let output = child.wait_with_output().map_err(|error| failed(command, &error))?;
    Ok((output.status.success(), String::from_utf8_lossy(&output.stdout).into_owned()))
}

/// Runs a program to its end, showing its standard output and keeping the lines.
pub(crate) fn run_and_keep(command: &mut Command) -> Result<Vec<String>, String> {
    let mut child = command.stdout(Stdio::piped()).spawn().map_err(|error| failed(command, &error))?;
    let mut lines = Vec::new();
    for line in child.stdout.take().map(BufReader::new).into_iter().flat_map(BufRead::lines) {
        let line = line.map_err(|error| failed(command, &error))?;
        println!("{line}");
        lines.push(line);
    }
    let status = child.wait().map_err(|error| failed(command, &error))?;
    if status.success() { Ok(lines) } else { Err(failed(command, &status)) }
}

/// What a program prints, when it is there and succeeds.
pub(crate) fn ask(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

fn failed(command: &Command, why: &dyn std::fmt::Display) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or(command.get_program());
    let words: Vec<_> = std::iter::once(program).chain(command.get_args()).map(|word| word.to_string_lossy()).collect();
    format!("{why}: {}", words.join(" "))
}
