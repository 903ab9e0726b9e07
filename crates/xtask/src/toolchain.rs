//! Building for the microcontrollers, on a machine that may lack their targets.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::{debian, run};

/// Cortex-M0, and Cortex-M4 with its float unit.
pub(crate) const TARGETS: [&str; 2] = ["thumbv6m-none-eabi", "thumbv7em-none-eabihf"];

/// How this machine comes by a core library for the targets.
pub(crate) enum Toolchain {
    /// The toolchain has it.
    Installed,
    /// rustup brought it.
    Added,
    /// Debian's rustc and its sources, from which cargo builds it.
    BuildStd { rustc: PathBuf },
}

impl Toolchain {
    /// The first that can.
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

    /// Cargo with this toolchain for a target, with these flags for the compiler; what it builds is in a folder of that name, which
    /// is this toolchain's alone.
    pub(crate) fn cargo(
        &self,
        folder: &str,
        target: &str,
        flags: &[&str],
        arguments: &[&str],
    ) -> Result<Command, String> {
        let mut command = run::cargo(arguments);
        let mut flags: Vec<String> = flags.iter().map(|flag| (*flag).to_owned()).collect();
        if let Self::BuildStd { rustc } = self {
            flags.push(format!("-Clinker={}", linker()?.display()));
            command.args(["-Zbuild-std=core", "-Zjson-target-spec"]).env("RUSTC", rustc).env("RUSTC_BOOTSTRAP", "1");
            command.arg("--target").arg(without_frame_pointer(rustc, target, &self.target(folder))?);
        } else {
            command.args(["--target", target]);
        }
        command.env("RUSTFLAGS", run::flags(&flags));
        command.arg("--target-dir").arg(self.target(folder));
        Ok(command)
    }

    /// Where the products of that name go: two toolchains would throw away each other's.
    pub(crate) fn target(&self, folder: &str) -> PathBuf {
        match self {
            Self::Installed | Self::Added => run::target(folder),
            Self::BuildStd { .. } => run::target(&format!("{folder}-build-std")),
        }
    }
}

/// A target as the compiler knows it, but that a register need not hold the frame, which costs the smallest chip 6 kB: nobody
/// unwinds its stack. The file has the target's name, and so has what is built.
fn without_frame_pointer(rustc: &Path, target: &str, folder: &Path) -> Result<PathBuf, String> {
    const ASKED: [&str; 4] = ["-Zunstable-options", "--print", "target-spec-json", "--target"];
    let known = run::ask(Command::new(rustc).args(ASKED).arg(target).env("RUSTC_BOOTSTRAP", "1"));
    let known = known.ok_or_else(|| format!("{} does not describe {target}", rustc.display()))?;
    let file = folder.join(target).with_extension("json");
    let spec = known.replace("\"frame-pointer\": \"always\"", "\"frame-pointer\": \"may-omit\"");
    let written = std::fs::create_dir_all(folder).and_then(|()| std::fs::write(&file, spec));
    written.map_err(|error| format!("{}: {error}", file.display()))?;
    Ok(file)
}

/// The linker that comes with the toolchain; it links for any target.
fn linker() -> Result<PathBuf, String> {
    let libraries =
        run::ask(Command::new("rustc").args(["--print", "target-libdir"])).ok_or("rustc does not answer")?;
    let linker = Path::new(&libraries).with_file_name("bin").join("rust-lld");
    if linker.is_file() { Ok(linker) } else { Err(format!("{}: the toolchain has no linker there", linker.display())) }
}

impl std::fmt::Display for Toolchain {
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
