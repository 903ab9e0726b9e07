//! What the device program takes, each figure beside its budget and beside what was agreed.

use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::sync::Mutex;

use crate::device::{Counters, Device};
use crate::elf::Weight;
use crate::firmware::{Board, Machine, Parts};
use crate::judge::{self, Agreed, FLASH, FLASH_OF_LARGER, FLASH_OF_LEAST, Figure, PLAN, RAM, STACK};
use crate::toolchain::Toolchain;
use crate::{lanes, run};

#[derive(clap::Args)]
pub(crate) struct Options {
    /// Write what is measured into size.toml; budgets hold all the same
    #[arg(long)]
    pub(crate) update: bool,
}

/// What is weighed: a board, what its program can do, and the flash that this may take.
const PROGRAMS: [(&str, Parts, &Figure); 5] = [
    ("microbit", Parts::All, &FLASH),
    ("microbit", Parts::Least, &FLASH_OF_LEAST),
    ("mps2-an386", Parts::All, &FLASH_OF_LARGER),
    ("microbit-v2", Parts::All, &FLASH_OF_LARGER),
    ("pico", Parts::All, &FLASH_OF_LARGER),
];

/// The figures that were agreed.
const AGREED: &str = "firmware-demo/size.toml";

const HEAD: &str = "# What the device program takes, program by program; `cargo xtask size --update` writes this file.
# flash, ram and stack in bytes, plan in instructions. Debian's rustc made the programs.
";

/// A program, its figures, and the panics in it that are no library's.
struct Weighed {
    name: String,
    figures: Vec<(&'static Figure, u64)>,
    panics: Option<String>,
}

/// Weighs every program, made by the toolchain that is the same on every machine, and runs those that can be emulated.
pub(crate) fn all(options: &Options) -> Result<String, String> {
    let toolchain = Toolchain::build_std()?;
    println!("{toolchain}");
    let agreed = if options.update { Agreed::new() } else { agreed()? };
    let (mut measured, mut wrong) = (Agreed::new(), Vec::new());
    // one is built while another runs
    let building = Mutex::new(());
    for Weighed { name, figures, panics } in lanes::each(&PROGRAMS, |_, program| weigh(program, &toolchain, &building))?
    {
        let mine = agreed.get(&name);
        for (figure, value) in &figures {
            let agreed = mine.and_then(|mine| mine.get(figure.name).copied());
            let agreed = if options.update { Some(*value) } else { agreed };
            wrong.extend(judge::figure(figure, *value, agreed).map(|why| format!("{name}: {why}")));
        }
        wrong.extend(panics.map(|why| format!("{name}: {why}")));
        measured.insert(name, figures.iter().map(|(figure, value)| (figure.name.into(), *value)).collect());
    }
    if options.update {
        let text = toml::to_string(&measured).map_err(|error| error.to_string())?;
        std::fs::write(run::root().join(AGREED), format!("{HEAD}\n{text}"))
            .map_err(|error| format!("{AGREED}: {error}"))?;
    }
    if wrong.is_empty() {
        return Ok(format!("{} programs within their budgets and as {AGREED} says", PROGRAMS.len()));
    }
    Err(format!("{}\nwhat is meant to change is agreed by `cargo xtask size --update`", wrong.join("\n")))
}

fn agreed() -> Result<Agreed, String> {
    let why = |error: &dyn std::fmt::Display| format!("{AGREED}: {error}");
    let text = std::fs::read_to_string(run::root().join(AGREED)).map_err(|error| why(&error))?;
    toml::from_str(&text).map_err(|error| why(&error))
}

fn weigh(
    program: &(&str, Parts, &'static Figure),
    toolchain: &Toolchain,
    building: &Mutex<()>,
) -> Result<Weighed, String> {
    let (board, parts, flash) = *program;
    let board = Board::find(board)?;
    let name = name(board, parts);
    let one = building.lock().map_err(|error| error.to_string())?;
    let elf = board.build(toolchain, parts, false)?;
    drop(one);
    let weight = Weight::of(&elf)?;
    let mut figures = vec![(flash, weight.flash), (&RAM, weight.ram)];
    if let Some(machine) = &board.machine {
        let counters = counters(machine, &elf)?;
        figures.extend([(&STACK, counters.stack_used), (&PLAN, counters.plan.instructions()?)]);
    }
    println!("{}", line(&name, board, &figures, &weight));
    Ok(Weighed { name, figures, panics: judge::panics(&weight.panics, board.panics_of_others) })
}

/// What a program is called: by its board, and by what it can do where that is not everything.
fn name(board: &Board, parts: Parts) -> String {
    match parts {
        Parts::All => board.name.into(),
        Parts::Least => format!("{}-{}", board.name, parts.feature()),
    }
}

fn line(name: &str, board: &Board, figures: &[(&Figure, u64)], weight: &Weight) -> String {
    let mut line = format!("{name:14}");
    for figure in [&FLASH, &RAM, &STACK, &PLAN] {
        match figures.iter().find(|(measured, _)| measured.name == figure.name) {
            Some((Figure { name, unit, budget, .. }, value)) => line += &format!("  {name} {value} of {budget} {unit}"),
            None => line += &format!("  {} not run", figure.name),
        }
    }
    let of_others = weight.panics.iter().filter(|name| board.panics_of_others.contains(&name.as_str())).count();
    line += &format!("  panics {} of 0", weight.panics.len() - of_others);
    if of_others > 0 {
        line += &format!(", and {of_others} of the chip's library");
    }
    line
}

/// A case that asks much of a device, and what is then typed: every word it knows.
const CASE: &str = "demo-data/long-toric.toml";
const SESSION: &str = "firmware-demo/session.txt";

/// Runs the program, has it answer all that a person and a desk can ask, and asks what that took.
fn counters(machine: &Machine, elf: &Path) -> Result<Counters, String> {
    let device = Device::start(machine, elf)?;
    let mut typed = Vec::new();
    for file in [CASE, SESSION] {
        typed.extend(std::fs::read(run::root().join(file)).map_err(|error| format!("{file}: {error}"))?);
    }
    run::feed(&mut device.ask(&["console"]), &typed)?;
    // every case that is there: the deepest call may be of an eye that this one is not
    run::run(device.ask(&["compare"]).args(cases()?).stdout(Stdio::null()))?;
    device.counters(Path::new(CASE))
}

/// The demonstration cases.
fn cases() -> Result<Vec<PathBuf>, String> {
    let mut cases = Vec::new();
    for folder in ["demo-data", "demo-data/fluids"] {
        let files = std::fs::read_dir(run::root().join(folder)).map_err(|error| format!("{folder}: {error}"))?;
        cases.extend(files.filter_map(|file| Some(file.ok()?.path())));
    }
    cases.retain(|path| path.extension().is_some_and(|ending| ending == "toml"));
    cases.sort();
    Ok(cases)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::firmware::BOARDS;

    #[test]
    fn every_board_is_weighed_with_everything_and_no_two_programs_have_one_name() {
        let mut names = PROGRAMS.map(|(board, parts, _)| name(Board::find(board).unwrap(), parts));
        names.sort();
        assert!(names.windows(2).all(|pair| pair[0] != pair[1]), "{names:?}");
        assert!(BOARDS.iter().all(|board| names.iter().any(|name| name == board.name)), "{names:?}");
        assert!(names.contains(&"microbit-least".to_owned()), "{names:?}");
    }
}
