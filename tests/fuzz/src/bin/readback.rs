//! The canonical text of a read-back: for entries of any kind it is refused, or of one width and printable.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_core::draft::Draft;
use ocellus_core::readback::canonical;

fn text(draft: &Draft) -> Option<Vec<u8>> {
    let mut text = Vec::new();
    canonical(draft, None, &mut |byte| text.push(byte)).ok().map(|()| text)
}

fuzz_target!(|entries: Vec<(u8, u16)>| {
    let width = text(&Draft::default()).expect("an empty draft has a text").len();
    if let Some(text) = text(&ocellus_fuzz::draft(&entries)) {
        assert_eq!(text.len(), width, "{}", String::from_utf8_lossy(&text));
        assert!(text.iter().all(|byte| (b' '..=b'~').contains(byte)));
    }
});
