//! Drafts from a fuzzer's bytes.

use ocellus_core::draft::Draft;
use ocellus_core::field::{Field, Kind};

/// An eye and a lens, so that a few bytes are enough to be let in.
const USUAL: &[(Field, &str)] = &[
    (Field::Side, "left"),
    (Field::AxialLength, "23.50"),
    (Field::K1, "43.50"),
    (Field::K2, "44.50"),
    (Field::KKind, "keratometric"),
    (Field::AlMethod, "optical"),
    (Field::EyeState, "phakic"),
    (Field::PreviousSurgery, "none"),
    (Field::Target, "-0.25"),
    (Field::AConstant, "118.4"),
];

/// A value for a field from two bytes: mostly inside its range, at its ends, a little outside, or no number at all.
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
    for (field, text) in USUAL {
        draft.enter(*field, text).expect("usual entries are taken");
    }
    for &(field, bytes) in entries {
        let field = Field::ALL[usize::from(field) % Field::ALL.len()];
        draft.set(field, value(field.kind(), bytes));
    }
    draft
}
