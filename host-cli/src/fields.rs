//! Every entry of a case, from the tables of the card itself.

use crate::problem::{accepted, filled};
use crate::text;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::error::Error;
use ocellus_card::id::EntryId;
use ocellus_card::{of_section, sections};
use std::io::{self, Write};

fn heading(section: &str) -> String {
    if section.is_empty() { "Before the first table".to_owned() } else { format!("[{section}]") }
}

fn default(entry: EntryId) -> String {
    entry.default().map_or(String::new(), |_| text::value(&Draft::default(), entry))
}

/// What every case must state, by the door itself: what it misses of a case in which nothing was entered.
fn missed() -> Vec<Error> {
    let mut missed = Vec::new();
    Case::check(&Draft::default(), &mut |error| missed.push(error));
    missed
}

fn need(missed: &[Error], entry: EntryId) -> String {
    let Some(error) = missed.iter().find(|error| error.entry == entry) else { return String::new() };
    let or = error.accepts().map_or(String::new(), |(text, entries)| format!(", {}", filled(text, entries)));
    format!("needed{or}")
}

/// Prints the entries on 80 columns.
pub fn print(out: &mut dyn Write) -> io::Result<()> {
    let missed = missed();
    for section in sections() {
        writeln!(out, "{}", heading(section))?;
        for entry in of_section(section) {
            let need = need(&missed, entry);
            let need = if need.is_empty() { need } else { format!(" ({need})") };
            let key = format!("  {:26} ", entry.key().to_string());
            text::paragraph(out, &key, format_args!("{}{need}", entry.what()))?;
            let default = match default(entry) {
                text if text.is_empty() => text,
                text => format!("; {text} when not entered"),
            };
            let accepted = accepted(entry);
            text::paragraph(out, "      ", format_args!("{accepted}{default}; at a console {}", entry.word()))?;
        }
        writeln!(out)?;
    }
    Ok(())
}

/// Prints the entries as Markdown tables.
pub fn print_markdown(out: &mut dyn Write) -> io::Result<()> {
    let missed = missed();
    for section in sections() {
        let heading = if section.is_empty() { heading(section) } else { format!("`{}`", heading(section)) };
        writeln!(
            out,
            "## {heading}\n\n| key | at a console | what it is | accepted | needed, or when not entered |\n|---|---|---|---|---|"
        )?;
        for entry in of_section(section) {
            let need = need(&missed, entry);
            let last = if need.is_empty() { default(entry) } else { need };
            let (key, word, what) = (entry.key(), entry.word(), entry.what());
            writeln!(out, "| `{key}` | `{word}` | {what} | {} | {last} |", accepted(entry))?;
        }
        writeln!(out)?;
    }
    Ok(())
}
