//! A device on a line: asked, checked, compared.

pub mod compare;
pub mod line;
pub mod port;
pub mod tell;
pub mod terminal;

use self::compare::Comparison;
use self::line::{Line, Trouble};
use crate::args::{Device, Port};
use crate::batch::{Failure, Rows};
use crate::card;
use crate::catalogue::Catalogue;
use crate::files::{read_case, read_catalogue, read_draft};
use crate::problem::{Problem, Stop};
use crate::text::{paragraph, plain};
use indicatif::{ProgressBar, ProgressStyle};
use ocellus_card::draft::Draft;
use ocellus_card::id::{EntryId, PartId};
use ocellus_card::readback::Answers;
use ocellus_console::Wanted;
use ocellus_link::code::Outcome;
use ocellus_link::entries::{for_device, text};
use ocellus_text::Text;
use std::fs::File;
use std::io::{self, BufReader, Write};
use std::path::{Path, PathBuf};

/// Asks a device, and says whether the answer is all that was hoped for: nothing refused, nothing different.
///
/// # Errors
/// When a file cannot be used, or the device does not answer.
pub fn ask(question: Device, bold: bool, out: &mut dyn Write) -> Result<bool, Stop> {
    match question {
        Device::Hello { port } => {
            with(&port, |line| tell::hello(line, out))?;
            Ok(true)
        }
        Device::Plan { case, port } => {
            let draft = read_draft(&case)?;
            with(&port, |line| plan(line, &draft, bold, out))
        }
        Device::Compare { cases, lenses, port } => {
            let catalogue = lenses.as_deref().map(read_catalogue).transpose()?;
            compare(&cases, catalogue.as_ref(), &port, out)
        }
        Device::Console { port } => {
            let device = port::open(&port.name).map_err(|error| no_line(&port, &Trouble::NotOpened(error)))?;
            terminal::with(device).map_err(|error| match error.kind() {
                io::ErrorKind::InvalidData => {
                    Stop::Unusable(vec![Problem::of_file("standard input", error.to_string(), "")])
                }
                _ => no_line(&port, &error.into()),
            })?;
            Ok(true)
        }
        Device::Counters { case, json, port } => {
            let draft = case.map(|path| read_case(&path, None)).transpose()?;
            with(&port, |line| tell::counters(line, draft.as_ref(), json, out))?;
            Ok(true)
        }
    }
}

/// Opens the line and uses it; what fails is reported with its name.
fn with<T>(port: &Port, use_it: impl FnOnce(&mut Line) -> Result<T, Trouble>) -> Result<T, Stop> {
    use_it(&mut line(port)?).map_err(|trouble| no_line(port, &trouble))
}

fn line(port: &Port) -> Result<Line, Stop> {
    let opened = port::open(&port.name).map_err(Trouble::NotOpened).and_then(Line::open);
    opened.map_err(|trouble| no_line(port, &trouble))
}

fn no_line(port: &Port, trouble: &Trouble) -> Stop {
    let accepted = match trouble {
        Trouble::NotOpened(_) => "a serial line, as /dev/ttyACM0, or tcp:HOST:PORT for an emulator",
        _ => "",
    };
    Stop::NoLine(Problem::of_file(&port.name, trouble.to_string(), accepted))
}

/// The card, from what the device streamed; its own read-back must be the one that follows from that.
fn plan(line: &mut Line, draft: &Draft, bold: bool, out: &mut dyn Write) -> Result<bool, Trouble> {
    let (sent, board) = (&for_device(draft, line.welcome()), text(&line.welcome().board).to_owned());
    let left = keys(draft.made().filter(|entry| !sent.has(*entry)).map(EntryId::key));
    if !left.is_empty() {
        paragraph(out, "", format_args!("Not on this card, since {board} has no part for them: {left}."))?;
        writeln!(out)?;
    }
    let (answer, code) = (line.plan(sent)?, line.read_back(sent)?);
    if answer.outcome == Outcome::NotACase {
        writeln!(out, "Without them this is not a case, and nothing is computed.")?;
        return Ok(false);
    }
    let refused = card::print(Wanted::All, sent, &|sink| answer.play(sink), None, bold, out)?;
    let mut answers = Answers::default();
    answer.play(&mut answers);
    let ours = answers.code(sent, None).ok().map(|code| code.as_str().to_owned());
    let theirs = code.map(|code| text(&code.characters).to_owned());
    writeln!(out, "\nComputed by {board}.")?;
    if theirs != ours {
        writeln!(out, "CAUTION: the device gives the read-back {theirs:?} for this card. Do not use it.")?;
    }
    Ok(!refused && theirs == ours)
}

/// Names in a sentence.
fn keys(names: impl Iterator<Item = Text>) -> String {
    names.map(|name| name.to_string()).collect::<Vec<_>>().join(", ")
}

/// Compares files and tables, and prints the first difference of each case that has one.
fn compare(paths: &[PathBuf], catalogue: Option<&Catalogue>, port: &Port, out: &mut dyn Write) -> Result<bool, Stop> {
    let mut comparison = Comparison::default();
    let mut line = line(port)?;
    let failed = |trouble: Trouble| no_line(port, &trouble);
    comparison.units(&mut line).map_err(failed)?;
    let bar = progress();
    let mut unread = 0;
    for path in paths {
        let name = path.display().to_string();
        bar.set_message(name.clone());
        if path.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("csv")) {
            let unusable = |failure: Failure| Stop::Unusable(vec![failure.of(&name)]);
            for (place, row) in table(path).map_err(unusable)?.enumerate() {
                let (id, entries) = row.map_err(unusable)?;
                match entries {
                    Ok(draft) => {
                        let name = format!("{name}: row {} ({id})", place + 1);
                        comparison.case(&name, &draft, &mut line).map_err(failed)?;
                    }
                    Err(_) => unread += 1,
                }
                bar.inc(1);
            }
        } else {
            let draft = read_case(path, catalogue)?;
            comparison.case(&name, &draft, &mut line).map_err(failed)?;
            bar.inc(1);
        }
    }
    bar.finish_and_clear();
    report(&comparison, unread, &line, out).map_err(|error| no_line(port, &error.into()))?;
    Ok(comparison.differences.is_empty())
}

fn table(path: &Path) -> Result<Rows<BufReader<File>>, Failure> {
    Rows::of(BufReader::new(File::open(path).map_err(Failure::Read)?))
}

/// The most differences that are printed one by one.
const LISTED: usize = 20;

fn report(comparison: &Comparison, unread: usize, line: &Line, out: &mut dyn Write) -> io::Result<()> {
    let Comparison { cases, refused, of_lacking_parts, numbers, differences } = comparison;
    for difference in differences.iter().take(LISTED) {
        writeln!(out, "DIFFERS  {}", plain(difference))?;
    }
    if differences.len() > LISTED {
        writeln!(out, "         and {} more", differences.len() - LISTED)?;
    }
    let board = text(&line.welcome().board);
    let verdict = match differences.len() {
        0 => "all bits equal".to_owned(),
        count => format!("{count} DIFFER"),
    };
    let noun = if *cases == 1 { "case" } else { "cases" };
    writeln!(out, "{board}: {cases} {noun}, {numbers} numbers, {verdict}")?;
    for (count, what) in [
        (*refused, "of them not a case, refused on both sides for the same reasons"),
        (*of_lacking_parts, "more need parts that the device lacks, and were compared with nothing"),
        (unread, "rows that cannot be read, and were compared with nothing"),
    ] {
        if count > 0 {
            writeln!(out, "  {count} {what}")?;
        }
    }
    let lacks = keys(line.welcome().lacks().map(PartId::key));
    if !lacks.is_empty() {
        paragraph(out, "  ", format_args!("not compared, since the device lacks these parts of the card: {lacks}"))?;
    }
    if line.asked_again() > 0 {
        writeln!(out, "  {} questions had to be asked again: the line is not clean", line.asked_again())?;
    }
    Ok(())
}

/// A count on standard error, where it is a person's terminal.
fn progress() -> ProgressBar {
    let style = ProgressStyle::with_template("{pos} cases compared, {elapsed}, {wide_msg}");
    ProgressBar::new_spinner().with_style(style.unwrap_or(ProgressStyle::default_spinner()))
}
