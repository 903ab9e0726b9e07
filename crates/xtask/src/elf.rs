//! What a linked program takes, read from its ELF.

use std::collections::BTreeSet;
use std::path::Path;

use object::elf::SHF_ALLOC;
use object::{File, Object, ObjectSection, ObjectSymbol, SectionFlags, SectionKind};

/// What a linked program takes.
#[derive(Debug, PartialEq)]
pub(crate) struct Weight {
    /// Bytes of code, tables, and first values of variables.
    pub(crate) flash: u64,
    /// Bytes of variables; the stack is not among them.
    pub(crate) ram: u64,
    /// Names of the functions by which a program panics.
    pub(crate) panics: BTreeSet<String>,
}

/// Every panic of the core library ends in one of these.
const PANICS: [&str; 4] = ["core::panicking", "slice_index", "unwrap_failed", "expect_failed"];

impl Weight {
    pub(crate) fn of(path: &Path) -> Result<Self, String> {
        let why = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
        let bytes = std::fs::read(path).map_err(|error| why(&error))?;
        let file = File::parse(&*bytes).map_err(|error| why(&error))?;
        let mut weight = Self { flash: 0, ram: 0, panics: BTreeSet::new() };
        for section in file.sections() {
            weight.flash += if in_flash(&section) { section.size() } else { 0 };
            weight.ram += if in_ram(&section) { section.size() } else { 0 };
        }
        let names = file.symbols().filter_map(|symbol| Some(plain(symbol.name().ok()?)));
        weight.panics.extend(names.filter(|name| is_panic(name)));
        if weight.flash == 0 || file.symbols().next().is_none() {
            return Err(why(&"no code or no names in it; strip nothing"));
        }
        Ok(weight)
    }
}

/// Whether a section takes room in the flash: code and tables, whatever their kind, since the linker marks texts as
/// another than numbers, and first values of variables.
pub(crate) fn in_flash<'data>(section: &impl ObjectSection<'data>) -> bool {
    is_loaded(section) && section.kind() != SectionKind::UninitializedData
}

fn in_ram<'data>(section: &impl ObjectSection<'data>) -> bool {
    is_loaded(section) && matches!(section.kind(), SectionKind::Data | SectionKind::UninitializedData)
}

/// Whether a section takes room in the chip at all. Names, lines and messages stay on the machine that built it.
fn is_loaded<'data>(section: &impl ObjectSection<'data>) -> bool {
    matches!(section.flags(), SectionFlags::Elf { sh_flags, .. } if sh_flags.contains(SHF_ALLOC))
}

/// A name as it was written, without its hash.
pub(crate) fn plain(name: &str) -> String {
    format!("{:#}", rustc_demangle::demangle(name))
}

fn is_panic(name: &str) -> bool {
    PANICS.iter().any(|part| name.contains(part))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The test itself is an ELF, with panics.
    #[test]
    fn finds_code_variables_and_panics() {
        let weight = Weight::of(&std::env::current_exe().unwrap()).unwrap();
        assert!(weight.flash > 100_000 && weight.ram > 100, "{} {}", weight.flash, weight.ram);
        // texts that were merged are among them
        let bytes = std::fs::read(std::env::current_exe().unwrap()).unwrap();
        let file = File::parse(&*bytes).unwrap();
        let size = |name| file.section_by_name(name).unwrap().size();
        assert!(weight.flash >= size(".text") + size(".rodata") + size(".data"), "{}", weight.flash);
        for name in ["core::panicking::panic_fmt", "core::result::unwrap_failed", "core::option::expect_failed"] {
            assert!(weight.panics.contains(name), "{name} is not among {:?}", weight.panics);
        }
    }

    #[test]
    fn names_of_both_manglings_are_known() {
        assert!(is_panic(&plain("_ZN4core9panicking5panic17h0123456789abcdefE")));
        assert!(is_panic(&plain("_RNvNtCs1234_4core9panicking9panic_fmt")));
        assert!(is_panic(&plain("_ZN4core5slice5index16slice_index_fail17h0123456789abcdefE")));
        assert!(!is_panic(&plain("_ZN16ocellus_firmware6device6Device4byte17h0123456789abcdefE")));
    }
}
