//! `ocellus batch`: a table of eyes in, a table of answers out, one row for each row and in the same order.
//!
//! A row is a line. Whatever is wrong with one is said in its last cell, and the rows after it are not touched by it.
//! Rows stream: memory does not grow with the table.

mod answer;
mod columns;
mod line;
mod row;

use std::fs::File;
use std::io::{self, BufRead, BufReader, IsTerminal, Write};
use std::process::ExitCode;

use indicatif::{ProgressBar, ProgressStyle};
use ocellus_card::draft::Draft;

use answer::Answers;
use columns::Columns;
use line::Lines;
pub use row::Fault;

use crate::problem::Problem;
use crate::text::plain;

/// Bytes read and written at a time.
const BUFFER: usize = 1 << 16;

/// A table shorter than this, in bytes, is done before a progress bar could be read.
const LONG_TABLE: u64 = 10_000_000;

/// How many rows there were.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// All of them.
    pub rows: u64,
    /// Those with something in their `error` cell.
    pub marked: u64,
}

/// Why there is no table of answers, or only a part of one.
#[derive(Debug)]
pub enum Failure {
    /// The table cannot be read.
    Read(io::Error),
    /// Its first line is not a header of known columns.
    Header(Problem),
    /// The answers cannot be written.
    Write(io::Error),
}

impl Failure {
    /// What the writer of tables says, as what happened below it: a reader who left is distinguished from a full disk.
    fn write(error: csv::Error) -> Failure {
        match error.into_kind() {
            csv::ErrorKind::Io(error) => Failure::Write(error),
            other => Failure::Write(io::Error::other(format!("{other:?}"))),
        }
    }

    /// What is reported of it.
    pub fn of(self, table: &str) -> Problem {
        match self {
            Failure::Read(error) => {
                Problem::of_file(table, format!("cannot be read: {error}"), "a table in CSV; - for standard input")
            }
            Failure::Header(problem) => Problem { file: table.to_owned(), line: Some(1), ..problem },
            Failure::Write(error) => Problem::of_file("standard output", format!("cannot be written: {error}"), ""),
        }
    }
}

/// The rows of a table, each with its entries or what is wrong with it.
pub struct Rows<R> {
    lines: Lines<R>,
    columns: Columns,
}

impl<R: BufRead> Rows<R> {
    /// Reads the header.
    ///
    /// # Errors
    /// When the table cannot be read, or has no header of known columns.
    pub fn of(input: R) -> Result<Self, Failure> {
        let mut lines = Lines::new(input);
        let columns = match lines.next().map_err(Failure::Read)? {
            Some(header) => Columns::parse(&header).map_err(Failure::Header)?,
            None => return Err(Failure::Header(columns::problem("", "the table is empty", &columns::all()))),
        };
        Ok(Rows { lines, columns })
    }
}

/// The label of a row, with its entries or what is wrong with it; or why the table cannot be read further.
type Row = Result<(String, Result<Draft, Fault>), Failure>;

impl<R: BufRead> Iterator for Rows<R> {
    type Item = Row;

    fn next(&mut self) -> Option<Row> {
        let line = self.lines.next().map_err(Failure::Read).transpose()?;
        Some(line.map(|line| row::read(&line, &self.columns)))
    }
}

/// Answers a table.
///
/// # Errors
/// When it cannot be read, has no header of known columns, or the answers cannot be written. A wrong row is not an error.
pub fn batch(input: impl BufRead, output: impl Write) -> Result<Tally, Failure> {
    let rows = Rows::of(input)?;
    let mut answers = Answers::start(output).map_err(Failure::write)?;
    let mut tally = Tally::default();
    for row in rows {
        let (id, entries) = row?;
        let case = entries.as_ref().map_err(|fault| *fault).and_then(row::case);
        tally.rows += 1;
        tally.marked += u64::from(case.is_err());
        answers.write(&id, &case).map_err(Failure::write)?;
    }
    answers.finish().map_err(Failure::write)?;
    Ok(tally)
}

/// Runs the command on a file, or on standard input for `-`, and says how it went: 0 once the table was read, else 2.
pub fn run(path: &str) -> ExitCode {
    let output = io::stdout().lock();
    let done = if path == "-" {
        batch(BufReader::with_capacity(BUFFER, io::stdin().lock()), output)
    } else {
        File::open(path).map_err(Failure::Read).and_then(|file| {
            let bar = progress(&file);
            let done = batch(BufReader::with_capacity(BUFFER, bar.wrap_read(file)), output);
            bar.finish_and_clear();
            done
        })
    };
    match done {
        Ok(Tally { marked: 0, .. }) => ExitCode::SUCCESS,
        Ok(Tally { rows, marked }) => {
            tell(format_args!("{}: {marked} of {rows} rows are marked in the column error", plain(path)));
            ExitCode::SUCCESS
        }
        // whoever read the answers has seen enough
        Err(Failure::Write(error)) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(failure) => {
            tell(format_args!("{}", failure.of(path)));
            ExitCode::from(2)
        }
    }
}

/// Says it on standard error; nobody is left to read it where that fails.
fn tell(text: std::fmt::Arguments<'_>) {
    let _ = writeln!(io::stderr().lock(), "{text}");
}

/// A bar on standard error for a long table, where a person looks at it and the answers go elsewhere.
fn progress(file: &File) -> ProgressBar {
    let length = file.metadata().map_or(0, |about| about.len());
    if length < LONG_TABLE || !io::stderr().is_terminal() || io::stdout().is_terminal() {
        return ProgressBar::hidden();
    }
    let style = ProgressStyle::with_template("{wide_bar} {bytes}/{total_bytes}, {eta} left");
    ProgressBar::new(length).with_style(style.unwrap_or(ProgressStyle::default_bar()))
}
