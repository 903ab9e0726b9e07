//! Which pairs the device's texts are folded by: found anew from the texts that its program has, as they stand in its ELF.

mod found;
mod pairs;
mod table;

use crate::firmware::{Board, Parts};
use crate::run;
use crate::toolchain::Toolchain;
use pairs::Pairs;

/// Where the pairs are kept.
const FILE: &str = "crates/text/src/pairs.rs";

/// Finds the pairs and writes them.
pub(crate) fn fold() -> Result<String, String> {
    let toolchain = Toolchain::find()?;
    println!("{toolchain}");
    let elf = Board::find("microbit")?.build(&toolchain, Parts::All, false)?;
    let texts = found::texts(&elf)?;
    let characters: usize = texts.iter().map(Vec::len).sum();
    let pairs = Pairs::best(&texts);
    let file = run::root().join(FILE);
    std::fs::write(&file, table::of(&pairs)).map_err(|error| format!("{FILE}: {error}"))?;
    Ok(format!(
        "{} texts of {characters} characters take {} bytes, and {} pairs {}",
        texts.len(),
        pairs.bytes,
        pairs.table.len(),
        3 * pairs.table.len()
    ))
}
