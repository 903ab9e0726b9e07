//! Reading and writing decimal text: whatever is read is read as the standard library reads it, and printing and reading
//! again gives the same number.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_core::decimal::{Sign, fixed, parse};

fuzz_target!(|text: &str| {
    let Ok(parsed) = parse(text) else { return };
    assert_eq!(text.parse::<f64>().map(f64::to_bits), Ok(parsed.value.to_bits()), "{text}");
    if let Some(printed) = fixed(parsed.value, parsed.places, Sign::Always) {
        assert_eq!(parse(printed.as_str()).map(|again| again.value), Ok(parsed.value), "{text} {printed}");
    }
});
