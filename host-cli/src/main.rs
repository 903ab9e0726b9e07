//! The command `ocellus`.

use clap::Parser;
use ocellus_cli::args::{Arguments, CaseFiles, Command};
use ocellus_cli::catalogue::{self, Catalogue};
use ocellus_cli::problem::Problem;
use ocellus_cli::{batch, card, case_file, explain, fields, identify, json};
use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::readback::Identifiers;
use std::fs::File;
use std::io::{self, IsTerminal, Read, Write};
use std::path::Path;
use std::process::ExitCode;

/// Something was refused: part of the answer has no number.
const REFUSED: u8 = 1;
/// The command or a file could not be used.
const UNUSABLE: u8 = 2;

fn main() -> ExitCode {
    run(Arguments::parse().command).unwrap_or_else(|problems| {
        let mut errors = io::stderr().lock();
        for problem in problems {
            // nobody is left to be told where this fails
            let _ = writeln!(errors, "{problem}");
        }
        ExitCode::from(UNUSABLE)
    })
}

/// Does what was asked, and says whether all of it could be answered.
fn run(command: Command) -> Result<ExitCode, Vec<Problem>> {
    // Gathered first and written at once, so that a reader who leaves early does not change what is found.
    let mut page = Vec::new();
    let answered = match command {
        Command::Plan { case, json, identify } => {
            let case_is_stdin = is_stdin(&case.case);
            let draft = read_draft(&case)?;
            let case = checked(&draft)?;
            let identifiers = if identify { Some(ask(case_is_stdin)?) } else { None };
            let refused = if json {
                json::print_plan(&case, identifiers.as_ref(), &mut page)
            } else {
                card::print(&case, identifiers.as_ref(), bold(), &mut page)
            };
            refused.map(|refused| !refused)
        }
        Command::Explain { subject, case, json } => {
            let draft = read_draft(&case)?;
            let case = checked(&draft)?;
            if json {
                json::print_explain(subject, &case, &mut page)
            } else {
                explain::print(subject, &case, &mut page)
            }
        }
        Command::Batch { table } => return Ok(batch::run(&table)),
        Command::Fields { markdown: true } => fields::print_markdown(&mut page).map(|()| true),
        Command::Fields { markdown: false } => fields::print(&mut page).map(|()| true),
    };
    let answered = answered.map_err(|error| output(&error))?;
    match io::stdout().lock().write_all(&page).and_then(|()| io::stdout().flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(output(&error)),
        _ if answered => Ok(ExitCode::SUCCESS),
        _ => Ok(ExitCode::from(REFUSED)),
    }
}

fn output(error: &io::Error) -> Vec<Problem> {
    vec![Problem::of_file("standard output", format!("cannot be written: {error}"), "")]
}

fn read_draft(files: &CaseFiles) -> Result<Draft, Vec<Problem>> {
    let catalogue = files.lenses.as_deref().map(read_catalogue).transpose()?;
    let (name, bytes) = read(&files.case)?;
    case_file::case(&name, &bytes, catalogue.as_ref())
}

/// The case of a draft that was read, and found to be one.
fn checked(draft: &Draft) -> Result<Case<'_>, Vec<Problem>> {
    Case::try_from(draft).map_err(|error| vec![Problem::of_file("the case", error.code.text(), "")])
}

fn read_catalogue(path: &Path) -> Result<Catalogue, Vec<Problem>> {
    let (name, bytes) = read(path)?;
    catalogue::read(&name, &bytes)
}

/// Bytes of the longest file that is read: a case has a few thousand, a long list of lenses a few hundred thousand.
const LONGEST: u64 = 1 << 20;

/// The name of a file and its bytes.
fn read(path: &Path) -> Result<(String, Vec<u8>), Vec<Problem>> {
    let name = if is_stdin(path) { "standard input".to_owned() } else { path.display().to_string() };
    let refused = |wrong: String, accepted| vec![Problem::of_file(&name, wrong, accepted)];
    let bytes = if is_stdin(path) { start(io::stdin().lock()) } else { File::open(path).and_then(start) }
        .map_err(|error| refused(format!("cannot be read: {error}"), "a file; - for standard input"))?;
    if bytes.len() as u64 > LONGEST {
        return Err(refused("too long for a case or a list of lenses".to_owned(), "at most 1 MiB"));
    }
    Ok((name, bytes))
}

/// As much as can be used, and a byte more.
fn start(input: impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    input.take(LONGEST + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn is_stdin(path: &Path) -> bool {
    path.as_os_str() == "-"
}

fn ask(case_is_stdin: bool) -> Result<Identifiers, Vec<Problem>> {
    let refused = |wrong: String| vec![Problem::of_file("--identify", wrong, "two names of 1 to 24 characters, typed")];
    if case_is_stdin {
        return Err(refused("the case was read from standard input, so nothing can be typed there".to_owned()));
    }
    identify::ask(&mut io::stdin().lock(), &mut io::stderr().lock()).map_err(|error| refused(error.to_string()))
}

/// Bold type only where a person looks on and has not asked for none.
fn bold() -> bool {
    io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty())
}
