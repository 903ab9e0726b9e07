//! Gives the linker the memory of the board that is built, and the program its identity.

use std::path::PathBuf;
use std::process::Command;
use std::{env, fs};

const BOARDS: [&str; 4] = ["microbit", "microbit-v2", "mps2-an386", "pico"];

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    println!("cargo:rerun-if-changed=memory");
    let has =
        |feature: &str| env::var_os(format!("CARGO_FEATURE_{}", feature.to_uppercase().replace('-', "_"))).is_some();
    let chosen: Vec<&str> = BOARDS.into_iter().filter(|board| has(board)).collect();
    let board = match chosen[..] {
        [board] => board,
        // The library alone, for a machine that is no board.
        [] if !has("board") => return,
        _ => {
            println!("cargo::error=one of the features {} at a time, not {chosen:?}", BOARDS.join(", "));
            return;
        }
    };
    let folder = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    let memory = format!("memory/{}.x", board.replace('-', "_"));
    if let Err(why) = fs::copy(&memory, folder.join("memory.x")) {
        println!("cargo::error={memory}: {why}");
    }
    println!("cargo:rustc-env=OCELLUS_BUILD={}", identity());
    println!("cargo:rustc-env=OCELLUS_TARGET={}", env::var("TARGET").unwrap_or_default());
    println!("cargo:rustc-link-search={}", folder.display());
    println!("cargo:rustc-link-arg-bins=-Tlink.x");
    if has("log") {
        println!("cargo:rustc-link-arg-bins=-Tdefmt.x");
    }
}

/// The version, and the commit where it is built in a clone.
fn identity() -> String {
    let version = env::var("CARGO_PKG_VERSION").unwrap_or_default();
    let head = "../.git/logs/HEAD";
    if fs::exists(head).unwrap_or(false) {
        println!("cargo:rerun-if-changed={head}");
    }
    let commit = Command::new("git").args(["rev-parse", "--short=7", "HEAD"]).output();
    match commit {
        Ok(commit) if commit.status.success() => {
            format!("{version} {}", String::from_utf8_lossy(&commit.stdout).trim())
        }
        _ => version,
    }
}
