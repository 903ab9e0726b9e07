//! A board's program in the emulator, and the host program that asks it.

use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};

use serde::Deserialize;

use crate::firmware::Machine;
use crate::{emulate, run};

/// A program that runs until its owner ends.
pub(crate) struct Device {
    emulator: Ended,
    port: String,
}

impl Device {
    /// Starts it: one instruction takes one nanosecond, repeatable to the tick.
    pub(crate) fn start(machine: &Machine, elf: &Path) -> Result<Self, String> {
        Self::with(machine, elf, |_| {})
    }

    /// Starts it and has the emulator write a line for each instruction, as one that follows tells.
    pub(crate) fn traced(machine: &Machine, elf: &Path) -> Result<(Self, ChildStdout), String> {
        let mut device = Self::with(machine, elf, |emulator| {
            emulator.args(["-singlestep", "-d", "exec,nochain", "-D", "/dev/stdout"]).stdout(Stdio::piped());
        })?;
        let trace = device.emulator.0.stdout.take().ok_or("the emulator has no standard output")?;
        Ok((device, trace))
    }

    fn with(machine: &Machine, elf: &Path, more: impl FnOnce(&mut Command)) -> Result<Self, String> {
        emulate::install()?;
        let listener = emulate::listen(0)?;
        let port = listener.local_addr().map_err(|error| error.to_string())?.port();
        // It ends with this process even where that is ended from outside, and nothing is dropped.
        let mut bound = Command::new("setpriv");
        bound.args(["--pdeathsig", "KILL", emulate::EMULATOR]);
        let mut emulator = emulate::command(bound, machine, elf, listener);
        emulator.args(["-icount", "shift=0"]);
        more(&mut emulator);
        Ok(Self { emulator: Ended::start(&mut emulator)?, port: format!("tcp:127.0.0.1:{port}") })
    }

    /// The host program with a question to it.
    pub(crate) fn ask(&self, arguments: &[&str]) -> Command {
        let mut cli = run::cargo(&["run", "--quiet", "--release", "--package", "ocellus-cli", "--", "device"]);
        cli.args(arguments).args(["--port", &self.port]);
        cli
    }

    /// What it says about itself after a plan of this case.
    pub(crate) fn counters(&self, case: &Path) -> Result<Counters, String> {
        let said = run::run_and_keep(self.ask(&["counters", "--json"]).arg(case))?.join("\n");
        serde_json::from_str(&said).map_err(|error| format!("device counters: {error}: {said}"))
    }
}

/// What a device says about itself.
#[derive(Deserialize)]
pub(crate) struct Counters {
    pub(crate) stack_used: u64,
    pub(crate) plan: Took,
}

/// How long it took over a plan.
#[derive(Deserialize)]
pub(crate) struct Took {
    ticks: u64,
    ticks_per_second: u64,
}

impl Took {
    /// The emulator takes a nanosecond for an instruction.
    pub(crate) fn instructions(&self) -> Result<u64, String> {
        let nanoseconds = (self.ticks * 1_000_000_000).checked_div(self.ticks_per_second);
        nanoseconds.ok_or_else(|| "the device says that a second has no ticks".into())
    }
}

/// A process that does not outlive its owner.
pub(crate) struct Ended(Child);

impl Ended {
    pub(crate) fn start(command: &mut Command) -> Result<Self, String> {
        let program = command.get_program().to_string_lossy().into_owned();
        command.spawn().map(Self).map_err(|error| format!("{program}: {error}"))
    }
}

impl Drop for Ended {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_become_instructions() {
        let took = |ticks, ticks_per_second| Took { ticks, ticks_per_second }.instructions();
        assert_eq!(took(35_000, 25_000_000), Ok(1_400_000));
        assert_eq!(took(1_400, 1_000_000), Ok(1_400_000));
        assert!(took(1, 0).is_err());
    }
}
