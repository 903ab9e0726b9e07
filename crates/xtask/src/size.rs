//! What the device program takes, each figure beside its budget and beside what was agreed.

use std::path::{Path, PathBuf};
use std::process::Stdio;

use crate::device::{Counters, Device};
use crate::elf::Weight;
use crate::firmware::{BOARDS, Board, Machine, Parts};
use crate::judge::{self, Agreed, FLASH, Figure, PLAN, RAM, STACK};
use crate::run;
use crate::toolchain::Toolchain;

#[derive(clap::Args)]
pub(crate) struct Options {
    /// Write what is measured into size.toml; budgets hold all the same
    #[arg(long)]
    pub(crate) update: bool,
}

/// The figures that were agreed.
const AGREED: &str = "firmware-demo/size.toml";

const HEAD: &str = "# What the device program takes, board by board; `cargo xtask size --update` writes this file.
# flash, ram and stack in bytes, plan in instructions. Debian's rustc made the programs.
";

/// Weighs every board's program, made by the toolchain that is the same on every machine, and runs those that can be emulated.
pub(crate) fn all(options: &Options) -> Result<String, String> {
    let toolchain = Toolchain::build_std()?;
    println!("{toolchain}");
    let agreed = if options.update { Agreed::new() } else { agreed()? };
    let (mut measured, mut wrong) = (Agreed::new(), Vec::new());
    for board in &BOARDS {
        let elf = board.build(&toolchain, Parts::All, false)?;
        let weight = Weight::of(&elf)?;
        let mut figures = vec![(&FLASH, weight.flash), (&RAM, weight.ram)];
        if let Some(machine) = &board.machine {
            let counters = counters(machine, &elf)?;
            figures.extend([(&STACK, counters.stack_used), (&PLAN, counters.plan.instructions()?)]);
        }
        println!("{}", line(board, &figures, &weight));
        let mine = agreed.get(board.name);
        for (figure, value) in figures {
            measured.entry(board.name.into()).or_default().insert(figure.name.into(), value);
            let agreed =
                if options.update { Some(value) } else { mine.and_then(|mine| mine.get(figure.name).copied()) };
            wrong.extend(judge::figure(figure, value, agreed).map(|why| format!("{}: {why}", board.name)));
        }
        wrong.extend(judge::panics(&weight.panics, board.panics_of_others).map(|why| format!("{}: {why}", board.name)));
    }
    if options.update {
        let text = toml::to_string(&measured).map_err(|error| error.to_string())?;
        std::fs::write(run::root().join(AGREED), format!("{HEAD}\n{text}"))
            .map_err(|error| format!("{AGREED}: {error}"))?;
    }
    if wrong.is_empty() {
        return Ok(format!("{} boards within their budgets and as {AGREED} says", BOARDS.len()));
    }
    Err(format!("{}\nwhat is meant to change is agreed by `cargo xtask size --update`", wrong.join("\n")))
}

fn agreed() -> Result<Agreed, String> {
    let why = |error: &dyn std::fmt::Display| format!("{AGREED}: {error}");
    let text = std::fs::read_to_string(run::root().join(AGREED)).map_err(|error| why(&error))?;
    toml::from_str(&text).map_err(|error| why(&error))
}

fn line(board: &Board, figures: &[(&Figure, u64)], weight: &Weight) -> String {
    let mut line = format!("{:12}", board.name);
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
