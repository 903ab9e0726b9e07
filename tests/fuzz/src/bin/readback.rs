//! The canonical text of a read-back: for entries of any kind it is refused, or can be read again as what was entered.

#![no_main]

use libfuzzer_sys::fuzz_target;
use ocellus_card::draft::Draft;
use ocellus_card::entries::ID;
use ocellus_card::entry::Kind;
use ocellus_card::id::{EntryId, PartId};
use ocellus_card::readback::canonical;

/// Takes so many characters from the front.
fn take<'a>(text: &mut &'a [u8], count: usize) -> &'a [u8] {
    let (taken, rest) = text.split_at_checked(count).expect("a text that goes on");
    *text = rest;
    taken
}

/// The number that an entry stands for in the text.
fn number(entry: EntryId, text: &mut &[u8]) -> f64 {
    let (width, places) = match entry.kind() {
        Kind::Number(places, _) => (10, places),
        Kind::Choice(_) => (2, 0),
        Kind::Date => (8, 0),
        Kind::Name => unreachable!("no name is drawn"),
    };
    let digits = std::str::from_utf8(take(text, width)).expect("digits");
    assert!(digits.trim_start_matches(['+', '-']).bytes().all(|digit| digit.is_ascii_digit()), "{digits}");
    digits.parse::<f64>().expect("digits") / f64::from(10u32.pow(u32::from(places)))
}

/// The entries that a text says: each is one that the draft has, in the order of their numbers, with its number.
fn said<'a>(draft: &Draft, mut text: &'a [u8]) -> (Vec<EntryId>, &'a [u8]) {
    assert_eq!(take(&mut text, 1), b"5");
    let mut said = Vec::new();
    while text.first().is_some_and(|first| *first != b'.') {
        let [part, place] = *take(&mut text, 2) else { unreachable!() };
        let entry = EntryId::new(PartId(part), place);
        assert_eq!(draft.number(entry), Some(number(entry, &mut text)), "{}", entry.key());
        said.push(entry);
    }
    (said, text)
}

fuzz_target!(|entries: Vec<(u8, u16)>| {
    let (draft, mut text) = (ocellus_fuzz::draft(&entries), Vec::new());
    if canonical(&draft, None, &mut |byte| text.push(byte)).is_ok() {
        let (said, rest) = said(&draft, &text);
        assert!(said.is_sorted(), "{said:?}");
        let is_said = |entry: &EntryId| {
            let number = draft.number(*entry);
            *entry != ID && number.is_some() && number != entry.default()
        };
        assert!(said.iter().copied().eq(draft.made().filter(is_said)), "{said:?}");
        assert_eq!(rest, [b'.'; 48]);
    }
});
