//! The device program, for each board.

use std::path::PathBuf;

use crate::run;
use crate::toolchain::{TARGETS, Toolchain};

/// A board that the device program is built for.
pub(crate) struct Board {
    /// Also the name of its feature.
    pub(crate) name: &'static str,
    target: &'static str,
    /// How it is emulated, for those that can be.
    pub(crate) machine: Option<Machine>,
    /// Panics that the library for its chip brings along.
    pub(crate) panics_of_others: &'static [&'static str],
}

/// A board in the emulator.
pub(crate) struct Machine {
    /// What the emulator calls it.
    pub(crate) name: &'static str,
    /// Whether its log comes out by semihosting; otherwise it stays in the memory, for a debug probe to fetch.
    pub(crate) tells: bool,
}

/// Even when it builds for size, the compiler inlines what is small wherever it is called, leaves functions apart that differ in
/// a constant, makes the same address twice, and computes what a branch may not need; it makes the same function for several
/// types, which the linker then has once.
const FLAGS: [&str; 5] = [
    "-Cllvm-args=-inline-threshold=0",
    "-Cllvm-args=-enable-global-merge-func=true",
    "-Cllvm-args=-consthoist-gep",
    "-Cllvm-args=-speculate-one-expensive-inst=false",
    "-Clink-arg=--icf=all",
];

const CORTEX_M0: &str = TARGETS[0];
const CORTEX_M4F: &str = TARGETS[1];

pub(crate) const BOARDS: [Board; 4] = [
    Board {
        name: "microbit",
        target: CORTEX_M0,
        machine: Some(Machine { name: "microbit", tells: false }),
        panics_of_others: &[],
    },
    Board {
        name: "mps2-an386",
        target: CORTEX_M4F,
        machine: Some(Machine { name: "mps2-an386", tells: true }),
        panics_of_others: &[],
    },
    Board { name: "microbit-v2", target: CORTEX_M4F, machine: None, panics_of_others: &[] },
    Board {
        name: "pico",
        target: CORTEX_M0,
        machine: None,
        panics_of_others: &["core::panicking::panic_fmt", "core::panicking::panic_const::panic_const_div_by_zero"],
    },
];

impl Board {
    pub(crate) fn find(name: &str) -> Result<&'static Self, String> {
        let found = BOARDS.iter().find(|board| board.name == name);
        found.ok_or_else(|| format!("no board `{name}`; there are {}", names(|_| true)))
    }

    /// Builds its program and gives the ELF's path.
    pub(crate) fn build(&self, toolchain: &Toolchain, parts: Parts, log: bool) -> Result<PathBuf, String> {
        const PACKAGE: &str = "ocellus-firmware";
        let features = format!("{},{}{}", self.name, parts.feature(), if log { ",log" } else { "" });
        let arguments = ["build", "--package", PACKAGE, "--profile", "firmware", "--features"];
        let mut cargo = toolchain.cargo("firmware", self.target, &FLAGS, &[&arguments[..], &[&features]].concat())?;
        if log && std::env::var_os("DEFMT_LOG").is_none() {
            cargo.env("DEFMT_LOG", "info");
        }
        run::run(&mut cargo)?;
        // Every board's program has the same name; under a name of its own it stays when the next is built.
        let folder = toolchain.target("firmware");
        let elf = folder.join(features.replace(',', "-")).with_extension("elf");
        let built = folder.join(self.target).join("firmware").join(PACKAGE);
        let kept = std::fs::copy(&built, &elf).and_then(|_| elf.canonicalize());
        kept.map_err(|error| format!("{}: {error}", built.display()))
    }
}

/// The boards of which something holds.
pub(crate) fn names(holds: impl Fn(&&Board) -> bool) -> String {
    BOARDS.iter().filter(holds).map(|board| board.name).collect::<Vec<_>>().join(", ")
}

/// What a program can do.
#[derive(Clone, Copy, clap::ValueEnum)]
pub(crate) enum Parts {
    /// Everything.
    All,
    /// A lens, a toric one too, and the read-back: the least that is of use.
    Least,
}

impl Parts {
    pub(crate) fn feature(self) -> &'static str {
        match self {
            Parts::All => "all",
            Parts::Least => "least",
        }
    }
}

#[derive(clap::Args)]
pub(crate) struct Options {
    /// microbit, mps2-an386, microbit-v2 or pico
    board: String,
    /// What it can do
    #[arg(long, value_enum, default_value = "all")]
    parts: Parts,
    /// Let it tell a debugger what happens
    #[arg(long)]
    log: bool,
}

/// Builds one board and prints the ELF's path last.
pub(crate) fn one(options: &Options) -> Result<(), String> {
    let board = Board::find(&options.board)?;
    let toolchain = Toolchain::find()?;
    println!("{toolchain}");
    let elf = board.build(&toolchain, options.parts, options.log)?;
    println!("{}", elf.display());
    Ok(())
}
