//! Moves each constant of the core and the card by a unit in its last printed digit, both ways, and demands that some check fails.
//! Only a build with `--cfg ocellus_perturb` has constants that can be moved: see `cargo xtask perturb`.

#[cfg(not(ocellus_perturb))]
fn main() -> std::process::ExitCode {
    eprintln!("perturb: this build has no constants that can be moved; use `cargo xtask perturb`");
    std::process::ExitCode::FAILURE
}

#[cfg(ocellus_perturb)]
fn main() -> std::process::ExitCode {
    use ocellus_core::constant;
    use ocellus_evidence::{checks, constants, values};
    use std::process::ExitCode;

    let values = match values::all() {
        Ok(values) => values,
        Err(why) => {
            eprintln!("perturb: {why}");
            return ExitCode::FAILURE;
        }
    };
    let registry = checks::registry();
    let notices = |change| {
        constant::perturb(change);
        !registry.run(&values).failures.is_empty()
    };
    if notices(None) {
        eprintln!("perturb: some check fails with every constant in its place; see `cargo xtask evidence`");
        return ExitCode::FAILURE;
    }
    let mut missed = 0;
    let mut moved = 0;
    for constant in constants::all() {
        constant::perturb(None);
        let own = constant.get();
        let step = values::last_place(constant.digits);
        for step in [step, -step] {
            moved += 1;
            if !notices(Some((constant, own + step))) {
                missed += 1;
                println!("NOBODY MISSES {} = {} moved by {step:+e}", constant.name, constant.digits);
            }
        }
    }
    constant::perturb(None);
    println!("{moved} moves of a constant by a unit in its last printed digit, {missed} that no check noticed");
    if missed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
