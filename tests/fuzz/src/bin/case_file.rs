//! The case file reader on any bytes: it never panics, it says what is wrong or gives a case that plans.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_card::case::Case;
use ocellus_cli::case_file::case;
use ocellus_cli::{card, json};
use ocellus_console::Wanted;
use std::io::sink;

fuzz_target!(|bytes: &[u8]| match case("fuzzed.toml", bytes, None) {
    Ok(draft) => {
        let case = Case::check(&draft, &mut |_| {}).expect("what is given is a case");
        for wanted in [Wanted::All, Wanted::Short] {
            card::print(wanted, &draft, &|sink| case.plan(sink), None, false, &mut sink()).unwrap();
        }
        json::print_plan(&case, None, &mut sink()).unwrap();
    }
    Err(problems) => {
        assert!(!problems.is_empty(), "refused without a reason");
        problems.iter().for_each(|problem| assert!(problem.to_string().contains("fuzzed.toml")));
    }
});
