//! The pairs as a source file.

use super::pairs::Pairs;

const HEAD: &str = "//! The pairs of symbols that stand for more than one character. Made by `cargo xtask texts`, and kept: another table changes no
//! meaning and no text, only how many bytes they take.

/// How many values of a byte say that another follows.
pub(crate) const LEADS: usize = ";

pub(crate) fn of(pairs: &Pairs) -> String {
    let mut text = format!("{HEAD}{};\n\n", pairs.leads);
    text += "/// Each pair's two symbols: the low bytes of both, and their high bits.\n#[rustfmt::skip]\n";
    text += &format!("pub(crate) static PAIRS: [[u8; 3]; {}] = [\n", pairs.table.len());
    for row in pairs.table.chunks(8) {
        let row: Vec<String> =
            row.iter().map(|[a, b]| format!("[{}, {}, {}],", a & 255, b & 255, a >> 8 | b >> 8 << 4)).collect();
        text += &format!("    {}\n", row.join(" "));
    }
    text + "];\n"
}
