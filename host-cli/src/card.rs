//! The theatre card on paper: the console's own, with what a desk has room for.

use ocellus_card::draft::Draft;
use ocellus_card::readback::Identifiers;
use ocellus_card::sink::Sink;
use ocellus_console::{Desk, Wanted, print_card};
use ocellus_core::source::Source;
use std::io::{self, Write};

/// Prints a card, by whoever streams it; the answer is whether anything of it is refused.
pub fn print(
    wanted: Wanted,
    draft: &Draft,
    plan: &dyn Fn(&mut dyn Sink),
    identifiers: Option<&Identifiers>,
    bold: bool,
    out: &mut dyn Write,
) -> io::Result<bool> {
    let desk = Desk {
        bold,
        source: Source::text,
        patient: "patient ______________________________   born ______________   or a sticker",
        signatures: "  first person ______________________   second person ______________________",
        identify: "--identify",
    };
    let mut written = Ok(());
    let refused = print_card(wanted, draft, plan, identifiers, &desk, &mut |piece| {
        if written.is_ok() {
            written = out.write_all(piece.as_bytes());
        }
    });
    written.map(|()| refused)
}
