//! The command `ocellus`.

use clap::Parser;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::readback::Identifiers;
use ocellus_cli::args::{Arguments, Command};
use ocellus_cli::device::{self, terminal};
use ocellus_cli::files::{self, is_stdin, read_draft};
use ocellus_cli::problem::{Problem, Stop};
use ocellus_cli::sweep::Sweep;
use ocellus_cli::{batch, card, draw, explain, fields, group, identify, json};
use ocellus_console::Wanted;
use std::io::{self, IsTerminal, Write};
use std::process::ExitCode;

/// Something was refused, or two machines differ: part of the answer has no number.
const REFUSED: u8 = 1;
/// The command or a file could not be used.
const UNUSABLE: u8 = 2;
/// No device answered, or the line to it failed.
const NO_LINE: u8 = 3;

fn main() -> ExitCode {
    let (code, problems) = match run(Arguments::parse().command) {
        Ok(code) => return code,
        Err(Stop::Unusable(problems)) => (UNUSABLE, problems),
        Err(Stop::NoLine(problem)) => (NO_LINE, vec![problem]),
    };
    let mut errors = io::stderr().lock();
    for problem in problems {
        // nobody is left to read it where this fails
        let _ = writeln!(errors, "{problem}");
    }
    ExitCode::from(code)
}

/// Does what was asked, and says whether all of it could be answered.
fn run(command: Command) -> Result<ExitCode, Stop> {
    // Gathered first and written at once, so that a reader who leaves early does not change what is found.
    let mut page = Vec::new();
    let answered = match command {
        Command::Plan { case, short, json, identify } => {
            let case_is_stdin = is_stdin(&case.case);
            let draft = read_draft(&case)?;
            let case = case_of(&draft)?;
            let identifiers = if identify { Some(ask(case_is_stdin)?) } else { None };
            let refused = if json {
                json::print_plan(&case, identifiers.as_ref(), &mut page)
            } else {
                let wanted = if short { Wanted::Short } else { Wanted::All };
                card::print(wanted, &draft, &|sink| case.plan(sink), identifiers.as_ref(), bold(), &mut page)
            };
            refused.map(|refused| !refused)
        }
        Command::Explain { subject, case, json } => {
            let draft = read_draft(&case)?;
            let case = case_of(&draft)?;
            if json {
                json::print_explain(subject, &case, &mut page)
            } else {
                explain::print(subject, &case, &mut page)
            }
        }
        Command::Draw { picture, case, output } => {
            let draft = read_draft(&case)?;
            let svg = draw::draw(picture, &case_of(&draft)?)?;
            match output {
                Some(file) => files::write(&file, &svg).map(|()| Ok(true))?,
                None => page.write_all(svg.as_bytes()).map(|()| true),
            }
        }
        Command::Sweep { entry, from, to, case, rows, items, output } => {
            let draft = read_draft(&case)?;
            let sweep = Sweep::of(&draft, &entry, [&from, &to], rows, &items)?;
            if let Some(file) = output {
                files::write(&file, &sweep.draw()?)?;
            }
            sweep.print(&mut page).map(|()| true)
        }
        Command::Group { table, mirror_left, points, json, output } => {
            let (name, bytes) = files::read(&table)?;
            let eyes = group::read(&name, &bytes, mirror_left)?;
            if let Some(file) = output {
                files::write(&file, &eyes.draw()?)?;
            }
            match (points, json) {
                (true, _) => eyes.print_points(&mut page),
                (_, true) => eyes.print_json(&mut page),
                _ => eyes.print(&mut page),
            }
            .map(|()| true)
        }
        Command::Batch { table } => return Ok(batch::run(&table)),
        Command::Device(question) => Ok(device::ask(question, bold(), &mut page)?),
        Command::Console => terminal::here().map(|()| true),
        Command::Fields { markdown: true } => fields::print_markdown(&mut page).map(|()| true),
        Command::Fields { markdown: false } => fields::print(&mut page).map(|()| true),
    };
    let answered = answered.map_err(|error| output(&error))?;
    match io::stdout().lock().write_all(&page).and_then(|()| io::stdout().flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(output(&error).into()),
        _ if answered => Ok(ExitCode::SUCCESS),
        _ => Ok(ExitCode::from(REFUSED)),
    }
}

fn output(error: &io::Error) -> Vec<Problem> {
    vec![Problem::of_file("standard output", format!("cannot be written: {error}"), "")]
}

/// The case or set-up of a draft that was read, and found to be one.
fn case_of(draft: &Draft) -> Result<Case<'_>, Vec<Problem>> {
    Case::check(draft, &mut |_| {}).ok_or(vec![Problem::of_file("the case", "not a case", "")])
}

fn ask(case_is_stdin: bool) -> Result<Identifiers, Vec<Problem>> {
    let refused = |wrong: String| vec![Problem::of_file("--identify", wrong, "two names of 1 to 24 characters, typed")];
    if case_is_stdin {
        return Err(refused("the case was read from standard input, so nothing can be typed there".to_owned()));
    }
    identify::ask(&mut io::stdin().lock(), &mut io::stderr().lock()).map_err(|error| refused(error.to_string()))
}

/// Bold type only at a person's terminal, and where it was not switched off.
fn bold() -> bool {
    io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty())
}
