//! Drafts from a fuzzer's bytes.

use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;

/// An eye and a lens, so that a few bytes are enough to be let in.
const USUAL: &[(&str, &str)] = &[
    ("eye", "left"),
    ("axial_length_mm", "23.50"),
    ("k1_d", "43.50"),
    ("k2_d", "44.50"),
    ("k_kind", "keratometric"),
    ("al_method", "optical"),
    ("eye_state", "phakic"),
    ("previous_surgery", "none"),
    ("target_d", "-0.25"),
    ("a_constant", "118.4"),
];

/// A value for an entry from two bytes: mostly inside its range, at its ends, a little outside, or no number at all.
fn value(kind: Kind, bytes: u16) -> f64 {
    let share = f64::from(bytes) / 65_000.0;
    match (kind, bytes) {
        (_, u16::MAX) => f64::NAN,
        (_, 65_534) => f64::INFINITY,
        (Kind::Number(_, bounds), _) => bounds.min + (bounds.max - bounds.min) * share,
        (Kind::Choice(words), _) => f64::from(bytes % (words.len() as u16 + 1)),
        (Kind::Date | Kind::Name, _) => 20_240_000.0 + f64::from(bytes),
    }
}

/// The usual entries, and over them what the fuzzer enters.
pub fn draft(entries: &[(u8, u16)]) -> Draft {
    let mut draft = Draft::default();
    for (key, text) in USUAL {
        draft.enter(EntryId::of_key(key).expect("an entry"), text).expect("usual entries are taken");
    }
    for &(entry, bytes) in entries {
        let entry = EntryId::at(usize::from(entry) % EntryId::COUNT).expect("an entry");
        draft.set(entry, value(entry.kind(), bytes));
    }
    draft
}
