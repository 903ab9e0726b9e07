//! The folded texts of a linked program: single ones, and those that tables keep end to end.

use std::path::Path;

use object::{File, Object, ObjectSection, ObjectSymbol};
use ocellus_text::Text;

use crate::elf::plain;

/// Every text once, by the characters that it stands for.
pub(crate) fn texts(path: &Path) -> Result<Vec<Vec<u8>>, String> {
    let why = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let bytes = std::fs::read(path).map_err(|error| why(&error))?;
    let file = File::parse(&*bytes).map_err(|error| why(&error))?;
    let mut places = std::collections::BTreeMap::new();
    for symbol in file.symbols() {
        let name = plain(symbol.name().unwrap_or(""));
        let is_pool = name.ends_with("::BYTES");
        if is_pool || name.ends_with("::FOLDED") {
            places.insert((symbol.address(), symbol.size()), is_pool);
        }
    }
    let mut texts = Vec::new();
    for ((address, size), is_pool) in places {
        let within = |section: &object::Section| section.data_range(address, size).ok().flatten().map(<[u8]>::to_vec);
        let bytes = file.sections().find_map(|section| within(&section)).ok_or_else(|| why(&"a text in no section"))?;
        if is_pool { texts.extend(pool(&bytes)) } else { texts.push(unfolded(&bytes)) }
    }
    texts.retain(|text| !text.is_empty());
    if texts.is_empty() { Err(why(&"it has no texts")) } else { Ok(texts) }
}

/// The texts of a table, each behind a byte that says how long it is.
fn pool(mut bytes: &[u8]) -> Vec<Vec<u8>> {
    let mut texts = Vec::new();
    while let Some((length, rest)) = bytes.split_first() {
        let Some((text, rest)) = rest.split_at_checked(usize::from(*length)) else { break };
        texts.push(unfolded(text));
        bytes = rest;
    }
    texts
}

fn unfolded(bytes: &[u8]) -> Vec<u8> {
    Text::of(Box::leak(bytes.into())).bytes().collect()
}
