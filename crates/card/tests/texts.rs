//! How the texts are written that people read.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]
#![cfg(feature = "all")]

use ocellus_card::entry::Kind;
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use ocellus_card::item::Form;
use ocellus_card::{Subject, workings};

/// With what a label may begin besides a small letter.
const TERMS: &[&str] = &["A-constant", "ACD", "AL", "Haigis", "K", "Magnus", "Reynolds", "SD"];

/// Names by which something is typed, found or kept.
fn names() -> Vec<String> {
    let mut names = Vec::new();
    names.extend(EntryId::all().flat_map(|e| [e.key().to_string(), e.word().to_string()]));
    names.extend(ItemId::all().map(|i| i.key().to_string()));
    names.extend(CautionId::all().map(|c| c.word().to_string()));
    names.extend(SignOffId::all().map(|s| s.key().to_string()));
    names.extend(PartId::all().map(|p| p.key().to_string()));
    names.extend(Subject::all().map(|s| s.key().to_string()));
    names.extend(EntryId::all().map(|e| e.section().to_owned()).filter(|section| !section.is_empty()));
    for entry in EntryId::all() {
        if let Kind::Choice(words) = entry.kind() {
            names.extend(words.iter().map(|word| word.to_string()));
        }
    }
    names
}

/// What stands beside a value.
fn labels() -> Vec<String> {
    let mut labels: Vec<String> = EntryId::all().map(|e| e.what().to_string()).collect();
    labels.extend(ItemId::all().map(|i| i.name().to_string()));
    labels
}

/// What stands over others, or is ticked.
fn headings() -> Vec<String> {
    let mut headings: Vec<String> = PartId::all().map(|p| p.heading().to_string()).collect();
    headings.retain(|heading| !heading.is_empty());
    headings.extend(Subject::all().map(|s| s.name().to_string()));
    headings.extend(workings::all().map(|t| t.heading.to_string()));
    headings.extend(SignOffId::all().map(|s| s.text().to_string()));
    headings
}

/// Sentences, each by itself.
fn sentences() -> Vec<String> {
    CautionId::all().map(|c| c.text().to_string()).collect()
}

/// What explains a step.
fn prose() -> Vec<String> {
    workings::all().flat_map(workings::prose).flat_map(|p| [p.meaning, p.equation]).map(str::to_owned).collect()
}

fn is_plain(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| (b' '..=b'~').contains(&byte))
}

/// A device has no other characters; and nobody types two spaces where one is meant.
#[test]
fn texts_are_plain_ascii() {
    for text in [names(), labels(), headings(), sentences(), prose()].concat() {
        assert!(is_plain(&text) && text.trim() == text && !text.contains("  "), "{text:?}");
    }
    for unit in EntryId::all().map(|e| e.unit()).chain(ItemId::all().map(|i| i.unit())) {
        assert!(unit.is_empty() || is_plain(unit), "{unit:?}");
    }
}

/// Small letters, digits, and what joins them: they are typed on a device.
#[test]
fn names_are_easily_typed() {
    for name in names() {
        let easy = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'_';
        assert!(!name.is_empty() && name.bytes().all(easy), "{name:?}");
    }
}

/// A label is not a sentence: a small letter, a digit or a term first, and no full stop.
#[test]
fn labels_are_no_sentences() {
    for label in labels() {
        let first = label.split([' ', ',']).next().unwrap();
        let small = label.starts_with(|c: char| c.is_ascii_lowercase() || c.is_ascii_digit());
        assert!(small || TERMS.contains(&first), "{label:?}");
        assert!(!label.ends_with(['.', '?', ':', ';', ',']), "{label:?}");
    }
}

/// A heading begins with a capital, and has no full stop either.
#[test]
fn headings_begin_with_a_capital() {
    for heading in headings() {
        assert!(heading.starts_with(|c: char| c.is_ascii_uppercase()), "{heading:?}");
        assert!(!heading.ends_with(['.', '?', ':', ';', ',']), "{heading:?}");
    }
}

/// No sentence of a caution is empty or unfinished, and each fits a card.
#[test]
fn cautions_are_sentences() {
    for text in sentences() {
        assert!(text.ends_with('.') || text.ends_with('?'), "{text:?}");
        assert!(!text.starts_with(|c: char| c.is_ascii_lowercase()), "{text:?}");
        assert!(text.len() < 240, "{text:?}");
    }
}

/// What is read in place of a number has no decimals to print.
#[test]
fn words_have_no_decimals() {
    for item in ItemId::all() {
        if matches!(item.form(), Form::YesNo | Form::Word(_)) {
            assert_eq!((item.places(), item.unit(), item.signed()), (0, "1", false), "{}", item.key());
        }
    }
}
