//! By which symbols the device's texts are folded: found anew from the texts that its program has, as they stand in its ELF.

mod found;
mod symbols;
mod table;

use crate::firmware::{Board, Parts};
use crate::run;
use crate::toolchain::Toolchain;
use symbols::{BITS_EACH, Symbols};

/// Where the symbols are kept.
const FILE: &str = "crates/text/src/symbols.rs";

/// Finds the symbols and writes them.
pub(crate) fn fold() -> Result<String, String> {
    let toolchain = Toolchain::find()?;
    println!("{toolchain}");
    let elf = Board::find("microbit")?.build(&toolchain, Parts::All, false)?;
    let texts = found::texts(&elf)?;
    let characters: usize = texts.iter().map(Vec::len).sum();
    let symbols = Symbols::of(&texts);
    let file = run::root().join(FILE);
    std::fs::write(&file, table::of(&symbols)).map_err(|error| format!("{FILE}: {error}"))?;
    Ok(format!(
        "{} texts of {characters} characters take {} bytes, and {} symbols {}",
        texts.len(),
        symbols.bytes,
        symbols.table.len(),
        symbols.table.len() * BITS_EACH / 8
    ))
}
