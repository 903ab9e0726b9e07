//! What is wrong with a file, said so that it can be put right: where, what was typed, what would be accepted.

use crate::text::plain;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_card::sections;
use ocellus_text::{Text, text};
use std::fmt::{self, Display};

/// One thing that is wrong with a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The file, as it was named.
    pub file: String,
    /// Its line, where it is about one.
    pub line: Option<usize>,
    /// The entry, where it is about a known one.
    pub entry: Option<EntryId>,
    /// The key with its value, or the line, as typed; empty where nothing was.
    pub typed: String,
    /// What is wrong.
    pub wrong: String,
    /// What would be accepted; empty where there is nothing to say.
    pub accepted: String,
}

/// Why a command ends without an answer.
#[derive(Debug)]
pub enum Stop {
    /// The command or a file cannot be used.
    Unusable(Vec<Problem>),
    /// The line to a device, which is named as a file would be.
    NoLine(Problem),
}

impl From<Vec<Problem>> for Stop {
    fn from(problems: Vec<Problem>) -> Stop {
        Stop::Unusable(problems)
    }
}

/// With as many, a file is not a case with mistakes but something else, and the rest of it is left unread.
pub(crate) const ENOUGH: usize = 100;

impl Problem {
    /// About a file as a whole.
    pub fn of_file(file: &str, wrong: impl Into<String>, accepted: impl Into<String>) -> Problem {
        let (wrong, accepted) = (wrong.into(), accepted.into());
        Problem { file: file.to_owned(), line: None, entry: None, typed: String::new(), wrong, accepted }
    }
}

impl Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:", plain(&self.file))?;
        if let Some(line) = self.line {
            write!(f, "{line}:")?;
        }
        if !self.typed.is_empty() {
            write!(f, " {}:", cut(&plain(&self.typed)))?;
        }
        write!(f, " {}", plain(&self.wrong))?;
        if self.accepted.is_empty() { Ok(()) } else { write!(f, "\n    accepted: {}", plain(&self.accepted)) }
    }
}

/// The problems of a file in its order, those about no line last, in the order of the tables.
pub(crate) fn in_order(file: &str, mut problems: Vec<Problem>) -> Vec<Problem> {
    if problems.len() >= ENOUGH {
        problems.push(Problem::of_file(file, "much is wrong; not all of it is listed here", ""));
    }
    let table = |entry: EntryId| sections().position(|table| table == entry.section());
    problems.sort_by_key(|problem| match problem.line {
        Some(line) => (line, 0),
        None => (usize::MAX, problem.entry.and_then(table).unwrap_or(usize::MAX)),
    });
    problems
}

/// The most characters of a file that are shown of one line.
const SHOWN: usize = 100;

/// The text as it is shown: cut where it is too long.
fn cut(text: &str) -> String {
    let shown: String = text.chars().take(SHOWN).collect();
    if text.chars().count() > SHOWN { format!("{shown}...") } else { shown }
}

/// What is wrong with an entry of a file.
pub(crate) fn wrong(error: &Error) -> String {
    let text = match error.wrong {
        Wrong::WrongUnit => Wrong::OutOfRange.text(),
        Wrong::Disagree => text!("does not agree with another entry"),
        wrong => wrong.text(),
    };
    let hint = error.value.and_then(|value| error.entry.looks_like(value));
    hint.map_or(text.to_string(), |hint| format!("{text}; it looks like {hint}"))
}

/// What would be accepted in its place.
pub(crate) fn accepted_after(error: &Error) -> String {
    let entry = error.entry;
    let remedy = error.accepts().map(|(text, entries)| filled(text, entries));
    match (error.wrong, remedy) {
        (Wrong::Missing | Wrong::Incomplete, remedy) => {
            let or = remedy.map_or(String::new(), |remedy| format!("; {remedy}"));
            format!("{}, {}{or}", table(entry.section()), accepted(entry))
        }
        (_, Some(remedy)) => remedy,
        (_, None) => accepted(entry),
    }
}

/// A text in which each `{}` stands for the key of an entry.
pub(crate) fn filled(text: Text, entries: &[EntryId]) -> String {
    entries.iter().fold(text.to_string(), |text, entry| text.replacen("{}", &entry.key().to_string(), 1))
}

/// What an entry accepts.
pub fn accepted(entry: EntryId) -> String {
    match entry.kind() {
        Kind::Number(places, bounds) => {
            let (min, max) = (bounds.min, bounds.max);
            let range = if entry.signed() { format!("{min:+} to {max:+}") } else { format!("{min} to {max}") };
            let unit = if entry.unit().is_empty() { String::new() } else { format!(" {}", entry.unit()) };
            let decimals = match places {
                0 => "a whole number".to_owned(),
                1 => "at most 1 decimal".to_owned(),
                places => format!("at most {places} decimals"),
            };
            format!("{range}{unit}, {decimals} ({})", bounds.why)
        }
        Kind::Choice(words) => {
            let quoted: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
            format!("one of {}", quoted.join(", "))
        }
        Kind::Date => "a date as YYYY-MM-DD".to_owned(),
        Kind::Name => "a name of 1 to 24 printable ASCII characters, in quotes".to_owned(),
    }
}

/// The table of a case file, as it is named in a sentence.
pub(crate) fn table(section: &str) -> String {
    if section.is_empty() { "before the first table".to_owned() } else { format!("in [{section}]") }
}
