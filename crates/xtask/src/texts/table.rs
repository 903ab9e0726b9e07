//! The symbols as a source file.

use super::symbols::{Meaning, Symbols};

const HEAD: &str = "//! The symbols of folded texts. Made by `cargo xtask texts`, and kept: another table changes no meaning and no text, only how
//! many bytes they take.

/// How many symbols have a code of one bit, of two, and so on; those after them are only parts of others.
pub(crate) static COUNTS: ";

pub(crate) fn of(symbols: &Symbols) -> String {
    let Symbols { table, counts, .. } = symbols;
    let mut text = format!("{HEAD}[u16; {}] = {counts:?};\n\n", counts.len());
    text +=
        "/// Each symbol's two parts: the low bytes of both, and their high bits. Behind a character stands 0xfff.\n";
    text += &format!("#[rustfmt::skip]\npub(crate) static SYMBOLS: [[u8; 3]; {}] = [\n", table.len());
    for row in table.chunks(8) {
        let row: Vec<String> = row.iter().map(|meaning| format!("{:?},", bytes(*meaning))).collect();
        text += &format!("    {}\n", row.join(" "));
    }
    text + "];\n"
}

fn bytes(meaning: Meaning) -> [u8; 3] {
    let (first, second) = match meaning {
        Meaning::Character(character) => (u16::from(character), 0xfff),
        Meaning::Pair(first, second) => (first, second),
    };
    [first as u8, second as u8, (first >> 8 | second >> 8 << 4) as u8]
}
