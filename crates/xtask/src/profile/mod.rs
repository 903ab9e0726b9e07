//! Where a device's instructions and its flash go: the same program that `size` weighs.

mod name;
mod program;
mod table;
mod trace;

use std::io::BufReader;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::sync::mpsc;
use std::time::Duration;

use self::program::{Piece, Program};
use self::trace::Counts;
use crate::device::{Device, Ended};
use crate::emulate;
use crate::firmware::{Board, Machine, Parts};
use crate::toolchain::Toolchain;

#[derive(clap::Args)]
pub(crate) struct Options {
    /// microbit or mps2-an386
    board: String,
    /// A case file
    case: PathBuf,
    /// List every function, however little it takes
    #[arg(long)]
    all: bool,
    /// List functions by flash too
    #[arg(long)]
    functions: bool,
}

/// The function that makes a whole card, and whom a device calls between two readings of its clock.
const PLAN: &str = "<ocellus_card::case::Case>::plan";

/// How long a traced plan may take, from the program's start: on two cores five million instructions took four seconds.
const LONGEST: Duration = Duration::from_secs(120);

/// Builds the board's program, runs one plan of the case instruction by instruction, and prints both tables.
pub(crate) fn run(options: &Options) -> Result<(), String> {
    let board = Board::find(&options.board)?;
    let machine = emulate::machine(board)?;
    let case = case_file(&options.case)?;
    let toolchain = Toolchain::build_std()?;
    println!("{toolchain}");
    let elf = board.build(&toolchain, Parts::All, false)?;
    let program = Program::read(&elf)?;
    let entry = program.address(PLAN)?;
    let said = Device::start(machine, &elf)?.counters(&case)?.plan.instructions()?;
    let counts = plan(machine, &elf, &case, entry)?;
    let counted = counts.values().sum();
    let least = if options.all { 0 } else { table::SMALL };

    println!("\n{}", table::text("instructions", "function", &program.by_function(&counts), least));
    println!("{}\n", differ(counted, said)?);
    println!("{}", table::text("flash bytes", "module", &program.flash(Piece::module), 0));
    if options.functions {
        println!("\n{}", table::text("flash bytes", "function or table", &program.flash(Piece::short), least));
    }
    Ok(())
}

fn case_file(path: &Path) -> Result<PathBuf, String> {
    let why = |error: &dyn std::fmt::Display| format!("case {}: {error}", path.display());
    let case = path.canonicalize().map_err(|error| why(&error))?;
    if case.is_file() { Ok(case) } else { Err(why(&"this is no file")) }
}

/// How often each instruction of one plan ran. A plan may take longer than the host program waits before it asks again:
/// the program is ended when the plan begins, so that no other question interrupts it.
fn plan(machine: &Machine, elf: &Path, case: &Path, entry: u64) -> Result<Counts, String> {
    let (device, lines) = Device::traced(machine, elf)?;
    let mut asking = Some(Ended::start(device.ask(&["counters"]).arg(case).stdout(Stdio::null()))?);
    let (sender, receiver) = mpsc::channel();
    // It ends with the emulator, at the latest.
    std::thread::spawn(move || sender.send(trace::of_call(BufReader::new(lines), entry, || drop(asking.take()))));
    let why = |_| format!("no plan within {} s, instruction by instruction", LONGEST.as_secs());
    receiver.recv_timeout(LONGEST).map_err(why)?
}

/// The count beside what the device's own clock said.
fn differ(counted: u64, said: u64) -> Result<String, String> {
    let difference = counted.abs_diff(said);
    let text = format!("the device's clock, as in `cargo xtask size`: {said} instructions, {difference} apart");
    // a clock's tick is a thousand instructions at most, on either side
    if difference > said / 50 + 2000 { Err(format!("{counted} instructions counted; {text}")) } else { Ok(text) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_count_is_near_what_the_clock_said_or_it_is_refused() {
        assert!(differ(3_968_123, 3_969_000).unwrap().ends_with("3969000 instructions, 877 apart"));
        assert!(differ(4_100_000, 3_969_000).unwrap_err().starts_with("4100000 instructions counted; "));
        assert!(differ(0, 3_969_000).is_err());
    }

    #[test]
    fn what_cannot_be_profiled_is_said_before_anything_is_built() {
        let why = |board: &str, case: &str| {
            run(&Options { board: board.into(), case: case.into(), all: false, functions: false }).unwrap_err()
        };
        assert!(why("abacus", "Cargo.toml").starts_with("no board `abacus`"));
        assert!(why("pico", "Cargo.toml").starts_with("pico cannot be emulated"));
        assert!(why("microbit", "no/such.toml").starts_with("case no/such.toml: "));
        assert_eq!(why("microbit", "src"), "case src: this is no file");
    }
}
