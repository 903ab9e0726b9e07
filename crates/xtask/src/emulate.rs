//! Boards in an emulator, for whoever has none.

use std::net::TcpListener;
use std::os::fd::OwnedFd;
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::Command;

use crate::firmware::{Board, Machine, Parts, names};
use crate::toolchain::Toolchain;
use crate::{debian, run};

pub(crate) const EMULATOR: &str = "qemu-system-arm";

#[derive(clap::Args)]
pub(crate) struct Options {
    /// microbit or mps2-an386
    board: String,
    /// Where its serial line is, on this machine; 0 takes any free port
    #[arg(long, default_value_t = 4555, value_name = "PORT")]
    tcp: u16,
    /// What its program can do
    #[arg(long, value_enum, default_value = "all")]
    parts: Parts,
    /// Show the log of mps2-an386 on standard error; the first time this builds its decoder, which takes minutes
    #[arg(long)]
    log: bool,
}

/// Builds the board's program and becomes the emulator that runs it. There is no second process: whatever ends this
/// one ends the emulator.
pub(crate) fn run(options: &Options) -> Result<(), String> {
    let board = Board::find(&options.board)?;
    let machine = machine(board)?;
    if options.log && !machine.tells {
        return Err(format!("{} keeps its log in its memory for a debug probe; without --log it runs", board.name));
    }
    let listener = listen(options.tcp)?;
    let port = listener.local_addr().map_err(|error| error.to_string())?.port();
    let toolchain = Toolchain::find()?;
    println!("{toolchain}");
    let elf = board.build(&toolchain, options.parts, options.log)?;
    install()?;
    let mut emulator = command(Command::new(EMULATOR), machine, &elf, listener);
    if options.log {
        decode(&mut emulator, &elf)?;
    }
    println!("ready tcp:127.0.0.1:{port}");
    Err(format!("{EMULATOR}: {}", emulator.exec()))
}

/// Lets the program's log out through the emulator's standard output, to a decoder that ends when that does.
fn decode(emulator: &mut Command, elf: &Path) -> Result<(), String> {
    const DECODER: &str = "defmt-print";
    let tools = run::target("tools");
    let decoder = tools.join("bin").join(DECODER);
    if !decoder.is_file() {
        run::run(run::cargo(&["install", "--locked", "--version", "1.2.0", DECODER, "--root"]).arg(&tools))?;
    }
    let (reader, writer) = std::io::pipe().map_err(|error| error.to_string())?;
    let mut decoder = Command::new(decoder);
    decoder.arg("-e").arg(elf).stdin(reader).stdout(std::io::stderr());
    decoder.spawn().map_err(|error| format!("{DECODER}: {error}"))?;
    emulator.args(["-semihosting-config", "enable=on,target=native,chardev=log"]);
    emulator.args(["-chardev", "file,id=log,path=/dev/stdout"]).stdout(writer);
    Ok(())
}

/// How the board is emulated.
pub(crate) fn machine(board: &'static Board) -> Result<&'static Machine, String> {
    let why = || format!("{} cannot be emulated; these can: {}", board.name, names(|board| board.machine.is_some()));
    board.machine.as_ref().ok_or_else(why)
}

/// The port is opened here and handed to the emulator: a client that comes at once is already heard, and a port that
/// is taken shows before anything is built.
pub(crate) fn listen(port: u16) -> Result<TcpListener, String> {
    TcpListener::bind(("127.0.0.1", port))
        .map_err(|error| format!("--tcp {port}: {error}; another number from 1024 to 65535, or 0, may be free"))
}

pub(crate) fn install() -> Result<(), String> {
    match run::ask(Command::new(EMULATOR).arg("--version")) {
        Some(_) => Ok(()),
        None => debian::install(&[EMULATOR]),
    }
}

/// The emulator, or what becomes it, which starts the program when a client is connected, so that no greeting is lost.
pub(crate) fn command(mut command: Command, machine: &Machine, elf: &Path, listener: TcpListener) -> Command {
    command.args(["-machine", machine.name, "-display", "none", "-monitor", "none", "-kernel"]).arg(elf);
    // The listening socket is its standard input. A device sends single bytes: none of them is to wait for the next.
    command.args(["-chardev", "socket,id=line,fd=0,server=on,wait=on,nodelay=on", "-serial", "chardev:line"]);
    command.stdin(OwnedFd::from(listener));
    command
}
