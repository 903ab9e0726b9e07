//! All of CI, step by step.

use std::process::Command;
use std::time::{Duration, Instant};

use crate::run::{ask, cargo, run, run_and_keep};
use crate::{evidence, fuzz, parts, perturb, readme, size, trial};

/// A step: its name and what it does; gives one line that says what it showed.
type Step = (&'static str, fn() -> Result<String, String>);

const STEPS: [Step; 13] = [
    ("format", format),
    ("clippy", clippy),
    ("parts", parts::all),
    ("build", build),
    ("test", test),
    ("readme", readme::commands),
    ("docs", docs),
    ("size", || size::all(&size::Options { update: false })),
    ("emulator", emulator),
    ("evidence", evidence::report),
    ("trial", trial::all),
    ("perturb", perturb::every_constant),
    ("fuzz", || fuzz::run(&fuzz::Options { seconds: 30, target: None })),
];

/// Runs the steps until one fails, then says which passed.
pub(crate) fn all() -> Result<(), String> {
    let mut passed: Vec<(&str, Duration, String)> = Vec::new();
    let mut failure = None;
    for (number, (name, step)) in STEPS.iter().enumerate() {
        println!("==> {}/{} {name}", number + 1, STEPS.len());
        let started = Instant::now();
        match step() {
            Ok(said) => passed.push((name, started.elapsed(), said)),
            Err(why) => {
                failure = Some((*name, started.elapsed(), why));
                break;
            }
        }
    }
    println!("==> summary");
    let line = |name: &str, time: Duration, verdict: &str, said: &str| {
        println!("{verdict:8}{name:10}{:7.1} s  {said}", time.as_secs_f64());
    };
    for (name, time, said) in &passed {
        line(name, *time, "passed", said);
    }
    let Some((name, time, why)) = failure else {
        println!("verify: {} passed, 0 failed", passed.len());
        return Ok(());
    };
    line(name, time, "FAILED", &why);
    for (name, _) in &STEPS[passed.len() + 1..] {
        println!("not run {name}");
    }
    println!("verify: {} passed, 1 failed", passed.len());
    Err(format!("{name}: {why}"))
}

/// Sees to it that cargo has a command of its own that a toolchain may come without.
fn component(command: &str, name: &str) -> Result<(), String> {
    match ask(&mut cargo(&[command, "--version"])) {
        Some(_) => Ok(()),
        None => run(Command::new("rustup").args(["component", "add", name])),
    }
}

fn format() -> Result<String, String> {
    component("fmt", "rustfmt")?;
    run(&mut cargo(&["fmt", "--all", "--check"]))?;
    run(&mut cargo(&["fmt", "--check", "--manifest-path", "tests/fuzz/Cargo.toml"]))?;
    Ok("as rustfmt.toml says".into())
}

fn clippy() -> Result<String, String> {
    component("clippy", "clippy")?;
    run(&mut cargo(&["clippy", "--workspace", "--all-targets", "--quiet", "--", "-D", "warnings"]))?;
    Ok("no warnings".into())
}

fn build() -> Result<String, String> {
    run(&mut cargo(&["build", "--workspace", "--all-targets"]))?;
    Ok("every package".into())
}

fn test() -> Result<String, String> {
    let count = tests(&["--workspace"])?;
    // a verb that is left out must be gone: by itself, since other packages ask for all of them
    let without = tests(&["--package", "ocellus-console", "--no-default-features", "--test", "verbs"])?;
    let count = count + without;
    Ok(format!("{count} tests, those in the docs among them"))
}

/// The device program on emulated boards, asked and typed to.
fn emulator() -> Result<String, String> {
    let count = tests(&["--package", "ocellus-tests", "--features", "emulator", "--test", "emulator"])?;
    Ok(format!("{count} tests of the boards that can be emulated"))
}

/// How many tests passed.
fn tests(which: &[&str]) -> Result<usize, String> {
    let lines = run_and_keep(&mut cargo(&[&["test"], which].concat()))?;
    let passed = |line: &String| line.strip_prefix("test result: ok. ")?.split(' ').next()?.parse::<usize>().ok();
    match lines.iter().filter_map(passed).sum::<usize>() {
        0 => Err("no test ran".into()),
        count => Ok(count),
    }
}

fn docs() -> Result<String, String> {
    run(cargo(&["doc", "--workspace", "--no-deps", "--quiet"]).env("RUSTDOCFLAGS", "-D warnings"))?;
    Ok("no warnings".into())
}
