//! The read-back code: what differs in the entries differs in its first part.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it stands")]

use std::fs;
use std::path::Path;

use ocellus_card::case::Case;
use ocellus_card::draft::{Draft, with_text};
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;
use ocellus_card::name::Name;
use ocellus_card::readback::{self, Identifiers};
use ocellus_cli::case_file;

/// The demonstration cases.
fn demo() -> Vec<Draft> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-data");
    let files = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let files = files.filter(|path| path.extension().is_some_and(|kind| kind == "toml"));
    let draft = |path: &Path| case_file::read(&path.to_string_lossy(), &fs::read(path).unwrap()).unwrap();
    let drafts: Vec<Draft> = files.map(|path| draft(&path)).collect();
    assert!(drafts.len() >= 10);
    drafts
}

/// An entry as it is printed, and so typed.
fn typed(draft: &Draft, entry: EntryId) -> Option<String> {
    match draft.number(entry) {
        Some(value) => with_text(entry, value, str::to_owned),
        None => draft.name(entry).map(|name| name.as_str().to_owned()),
    }
}

/// Whether two drafts say different things in an entry. A name does not differ by its capitals.
fn differ(a: &Draft, b: &Draft, entry: EntryId) -> bool {
    match (a.name(entry), b.name(entry)) {
        (Some(a), Some(b)) => !a.as_str().eq_ignore_ascii_case(b.as_str()),
        _ => a.number(entry) != b.number(entry),
    }
}

/// Every text that is one character away: another in its place, one more, one less.
fn edits(text: &str) -> impl Iterator<Item = String> + '_ {
    let characters = || (b' '..=b'~').map(|c| (c as char).to_string()).chain([String::new()]);
    (0..=text.len()).flat_map(move |at| {
        let (before, after) = text.split_at(at);
        let put_in = characters().map(move |c| format!("{before}{c}{after}"));
        let rest = after.get(1..);
        put_in.chain(rest.into_iter().flat_map(move |rest| characters().map(move |c| format!("{before}{c}{rest}"))))
    })
}

/// Any one character typed differently, that still makes a valid case, makes another code.
#[test]
fn every_single_character_edit_changes_the_first_part() {
    let mut tried = 0;
    for draft in demo() {
        let code = readback::entries(&draft, None).unwrap();
        for entry in EntryId::all().filter(|entry| *entry != entries::ID) {
            let Some(text) = typed(&draft, entry) else { continue };
            let words: Vec<String> = match entry.kind() {
                // no word is one character away from another, so every other word stands for a misreading
                Kind::Choice(words) => words.iter().map(|word| (*word).to_owned()).collect(),
                _ => edits(&text).collect(),
            };
            for edited in words {
                let mut other = draft.clone();
                if other.enter(entry, &edited).is_ok()
                    && differ(&draft, &other, entry)
                    && Case::try_from(&other).is_ok()
                {
                    assert_ne!(readback::entries(&other, None).unwrap(), code, "{}: {text}, {edited}", entry.key());
                    tried += 1;
                }
            }
            let mut without = draft.clone();
            without.clear(entry);
            // a default is the same entry whether or not it was typed
            if draft.number(entry).is_some() && draft.number(entry) == entry.default() {
                assert_eq!(readback::entries(&without, None).unwrap(), code, "{}: {text}, nothing", entry.key());
                continue;
            }
            assert_ne!(readback::entries(&without, None).unwrap(), code, "{}: {text}, nothing", entry.key());
        }
    }
    assert!(tried > 50_000, "{tried}");
}

fn canonical(draft: &Draft, identifiers: Option<&Identifiers>) -> Vec<u8> {
    let mut text = Vec::new();
    readback::canonical(draft, identifiers, &mut |byte| text.push(byte)).unwrap();
    text
}

/// The polynomial of the entries, with its x^20.
const POLYNOMIAL: u32 = 1 << 20 | 0x39599;

/// One bit more at the end of a number that is divided by the polynomial.
fn divide(remainder: u32, bit: u32) -> u32 {
    let longer = remainder << 1 | bit;
    if longer >> 20 == 1 { longer ^ POLYNOMIAL } else { longer }
}

/// The code of the entries by long division, as a textbook has it: a register that starts at all ones is the message
/// with its first 20 bits turned over, followed by 20 zeros.
fn long_division(text: &[u8]) -> u32 {
    let bits = text.iter().flat_map(|byte| (0..8).rev().map(move |bit| u32::from(byte >> bit) & 1));
    let turned = bits.enumerate().map(|(place, bit)| if place < 20 { 1 - bit } else { bit });
    turned.chain([0; 20]).fold(0, divide)
}

#[test]
fn the_first_part_is_the_remainder_of_a_division() {
    for draft in demo() {
        let text = canonical(&draft, None);
        assert_eq!(readback::entries(&draft, None).unwrap(), long_division(&text));
    }
}

/// Any change of two adjacent characters of the canonical text, to anything, changes the code: wherever they stand.
#[test]
fn every_change_of_adjacent_characters_changes_the_code() {
    let draft = &demo()[0];
    let text = canonical(draft, None);
    // what turning over one bit does to the remainder, from the last bit of the text to the first: x^20, x^21, ...
    let first = (0..20).fold(1, |power, _| divide(power, 0));
    let powers: Vec<u32> = std::iter::successors(Some(first), |p| Some(divide(*p, 0))).take(8 * text.len()).collect();
    let change = |from_end: usize, pattern: usize| {
        (0..8).filter(|bit| pattern >> bit & 1 == 1).fold(0, |sum, bit| sum ^ powers[8 * from_end + bit])
    };
    let changes: Vec<Vec<u32>> = (0..text.len()).map(|at| (0..256).map(|p| change(at, p)).collect()).collect();
    for pair in changes.windows(2) {
        let same = pair[1].iter().flat_map(|a| pair[0].iter().map(move |b| a ^ b)).filter(|both| *both == 0).count();
        // the change of nothing
        assert_eq!(same, 1);
    }
    // and the sum of changes is what it is taken for
    let mut other = text.clone();
    let at = other.len() / 2;
    (other[at], other[at + 1]) = (other[at] ^ 0x15, other[at + 1] ^ 0x4A);
    let from_end = text.len() - 1 - at;
    let changed = changes[from_end][0x15] ^ changes[from_end - 1][0x4A];
    assert_eq!(long_division(&other), long_division(&text) ^ changed);
}

fn identifiers(first: &str, second: &str) -> Identifiers {
    Identifiers(Name::parse(first).unwrap(), Name::parse(second).unwrap())
}

/// The two identifiers count, each in its place; the label of the case does not.
#[test]
fn identifiers_are_covered_and_the_label_is_not() {
    let draft = &demo()[0];
    let with = |first: &str, second: &str| readback::entries(draft, Some(&identifiers(first, second))).unwrap();
    let code = with("H 123456", "1948-03-02");
    assert_ne!(code, readback::entries(draft, None).unwrap());
    assert_ne!(code, with("1948-03-02", "H 123456"));
    for edited in edits("H 123456").filter(|text| Name::parse(text).is_ok()) {
        let same = edited.trim().eq_ignore_ascii_case("H 123456");
        assert_eq!(with(&edited, "1948-03-02") == code, same, "{edited}");
    }
    for edited in edits("1948-03-02").filter(|text| Name::parse(text).is_ok()) {
        assert_eq!(with("H 123456", &edited) == code, edited.trim() == "1948-03-02", "{edited}");
    }
    let mut labelled = draft.clone();
    labelled.enter(entries::ID, "another label").unwrap();
    assert_eq!(readback::entries(&labelled, None).unwrap(), readback::entries(draft, None).unwrap());
}

/// Layout 5, as it was when it was first given out. Regression: should it change, the layout needs another number.
#[test]
fn layout_5_stays_as_it_is() {
    let mut draft = Draft::default();
    for (key, text) in [
        ("eye", "right"),
        ("surgery_date", "2026-12-01"),
        ("axial_length_mm", "23.46"),
        ("k1_d", "43.25"),
        ("k1_axis_deg", "3"),
        ("k2_d", "44.00"),
        ("k2_axis_deg", "93"),
        ("k_kind", "keratometric"),
        ("acd_mm", "3.12"),
        ("acd_from", "epithelium"),
        ("al_method", "optical"),
        ("eye_state", "phakic"),
        ("previous_surgery", "none"),
        ("target_d", "-0.25"),
        ("lens_model", "Demo Clear"),
        ("a_constant", "118.90"),
        ("iol_power_d", "+21.50"),
    ] {
        draft.enter(EntryId::of_key(key).unwrap(), text).unwrap();
    }
    let text = String::from_utf8(canonical(&draft, None)).unwrap();
    // part and number of each entry, and its value; what is not entered is not there
    let entries = "\x02\x0100\x02\x0220261201\x03\x00+000002346\x03\x01+000004325\x03\x02+000000003\x03\x03+000004400\
                   \x03\x04+000000093\x03\x0800\x03\x09+000000312\x03\x0A00\x03\x0E00\x03\x0F00\x03\x1000\x04\x00-000000025\
                   \x06\x00DEMO CLEAR              \x06\x01+000011890\x06\x0A+000002150";
    assert_eq!(text, format!("5{entries}{}", ".".repeat(48)));
    // the part that covers the answers changes with every caution that is added; the layout is the other part
    let case = Case::try_from(&draft).unwrap();
    let entries = |identifiers: Option<&Identifiers>| {
        readback::of(&case, identifiers).unwrap().as_str().split_once('-').unwrap().0.to_owned()
    };
    assert_eq!(entries(None), "ZCQB");
    assert_eq!(entries(Some(&identifiers("H 123456", "1948-03-02"))), "N4PA");
}
