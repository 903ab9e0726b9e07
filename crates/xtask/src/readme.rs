//! The README's commands, run as they stand: whoever starts there must get what it says.

use crate::run::{cargo, root, run_and_keep};

/// Runs every `cargo run` line of the README and looks for a theatre card.
pub(crate) fn commands() -> Result<String, String> {
    let readme = std::fs::read_to_string(root().join("README.md")).map_err(|error| format!("README.md: {error}"))?;
    let commands: Vec<&str> = readme.lines().filter(|line| line.starts_with("cargo run ")).collect();
    if commands.is_empty() {
        return Err("README.md: no `cargo run` line".into());
    }
    for command in &commands {
        let words: Vec<&str> = command.split_whitespace().skip(1).collect();
        let lines = run_and_keep(&mut cargo(&words))?;
        if !lines.first().is_some_and(|line| line.contains(" EYE   ")) {
            return Err(format!("{command}: prints no theatre card"));
        }
    }
    Ok(format!("a theatre card from `{}`", commands.join("`, `")))
}
