//! Every entry of a case, told from the table of fields itself.

use crate::problem::accepted;
use crate::text;
use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Section};
use std::io::{self, Write};

/// The tables of a case file, in the order of the fields.
pub(crate) fn sections() -> Vec<Section> {
    let mut sections: Vec<Section> = Field::ALL.iter().map(|field| field.section()).collect();
    sections.dedup();
    sections
}

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

/// Prints the fields on 80 columns.
pub fn print(out: &mut dyn Write) -> io::Result<()> {
    for section in sections() {
        writeln!(out, "{}", heading(section))?;
        for field in of(section) {
            text::paragraph(out, &format!("  {:26} ", field.key()), field.what())?;
            let default = match default(field) {
                text if text.is_empty() => text,
                text => format!("; {text} when not entered"),
            };
            text::paragraph(out, "      ", &format!("{}{default}", accepted(field)))?;
        }
        writeln!(out)?;
    }
    Ok(())
}

/// Prints the fields as Markdown tables.
pub fn print_markdown(out: &mut dyn Write) -> io::Result<()> {
    for section in sections() {
        let heading = match section {
            Section::Case => heading(section),
            section => format!("`{}`", heading(section)),
        };
        writeln!(out, "## {heading}\n\n| key | what it is | accepted | when not entered |\n|---|---|---|---|")?;
        for field in of(section) {
            writeln!(out, "| `{}` | {} | {} | {} |", field.key(), field.what(), accepted(field), default(field))?;
        }
        writeln!(out)?;
    }
    Ok(())
}
