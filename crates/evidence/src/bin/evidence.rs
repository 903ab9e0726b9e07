//! Runs every check and prints what holds; fails when something does not, or a function has nothing to speak for it.

use std::process::ExitCode;

use ocellus_evidence::report::Report;
use ocellus_evidence::{checks, coverage, functions, values};

fn main() -> ExitCode {
    match run() {
        Ok(code) => code,
        Err(why) => {
            eprintln!("evidence: {why}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<ExitCode, String> {
    let values = values::all()?;
    let outcome = checks::registry().run(&values);
    let coverage = coverage::coverage(&functions::public()?, &outcome.functions, &coverage::exceptions()?);
    let report = Report { outcome, coverage };
    println!("{report}");
    Ok(if report.is_good() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
