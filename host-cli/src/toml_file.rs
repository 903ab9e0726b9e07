//! A TOML file read as far as it goes, each value with its place and its digits as typed.

use crate::problem::Problem;
use ocellus_core::field::Field;
use std::ops::Range;
use toml::de::DeTable;

pub(crate) struct TomlFile<'a> {
    pub(crate) name: &'a str,
    pub(crate) table: DeTable<'a>,
    text: &'a str,
    errors: Vec<toml::de::Error>,
}

impl<'a> TomlFile<'a> {
    /// A byte order mark is fine; anything else that is not UTF-8 is not.
    pub(crate) fn parse(name: &'a str, bytes: &'a [u8]) -> Result<TomlFile<'a>, Vec<Problem>> {
        let text = std::str::from_utf8(bytes).map_err(|error| {
            let line = 1 + bytes.iter().take(error.valid_up_to()).filter(|byte| **byte == b'\n').count();
            let problem = Problem::of_file(name, "not UTF-8 text", "plain text, saved as UTF-8");
            vec![Problem { line: Some(line), ..problem }]
        })?;
        let text = text.trim_start_matches('\u{feff}');
        if text.trim().is_empty() {
            let accepted = "lines of KEY = VALUE; ocellus --help shows the least, ocellus fields all of them";
            return Err(vec![Problem::of_file(name, "the file is empty", accepted)]);
        }
        let (table, errors) = DeTable::parse_recoverable(text);
        Ok(TomlFile { name, table: table.into_inner(), text, errors })
    }

    pub(crate) fn line(&self, at: usize) -> usize {
        1 + self.text.bytes().take(at).filter(|byte| *byte == b'\n').count()
    }

    /// The bounds of the line that holds this byte, without its end.
    fn line_span(&self, at: usize) -> Range<usize> {
        let start = self.text.get(..at).and_then(|before| before.rfind('\n')).map_or(0, |end| end + 1);
        let end = self.text.get(at..).and_then(|after| after.find('\n')).map_or(self.text.len(), |end| at + end);
        start..end
    }

    fn slice(&self, span: Range<usize>) -> &'a str {
        self.text.get(span).unwrap_or("").trim()
    }

    /// A value as typed: where the parser stumbled later in its line, all of the line up to a comment. So a decimal
    /// comma, a unit or a second number stays with the digits before it.
    pub(crate) fn typed(&self, value: Range<usize>) -> &'a str {
        let line = value.start..self.line_span(value.start).end;
        let stumbled =
            |error: &toml::de::Error| error.span().is_some_and(|span| (line.start..=line.end).contains(&span.start));
        if !self.errors.iter().any(stumbled) {
            return self.slice(value);
        }
        let rest = self.slice(line);
        if rest.starts_with(['"', '\'']) { rest } else { rest.split('#').next().unwrap_or("").trim() }
    }

    /// A problem at a place of this file.
    pub(crate) fn problem(&self, at: usize, key: &str, typed: &str, wrong: String, accepted: String) -> Problem {
        let typed = if typed.is_empty() { key.to_owned() } else { format!("{key} = {typed}") };
        let line = Some(self.line(at));
        Problem { file: self.name.to_owned(), line, key: Some(key.to_owned()), typed, wrong, accepted }
    }

    /// What the parser could not read, in lines about which nothing is said yet.
    pub(crate) fn syntax(&self, problems: &mut Vec<Problem>) {
        for error in &self.errors {
            let problem = self.syntax_problem(error);
            if !problems.iter().any(|known| known.line == problem.line) {
                problems.push(problem);
            }
        }
    }

    fn syntax_problem(&self, error: &toml::de::Error) -> Problem {
        // an error at the end of the file is about the last line that says something
        let at = error.span().map_or(0, |span| span.start).min(self.text.trim_end().len());
        let typed = self.slice(self.line_span(at));
        let head = head(typed);
        let (wrong, accepted) = if is_duplicate(error) {
            let earlier = self.text.get(..self.line_span(at).start).unwrap_or("").lines();
            let first = earlier.enumerate().filter(|(_, line)| self::head(line) == head).last();
            let first = first.map_or(String::new(), |(index, _)| format!("; first on line {}", index + 1));
            (format!("given twice{first}"), "each once")
        } else {
            (error.message().to_owned(), "KEY = VALUE on a line of its own, a [table] line, or # and a comment")
        };
        let key = head.split(|c: char| c != '_' && !c.is_ascii_alphanumeric()).next().unwrap_or("");
        Problem {
            file: self.name.to_owned(),
            line: Some(self.line(at)),
            key: Field::from_key(key).map(|field| field.key().to_owned()),
            typed: typed.to_owned(),
            wrong,
            accepted: accepted.to_owned(),
        }
    }

    /// Whether a `[table]` line could not be read: what follows it would be put down to the wrong table.
    pub(crate) fn lost_a_table(&self) -> bool {
        self.errors.iter().any(|error| {
            let at = error.span().map_or(0, |span| span.start);
            !is_duplicate(error) && self.slice(self.line_span(at)).starts_with('[')
        })
    }
}

/// What stands before the equals sign, or the whole line.
fn head(line: &str) -> &str {
    line.split(['=', '#']).next().unwrap_or("").trim()
}

fn is_duplicate(error: &toml::de::Error) -> bool {
    error.message().starts_with("duplicate key")
}
