//! Throws bytes at everything that reads bytes. libFuzzer with the stable compiler: the coverage that `cargo fuzz`
//! would switch on is a handful of flags.

use std::path::Path;
use std::process::Command;
use std::time::Duration;

use crate::{debian, lanes, run};

/// Guidance by coverage, and the checks that a release build leaves out.
const FLAGS: [&str; 9] = [
    "--cfg",
    "fuzzing",
    "-Cpasses=sancov-module",
    "-Cllvm-args=-sanitizer-coverage-level=4",
    "-Cllvm-args=-sanitizer-coverage-inline-8bit-counters",
    "-Cllvm-args=-sanitizer-coverage-pc-table",
    "-Cllvm-args=-sanitizer-coverage-trace-compares",
    "-Ccodegen-units=1",
    "-Cdebug-assertions",
];

#[derive(clap::Args)]
pub(crate) struct Options {
    /// Seconds for each target
    #[arg(long, default_value_t = 30, value_name = "N")]
    pub(crate) seconds: u64,
    /// Only this one of the programs in tests/fuzz/src/bin
    pub(crate) target: Option<String>,
}

/// Builds the targets and gives each its time, two at once.
pub(crate) fn run(options: &Options) -> Result<String, String> {
    let folder = run::root().join("tests/fuzz");
    let mut targets = targets(&folder.join("src/bin"))?;
    if let Some(only) = &options.target {
        if !targets.contains(only) {
            return Err(format!("no fuzz target `{only}`; there are {}", targets.join(", ")));
        }
        targets.retain(|target| target == only);
    }
    if !["c++", "g++", "clang++"].iter().any(|name| run::ask(Command::new(name).arg("--version")).is_some()) {
        debian::install(&["g++"])?;
    }
    let host = run::ask(Command::new("rustc").arg("-vV"))
        .and_then(|text| text.lines().find_map(|line| line.strip_prefix("host: ").map(str::to_owned)))
        .ok_or("rustc does not say its host")?;
    let built = run::target("fuzz");
    // With an explicit target the flags leave build scripts alone.
    let mut cargo = run::cargo(&["build", "--release", "--locked", "--bins", "--target", &host, "--manifest-path"]);
    cargo.arg(folder.join("Cargo.toml")).arg("--target-dir").arg(&built).env("RUSTFLAGS", run::flags(&FLAGS));
    run::run(&mut cargo)?;
    let programs = built.join(&host).join("release");
    let runs = lanes::each(&targets, |_, target| fuzz(target, &programs.join(target), &folder, options.seconds))?;
    Ok(format!("nothing broke: {}", runs.join(", ")))
}

/// Gives a target its time.
fn fuzz(target: &str, program: &Path, folder: &Path, seconds: u64) -> Result<String, String> {
    let corpus = folder.join("corpus").join(target);
    let artifacts = folder.join("artifacts").join(target).join("");
    for folder in [&corpus, &artifacts] {
        std::fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    println!("fuzzing {target} for {:?}", Duration::from_secs(seconds));
    let mut program = Command::new(program);
    program.arg(&corpus);
    let seeds = folder.join("seeds").join(target);
    if seeds.is_dir() {
        program.arg(seeds);
    }
    program.arg(format!("-max_total_time={seconds}")).arg(format!("-artifact_prefix={}", artifacts.display()));
    program.args(["-timeout=10", "-rss_limit_mb=2048", "-print_final_stats=1"]);
    Ok(format!("{target} {} runs", inputs(&mut program)?))
}

/// Runs a fuzz target and gives the number of inputs it took; its chatter is shown only when it fails.
fn inputs(program: &mut Command) -> Result<String, String> {
    let output = program.output().map_err(|error| format!("{}: {error}", program.get_program().display()))?;
    let said = String::from_utf8_lossy(&output.stderr);
    if !output.status.success() {
        eprintln!("{said}");
        return Err(format!("{}: {}", program.get_program().display(), output.status));
    }
    let count = said.lines().find_map(|line| line.strip_prefix("stat::number_of_executed_units:"));
    count
        .map(|count| count.trim().to_owned())
        .ok_or_else(|| "the fuzz target does not say how many inputs it took".into())
}

fn targets(folder: &Path) -> Result<Vec<String>, String> {
    let entries = folder.read_dir().map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut names: Vec<_> = entries
        .flatten()
        .filter_map(|entry| entry.file_name().to_string_lossy().strip_suffix(".rs").map(str::to_owned))
        .collect();
    names.sort();
    if names.is_empty() { Err(format!("{}: no fuzz targets", folder.display())) } else { Ok(names) }
}
