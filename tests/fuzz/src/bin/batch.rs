//! The reader of tables on any bytes, as they are and below a good header: it never panics, and gives a row for a row.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_cli::batch::batch;

const HEADER: &[u8] = b"id,axial_length_mm,k1_d,k2_d,acd_mm,a_constant,iol_power_d\n";

fuzz_target!(|bytes: &[u8]| {
    let _ = batch(bytes, std::io::sink());
    let _ = batch([HEADER, bytes].concat().as_slice(), std::io::sink());
});
