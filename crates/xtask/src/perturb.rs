//! Moves each constant of the core and demands that some check notices.

use crate::run;

/// Builds with constants that can be moved, runs, and gives the last line printed.
pub(crate) fn every_constant() -> Result<String, String> {
    let mut cargo = run::cargo(&["run", "--quiet", "--release", "--package", "ocellus-evidence", "--bin", "perturb"]);
    cargo.arg("--target-dir").arg(run::target("perturb")).env("RUSTFLAGS", run::flags(&["--cfg", "ocellus_perturb"]));
    let lines = run::run_and_keep(&mut cargo)?;
    lines.last().cloned().ok_or_else(|| "perturb printed nothing".into())
}
