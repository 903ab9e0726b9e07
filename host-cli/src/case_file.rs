//! A case file: one operated eye in TOML. Its tables and keys are those of the card's entries.

use crate::catalogue::Catalogue;
use crate::entries::{Entries, did_you_mean};
use crate::nearest::nearest;
use crate::problem::{self, ENOUGH, Problem, in_order};
use crate::toml_file::{TomlFile, TomlText};
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_card::{of_section, sections};
use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

/// The entries of a case file, each in its range, not yet checked against each other.
///
/// # Errors
/// Everything that is wrong with them, in the order of the file.
pub fn read(name: &str, bytes: &[u8]) -> Result<Draft, Vec<Problem>> {
    let mut problems = Vec::new();
    let entries = entries(name, bytes, &mut problems);
    if problems.is_empty() { Ok(entries.draft) } else { Err(in_order(name, problems)) }
}

/// The entries of a case file that makes a case, its lenses' numbers filled in from a catalogue.
///
/// # Errors
/// Everything that is wrong with it, in the order of the file, what is missing last.
pub fn case(name: &str, bytes: &[u8], catalogue: Option<&Catalogue>) -> Result<Draft, Vec<Problem>> {
    let mut problems = Vec::new();
    let mut entries = entries(name, bytes, &mut problems);
    // nothing was read, or not all: what is missing is not known
    if problems.len() >= ENOUGH || entries.places.is_empty() && !problems.is_empty() {
        return Err(in_order(name, problems));
    }
    if let Some(catalogue) = catalogue {
        catalogue.fill(name, &mut entries, &mut problems);
    }
    let mut found = Vec::new();
    Case::check(&entries.draft, &mut |error| {
        if !follows(&error, &problems) {
            let because = error.because(&entries.draft);
            let wrong = problem::wrong(&error) + &because.map_or(String::new(), |other| format!(": {}", other.key()));
            found.push(entries.problem(name, error.entry, wrong, problem::accepted_after(&error)));
        }
    });
    problems.append(&mut found);
    if problems.is_empty() { Ok(entries.draft) } else { Err(in_order(name, problems)) }
}

/// Whether an error only repeats a problem that is known, or follows from it.
fn follows(error: &Error, problems: &[Problem]) -> bool {
    let known = |entry: &EntryId| problems.iter().any(|problem| problem.entry == Some(*entry));
    let missing_instead = error.accepts().filter(|_| error.wrong == Wrong::Missing);
    known(&error.entry) || missing_instead.is_some_and(|(_, others)| others.iter().any(known))
}

fn entries(name: &str, bytes: &[u8], problems: &mut Vec<Problem>) -> Entries {
    let mut reader = Reader { entries: Entries::default(), problems };
    match TomlText::new(name, bytes) {
        Ok(text) => {
            let file = text.parse();
            if !file.lost_a_table() {
                reader.top(&file);
            }
            file.syntax(reader.problems);
        }
        Err(mut problems) => reader.problems.append(&mut problems),
    }
    reader.entries
}

/// The tables of a case file by their names.
fn tables() -> impl Iterator<Item = &'static str> {
    sections().filter(|table| !table.is_empty())
}

struct Reader<'a> {
    entries: Entries,
    problems: &'a mut Vec<Problem>,
}

impl Reader<'_> {
    fn top(&mut self, file: &TomlFile<'_>) {
        for (key, value) in file.table.iter() {
            match (tables().find(|table| table == key.get_ref()), value.get_ref()) {
                _ if self.problems.len() >= ENOUGH => {}
                (Some(section), DeValue::Table(table)) => self.table(file, section, table),
                (Some(section), _) => {
                    let accepted = format!("[{section}] once, with its keys on the lines below");
                    self.refuse(file, key, value, "a table, not a value or a list".to_owned(), accepted);
                }
                (None, DeValue::Table(_) | DeValue::Array(_)) if EntryId::of_key(key.get_ref()).is_none() => {
                    let accepted = match nearest(key.get_ref(), tables()) {
                        Some(table) => format!("perhaps [{table}]"),
                        None => tables().map(|table| format!("[{table}]")).collect::<Vec<_>>().join(", "),
                    };
                    self.refuse(file, key, value, "no table of a case file has this name".to_owned(), accepted);
                }
                (None, _) => self.key(file, "", key, value),
            }
        }
    }

    fn table(&mut self, file: &TomlFile<'_>, section: &str, table: &DeTable<'_>) {
        for (key, value) in table.iter() {
            self.key(file, section, key, value);
        }
    }

    fn key(&mut self, file: &TomlFile<'_>, section: &str, key: &Spanned<DeString<'_>>, value: &Spanned<DeValue<'_>>) {
        match EntryId::of_key(key.get_ref()) {
            _ if self.problems.len() >= ENOUGH => {}
            Some(entry) if entry.section() == section => {
                self.problems.extend(self.entries.enter(file, entry, key, value));
            }
            Some(entry) => {
                let wrong = format!("this key does not stand {}", problem::table(section));
                self.refuse(file, key, value, wrong, problem::table(entry.section()));
            }
            None => {
                let here: Vec<EntryId> = of_section(section).collect();
                let wrong = "no entry of a case has this key".to_owned();
                self.refuse(file, key, value, wrong, did_you_mean(key.get_ref(), &here));
            }
        }
    }

    fn refuse(
        &mut self,
        file: &TomlFile<'_>,
        key: &Spanned<DeString<'_>>,
        value: &Spanned<DeValue<'_>>,
        wrong: String,
        accepted: String,
    ) {
        let typed = file.typed(value.span());
        self.problems.push(file.problem(key.span().start, key.get_ref(), typed, wrong, accepted));
    }
}
