//! The case file reader on any bytes: it never panics, it says what is wrong or gives a case that plans.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_cli::case_file::case;
use ocellus_core::sheet::Sheet;

fuzz_target!(|bytes: &[u8]| match case("fuzzed.toml", bytes, None) {
    Ok(draft) => {
        let sheet = Sheet::check(&draft, &mut |_| {}).expect("what is given is a case");
        ocellus_cli::card::print(&sheet, None, false, &mut std::io::sink()).unwrap();
        ocellus_cli::json::print_plan(&sheet, None, &mut std::io::sink()).unwrap();
    }
    Err(problems) => {
        assert!(!problems.is_empty(), "refused without a reason");
        problems.iter().for_each(|problem| assert!(problem.to_string().contains("fuzzed.toml")));
    }
});
