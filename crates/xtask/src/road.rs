//! Building for the microcontrollers, on a machine that may lack their targets.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::{debian, run};

/// Cortex-M0, and Cortex-M4 with its float unit.
pub(crate) const TARGETS: [&str; 2] = ["thumbv6m-none-eabi", "thumbv7em-none-eabihf"];

/// How this machine comes by a core library for the targets.
pub(crate) enum Road {
    /// The toolchain has it.
    Installed,
    /// rustup brought it.
    Added,
    /// Debian's rustc and its sources, from which cargo builds it.
    BuildStd { rustc: PathBuf },
}

impl Road {
    /// The first road that leads there.
    pub(crate) fn find() -> Result<Self, String> {
        if TARGETS.iter().all(|target| has_core(target)) {
            return Ok(Self::Installed);
        }
        if run::ask(Command::new("rustup").args(["target", "add"]).args(TARGETS)).is_some() {
            return Ok(Self::Added);
        }
        Self::build_std()
    }

    /// The last of them, which is the same on every machine: what comes out can be compared by size.
    pub(crate) fn build_std() -> Result<Self, String> {
        debian::install(&["rustc-web", "rust-web-src"])?;
        let files = run::ask(Command::new("dpkg").args(["-L", "rustc-web"])).unwrap_or_default();
        let rustc = files.lines().find(|path| path.ends_with("bin/rustc")).ok_or("rustc-web holds no rustc")?;
        Ok(Self::BuildStd { rustc: rustc.into() })
    }

    /// Cargo on this road, with these flags for the compiler, and what it builds in this road's own folder of that name.
    pub(crate) fn cargo(&self, folder: &str, flags: &[&str], arguments: &[&str]) -> Result<Command, String> {
        let mut command = run::cargo(arguments);
        let mut flags: Vec<String> = flags.iter().map(|flag| (*flag).to_owned()).collect();
        if let Self::BuildStd { rustc } = self {
            flags.push(format!("-Clinker={}", linker()?.display()));
            command.arg("-Zbuild-std=core").env("RUSTC", rustc).env("RUSTC_BOOTSTRAP", "1");
        }
        command.env("RUSTFLAGS", run::flags(&flags));
        command.arg("--target-dir").arg(self.target(folder));
        Ok(command)
    }

    /// Where this road's products of that name go: two roads would throw away each other's.
    pub(crate) fn target(&self, folder: &str) -> PathBuf {
        match self {
            Self::Installed | Self::Added => run::target(folder),
            Self::BuildStd { .. } => run::target(&format!("{folder}-build-std")),
        }
    }
}

/// The linker that comes with the toolchain; it links for any target.
fn linker() -> Result<PathBuf, String> {
    let libraries =
        run::ask(Command::new("rustc").args(["--print", "target-libdir"])).ok_or("rustc does not answer")?;
    let linker = Path::new(&libraries).with_file_name("bin").join("rust-lld");
    if linker.is_file() { Ok(linker) } else { Err(format!("{}: the toolchain has no linker there", linker.display())) }
}

impl std::fmt::Display for Road {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Installed => write!(f, "targets are installed"),
            Self::Added => write!(f, "targets added by rustup"),
            Self::BuildStd { rustc } => write!(f, "core built from source by Debian's {}", rustc.display()),
        }
    }
}

fn has_core(target: &str) -> bool {
    let folder = run::ask(Command::new("rustc").args(["--print", "target-libdir", "--target", target]));
    let entries = folder.and_then(|folder| Path::new(&folder).read_dir().ok());
    entries.into_iter().flatten().flatten().any(|entry| entry.file_name().to_string_lossy().starts_with("libcore-"))
}
