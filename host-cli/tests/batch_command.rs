//! `ocellus batch` as it is run: what it prints where, and how it ends.
#![allow(clippy::unwrap_used, reason = "a test may stop where it stands")]

use std::io::Write;
use std::process::{Command, Output, Stdio};

/// Runs the command with a table on standard input.
fn run(arguments: &[&str], table: &str) -> Output {
    let mut ocellus = Command::new(env!("CARGO_BIN_EXE_ocellus"))
        .arg("batch")
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // the command may end without having read it
    let _ = ocellus.stdin.take().unwrap().write_all(table.as_bytes());
    ocellus.wait_with_output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

#[test]
fn a_table_that_was_read_ends_well_even_with_marked_rows() {
    let table = "id,axial_length_mm,k1_d,k2_d,a_constant\ngood,23.5,43,44,118.9\nwrong,\"23,5\",43,44,118.9\n";
    let done = run(&["-"], table);
    let answers = text(&done.stdout);
    assert_eq!(done.status.code(), Some(0));
    assert_eq!(answers.lines().count(), 3);
    assert!(answers.lines().last().unwrap().ends_with(",comma_decimal:axial_length_mm"));
    assert_eq!(text(&done.stderr), "-: 1 of 2 rows are marked in the column error\n");
}

#[test]
fn a_table_in_a_file_gives_the_same() {
    let mut file = tempfile::NamedTempFile::new().unwrap();
    let table = "id,axial_length_mm,k1_d,k2_d,a_constant\ngood,23.5,43,44,118.9\n";
    file.write_all(table.as_bytes()).unwrap();
    let done = run(&[file.path().to_str().unwrap()], "");
    assert_eq!((done.status.code(), done.stderr.as_slice()), (Some(0), b"".as_slice()));
    assert_eq!(done.stdout, run(&["-"], table).stdout);
}

#[test]
fn a_table_that_is_not_understood_or_not_there_ends_with_2() {
    let unknown = run(&["-"], "id,axial_length,k1_d\n");
    assert_eq!((unknown.status.code(), unknown.stdout.as_slice()), (Some(2), b"".as_slice()));
    let said = text(&unknown.stderr);
    assert!(said.starts_with("-:1: axial_length: column 2: not a known column") && said.contains("axial_length_mm"));
    let absent = run(&["no such table.csv"], "");
    assert_eq!(absent.status.code(), Some(2));
    assert!(text(&absent.stderr).starts_with("no such table.csv: cannot be read"));
    assert_eq!(run(&["."], "").status.code(), Some(2));
    assert_eq!(run(&[], "").status.code(), Some(2));
}

#[test]
fn an_eye_that_is_refused_is_no_failure() {
    let done = run(&["-"], "axial_length_mm,k1_d,k2_d,a_constant,previous_surgery\n23.5,38,38,118.9,myopic_laser\n");
    assert_eq!(done.status.code(), Some(0));
    assert!(text(&done.stdout).ends_with("k_unusual previous_surgery,\n"));
}
