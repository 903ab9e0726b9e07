//! What lies where in a linked program.

use std::collections::BTreeMap;
use std::path::Path;

use object::{File, Object, ObjectSection, ObjectSymbol, SymbolKind};

use super::name;
use super::trace::Counts;
use crate::elf::{in_flash, plain};

/// A function or a table.
#[derive(Debug, PartialEq)]
pub(crate) struct Piece {
    address: u64,
    size: u64,
    name: String,
    /// How many others the linker found to be the same, and laid here too.
    alike: usize,
}

impl Piece {
    /// The module that it is of.
    pub(crate) fn module(&self) -> String {
        name::module(&self.name)
    }

    /// Its name, and how many others it stands for.
    pub(crate) fn short(&self) -> String {
        let name = name::short(&self.name);
        if self.alike == 0 { name } else { format!("{name} and {} alike", self.alike) }
    }
}

/// All that a program has in the flash.
pub(crate) struct Program {
    /// By address, section by section; none lies over another.
    pieces: Vec<Piece>,
    /// What is left of each section.
    nameless: Vec<(String, u64)>,
    /// Names and addresses, those that are alike included.
    names: BTreeMap<String, u64>,
}

impl Program {
    pub(crate) fn read(path: &Path) -> Result<Self, String> {
        let why = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
        let bytes = std::fs::read(path).map_err(|error| why(&error))?;
        let file = File::parse(&*bytes).map_err(|error| why(&error))?;
        let mut program = Self { pieces: Vec::new(), nameless: Vec::new(), names: BTreeMap::new() };
        for section in file.sections().filter(in_flash) {
            let inside = file.symbols().filter(|symbol| symbol.section_index() == Some(section.index()));
            let symbols: Vec<_> = inside
                .filter_map(|symbol| {
                    // the last bit of a function's address says which instruction set it is written in
                    let is_code = u64::from(symbol.kind() == SymbolKind::Text);
                    let name = plain(symbol.name().ok()?);
                    Some(Piece { address: symbol.address() & !is_code, size: symbol.size(), name, alike: 0 })
                })
                .collect();
            program.names.extend(symbols.iter().map(|piece| (piece.name.clone(), piece.address)));
            let pieces = disjoint(symbols);
            let named: u64 = pieces.iter().map(|piece| piece.size).sum();
            let name = section.name().map_err(|error| why(&error))?;
            let rest =
                section.size().checked_sub(named).ok_or_else(|| why(&format!("{name} holds more than it has")))?;
            program.nameless.push((format!("{name} without a name"), rest));
            program.pieces.extend(pieces);
        }
        program.pieces.sort_by_key(|piece| piece.address);
        Ok(program)
    }

    /// Where the function of that name starts.
    pub(crate) fn address(&self, name: &str) -> Result<u64, String> {
        self.names.get(name).copied().ok_or_else(|| format!("the program has no function {name} of its own"))
    }

    /// The instructions that ran, by function.
    pub(crate) fn by_function(&self, counts: &Counts) -> BTreeMap<String, u64> {
        let mut sums = BTreeMap::new();
        for (address, count) in counts {
            let before = self.pieces.partition_point(|piece| piece.address <= *address).checked_sub(1);
            let piece = before.map(|place| &self.pieces[place]).filter(|piece| address - piece.address < piece.size);
            let name = piece.map_or_else(|| "code without a name".into(), Piece::short);
            *sums.entry(name).or_default() += count;
        }
        sums
    }

    /// The bytes in the flash, all of them, summed by what a rule calls them.
    pub(crate) fn flash(&self, rule: impl Fn(&Piece) -> String) -> BTreeMap<String, u64> {
        let mut sums = BTreeMap::new();
        let named = self.pieces.iter().map(|piece| (rule(piece), piece.size));
        for (name, size) in named.chain(self.nameless.iter().cloned()) {
            *sums.entry(name).or_default() += size;
        }
        sums.retain(|_, size| *size > 0);
        sums
    }
}

/// By address, and so that each byte is in one piece only: of those that are alike, in the first by name.
fn disjoint(mut symbols: Vec<Piece>) -> Vec<Piece> {
    symbols.retain(|piece| piece.size > 0);
    symbols.sort_by(|a, b| (a.address, b.size, &a.name).cmp(&(b.address, a.size, &b.name)));
    let mut pieces: Vec<Piece> = Vec::new();
    for mut piece in symbols {
        if let Some(before) = pieces.last_mut() {
            if before.address == piece.address && before.size == piece.size {
                before.alike += 1;
                continue;
            }
            let over = (before.address + before.size).saturating_sub(piece.address).min(piece.size);
            piece.address += over;
            piece.size -= over;
        }
        if piece.size > 0 {
            pieces.push(piece);
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(address: u64, size: u64, name: &str) -> Piece {
        Piece { address, size, name: name.into(), alike: 0 }
    }

    fn program(symbols: Vec<Piece>) -> Program {
        Program {
            pieces: disjoint(symbols),
            nameless: vec![(".text without a name".into(), 5)],
            names: BTreeMap::new(),
        }
    }

    #[test]
    fn each_byte_is_in_one_piece() {
        let symbols = [(8, 4, "b"), (0, 8, "a"), (8, 4, "c"), (4, 2, "inside"), (10, 6, "half over"), (8, 0, "empty")];
        let pieces = disjoint(symbols.map(|(address, size, name)| piece(address, size, name)).into());
        let both = Piece { alike: 1, ..piece(8, 4, "b") };
        assert_eq!(pieces, [piece(0, 8, "a"), both, piece(12, 4, "half over")]);
    }

    #[test]
    fn the_same_place_counts_once_even_around_what_lies_inside() {
        let pieces = disjoint(vec![piece(0, 8, "b"), piece(0, 8, "a"), piece(0, 4, "start")]);
        assert_eq!(pieces, [Piece { alike: 1, ..piece(0, 8, "a") }]);
    }

    #[test]
    fn flash_is_summed_by_module() {
        let names = ["ocellus_core::plan::axis::f", "<ocellus_core::plan::A as b::B>::f", "libm::math::sqrt::sqrt"];
        let program = program(vec![piece(0, 8, names[0]), piece(8, 4, names[1]), piece(12, 2, names[2])]);
        let sums = [("ocellus_core::plan", 12), ("libm", 2), (".text without a name", 5)];
        assert_eq!(program.flash(Piece::module), BTreeMap::from(sums.map(|(name, sum)| (name.into(), sum))));
    }

    #[test]
    fn instructions_are_summed_by_function() {
        let program = program(vec![piece(4, 4, "a"), piece(4, 4, "b"), piece(8, 2, "c")]);
        let sums = program.by_function(&Counts::from([(2, 1), (4, 10), (6, 100), (8, 1000), (10, 10_000)]));
        let expected = [("a and 1 alike", 110), ("c", 1000), ("code without a name", 10_001)];
        assert_eq!(sums, BTreeMap::from(expected.map(|(name, sum)| (name.into(), sum))));
    }

    /// The test itself is an ELF.
    #[test]
    fn every_byte_of_a_program_is_counted() {
        let path = std::env::current_exe().unwrap();
        let program = Program::read(&path).unwrap();
        let sums = program.flash(Piece::module);
        assert_eq!(sums.values().sum::<u64>(), crate::elf::Weight::of(&path).unwrap().flash);
        assert!(sums["core"] > 10_000 && sums["xtask"] > 10_000, "{sums:?}");
        assert!(program.address("xtask::main").is_ok() && program.address("xtask::niam").is_err());
    }
}
