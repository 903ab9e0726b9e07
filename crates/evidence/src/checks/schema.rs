//! The hash of what numbers mean, by another library over the same lines.

use std::hash::Hasher;

use hash32::{FnvHasher, Hasher as _};
use ocellus_card::schema::Hash;
use ocellus_card::workings;

use crate::check::{Compared, Registry};
use crate::oracles;

/// Lines, each made by the hash and written out.
fn same_lines(lines: impl IntoIterator<Item = (Hash, String)>, value: fn(Hash) -> u32) -> Compared {
    let mut count = 0;
    for (ours, line) in lines {
        let mut theirs = FnvHasher::default();
        theirs.write(line.as_bytes());
        if value(ours) != theirs.finish32() {
            return Err(format!("another number for `{}`", line.trim_end()).into());
        }
        count += 1;
    }
    Ok(count)
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        Hash::text, Hash::word, Hash::number, Hash::end, Hash::value => "the hash32 crate" =>
            |text, word, number, end, value| same_lines([0, 7, 10, 409, usize::MAX].into_iter().map(|n| {
                (end(word(number(text(Hash::NOTHING, "entry "), n), "al")), format!("entry {n} al\n"))
            }), value);
        Hash::steps, Hash::value => "the hash32 crate" => |steps, value| same_lines(workings::all().map(|table| {
            let units: String = (0..table.count()).map(|step| format!(" {}", table.unit(step))).collect();
            (steps(Hash::NOTHING, table), format!(" {}:{units}", table.symbols()))
        }), value);
    }
}
