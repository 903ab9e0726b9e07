//! Every chore of this project behind one entry. One file a chore; each does its own set-up and asks nobody anything.

mod debian;
mod device;
mod elf;
mod emulate;
mod evidence;
mod firmware;
mod fuzz;
mod judge;
mod parts;
mod perturb;
mod profile;
mod readme;
mod run;
mod size;
mod texts;
mod toolchain;
mod trial;
mod verify;

use std::process::ExitCode;

use clap::{Parser, Subcommand};

#[derive(Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask", about = "The chores of this project")]
struct Arguments {
    #[command(subcommand)]
    chore: Chore,
}

#[derive(Subcommand)]
enum Chore {
    /// Everything CI asks, step by step, stopping at the first that fails
    Verify,
    /// Build the card with each part alone, without each, and without any
    Parts,
    /// Run every check against outside numbers, count what holds, name functions without evidence
    Evidence,
    /// Move each constant by a unit in its last printed digit; some check must notice
    Perturb,
    /// Build the device program for a board; the last line is the ELF's path
    Firmware(firmware::Options),
    /// Run the device program in an emulator, its serial line on a TCP port
    Emulate(emulate::Options),
    /// Weigh the device program: flash, RAM, stack, instructions, panics, each beside its budget
    Size(size::Options),
    /// Tell where a plan's instructions and the flash go, function by function and module by module
    Profile(profile::Options),
    /// Find anew by which pairs the device's texts are folded
    Texts,
    /// Add a part of the card and a lens method to a copy, as the page says; build, ask, and count the files
    Trial,
    /// Throw bytes at everything that reads bytes
    Fuzz(fuzz::Options),
}

fn main() -> ExitCode {
    let done = match Arguments::parse().chore {
        Chore::Verify => verify::all(),
        Chore::Parts => parts::all().map(|said| println!("{said}")),
        Chore::Evidence => evidence::report().map(drop),
        Chore::Perturb => perturb::every_constant().map(drop),
        Chore::Firmware(options) => firmware::one(&options),
        Chore::Emulate(options) => emulate::run(&options),
        Chore::Size(options) => size::all(&options).map(drop),
        Chore::Profile(options) => profile::run(&options),
        Chore::Texts => texts::fold().map(|said| println!("{said}")),
        Chore::Trial => trial::all().map(|said| println!("{said}")),
        Chore::Fuzz(options) => fuzz::run(&options).map(|said| println!("{said}")),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("xtask: {why}");
            ExitCode::FAILURE
        }
    }
}
