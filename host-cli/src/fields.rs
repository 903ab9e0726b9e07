//! Every entry of a case, told from the table of fields itself.

use crate::problem::accepted;
use crate::text;
use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Section};
use std::io::{self, Write};

fn heading(section: Section) -> String {
    match section {
        Section::Case => "Before the first table".to_owned(),
        section => format!("[{}]", section.word()),
    }
}

fn of(section: Section) -> impl Iterator<Item = Field> {
    Field::ALL.iter().copied().filter(move |field| field.section() == section)
}

fn default(field: Field) -> String {
    field.default().map_or(String::new(), |_| text::value(&Draft::default(), field))
}

/// What every case must state, by the door itself: what it misses of a case in which nothing was entered.
fn needed() -> Vec<Field> {
    let mut needed = Vec::new();
    Case::check(&Draft::default(), &mut |error| needed.extend(error.field));
    needed
}

fn need(needed: &[Field], field: Field) -> &'static str {
    match field {
        Field::K1 | Field::K2 => "needed, or r1_mm and r2_mm",
        _ if needed.contains(&field) => "needed",
        _ => "",
    }
}

/// Prints the fields on 80 columns.
pub fn print(out: &mut dyn Write) -> io::Result<()> {
    let needed = needed();
    for &section in Section::ALL {
        writeln!(out, "{}", heading(section))?;
        for field in of(section) {
            let need = need(&needed, field);
            let need = if need.is_empty() { String::new() } else { format!(" ({need})") };
            text::paragraph(out, &format!("  {:26} ", field.key()), &format!("{}{need}", field.what()))?;
            let default = match default(field) {
                text if text.is_empty() => text,
                text => format!("; {text} when not entered"),
            };
            text::paragraph(out, "      ", &format!("{}{default}; at a console {}", accepted(field), field.word()))?;
        }
        writeln!(out)?;
    }
    Ok(())
}

/// Prints the fields as Markdown tables.
pub fn print_markdown(out: &mut dyn Write) -> io::Result<()> {
    let needed = needed();
    for &section in Section::ALL {
        let heading = match section {
            Section::Case => heading(section),
            section => format!("`{}`", heading(section)),
        };
        writeln!(
            out,
            "## {heading}\n\n| key | at a console | what it is | accepted | needed, or when not entered |\n|---|---|---|---|---|"
        )?;
        for field in of(section) {
            let last = match need(&needed, field) {
                "" => default(field),
                need => need.to_owned(),
            };
            let (key, word, what) = (field.key(), field.word(), field.what());
            writeln!(out, "| `{key}` | `{word}` | {what} | {} | {last} |", accepted(field))?;
        }
        writeln!(out)?;
    }
    Ok(())
}
