//! The reader of groups of eyes on any bytes, as they are and below a good header: it never panics, and what it takes can be
//! printed, listed and drawn.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_cli::group::read;

const HEADERS: [&[u8]; 3] = [
    b"",
    b"id,eye,astigmatism_d,steep_axis_deg\n",
    b"eye,k1_d,k1_axis_deg,k2_d,k2_axis_deg,after_k1_d,after_k1_axis_deg,after_k2_d,after_k2_axis_deg\n",
];

fuzz_target!(|bytes: &[u8]| {
    for header in HEADERS {
        for mirror_left in [false, true] {
            let Ok(eyes) = read("fuzz", &[header, bytes].concat(), mirror_left) else { continue };
            eyes.print(&mut std::io::sink()).unwrap();
            eyes.print_points(&mut std::io::sink()).unwrap();
            eyes.draw().unwrap();
        }
    }
});
