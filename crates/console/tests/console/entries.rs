//! Every entry: by its word and by its key, with its unit, without, and with another's.

use crate::terminal::{Terminal, bits, by_toml, demo_cases};
use ocellus_card::draft::{Draft, with_text};
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::id::EntryId;

/// A value that the entry takes, as it is typed.
fn example(entry: EntryId) -> String {
    match entry.kind() {
        Kind::Number(_, bounds) => with_text(entry, (bounds.min + bounds.max) / 2.0, str::to_owned).unwrap(),
        Kind::Choice(words) => words.last().unwrap().to_string(),
        Kind::Date => "2026-12-01".to_owned(),
        Kind::Name => "Demo A".to_owned(),
    }
}

#[test]
fn every_entry_is_taken_by_word_and_by_key() {
    for entry in EntryId::all() {
        let (value, unit) = (example(entry), entry.unit());
        let mut lines = vec![];
        for name in [entry.word().to_string(), entry.key().to_string(), entry.word().to_string().to_uppercase()] {
            lines.extend([
                format!("{name} {value}"),
                format!("{name} = {value}"),
                format!("{name}={value}  # so"),
                format!("  {name}   {value} "),
            ]);
            if !unit.is_empty() {
                lines.extend([
                    format!("{name} {value} {unit}"),
                    format!("{name} {value}{unit}"),
                    format!("{name} = {value} {}", unit.to_uppercase()),
                ]);
            }
            if !matches!(entry.kind(), Kind::Number(..)) {
                lines.extend([format!("{name} = \"{value}\""), format!("{name} '{value}'")]);
            }
            if matches!(entry.kind(), Kind::Choice(_)) {
                lines.extend([
                    format!("{name} {}", value.to_uppercase()),
                    format!("{name} {}", value.replace('_', " ")),
                ]);
            }
        }
        let mut expected = Draft::default();
        expected.enter(entry, &value).unwrap();
        for line in lines {
            let mut terminal = Terminal::new();
            let answer = terminal.line(&line);
            assert_eq!(bits(terminal.draft()), bits(&expected), "{line}: {answer}");
            assert!(answer.contains(&entry.what().to_string()), "{line}: {answer}");
        }
    }
}

#[test]
fn another_unit_is_refused_and_its_own_named() {
    const UNITS: &[&str] = &["mm", "cm", "m", "D", "deg", "um", "mmHg", "hPa", "C", "kg/m3", "in", "kPa"];
    let mut refused = 0;
    for entry in EntryId::all().filter(|entry| matches!(entry.kind(), Kind::Number(..))) {
        for unit in UNITS.iter().filter(|unit| {
            **unit != entry.unit()
                && (![entries::OLD_SPHERE.id(), entries::AFTER_SPHERE.id()].contains(&entry) || !unit.contains('/'))
        }) {
            let mut terminal = Terminal::new();
            let answer = terminal.line(&format!("{} {} {unit}", entry.word(), example(entry)));
            assert!(!terminal.draft().has(entry), "{answer}");
            let own = match entry.unit() {
                "" => "this entry has no unit".to_owned(),
                own => format!("this entry is in {own}, not {unit}"),
            };
            assert!(answer.replace('\n', " ").contains(&own), "{answer}");
            refused += 1;
        }
    }
    assert!(refused > 500);
}

#[test]
fn a_refused_value_leaves_none_behind() {
    for entry in EntryId::all() {
        let Kind::Number(places, bounds) = entry.kind() else { continue };
        let mut terminal = Terminal::new();
        for wrong in [
            format!("{}", bounds.max + 1.0),
            format!("{}", bounds.min - 1.0),
            "1,5".into(),
            "x".into(),
            "1e2".into(),
            "nan".into(),
            format!("1.{}", "0".repeat(usize::from(places) + 1)),
            "\"1\"".into(),
            "- 1".into(),
            "1 2".into(),
        ] {
            terminal.line(&format!("{} {}", entry.word(), example(entry)));
            assert!(terminal.draft().has(entry));
            let answer = terminal.line(&format!("{} {wrong}", entry.word()));
            assert_eq!(bits(terminal.draft()), bits(&Draft::EMPTY), "{} {wrong}", entry.word());
            assert!(answer.contains("not entered now, whatever stood there before"), "{answer}");
            assert!(answer.contains("accepted:"), "{answer}");
            assert!(answer.trim_start().starts_with(&format!("{} {wrong}:", entry.word())), "{answer}");
        }
    }
}

#[test]
fn trade_notation_is_taken_whole_or_not_at_all() {
    let number = |line: &str, entry: EntryId| {
        let mut terminal = Terminal::new();
        terminal.line(line);
        terminal.draft().number(entry)
    };
    for (word, value, power, axis) in [
        ("k1", "43.25", entries::K1.id(), entries::K1_AXIS.id()),
        ("k2", "44.5", entries::K2.id(), entries::K2_AXIS.id()),
        ("oldcyl", "-1.25", entries::OLD_CYLINDER.id(), entries::OLD_AXIS.id()),
        ("iolcyl", "3.75", entries::LENS_CYLINDER.id(), entries::LENS_AXIS.id()),
    ] {
        for good in
            [format!("{word} {value} @ 95"), format!("{word} {value}@95"), format!("{word} = {value} D @ 95 deg")]
        {
            assert_eq!(number(&good, power), value.parse().ok(), "{good}");
            assert_eq!(number(&good, axis), Some(95.0), "{good}");
        }
        for bad in [
            format!("{word} {value} @ 195"),
            format!("{word} {value} @"),
            format!("{word} @ 95"),
            format!("{word} 99 @ 95"),
            format!("{word} {value} @ 95 @ 5"),
            format!("{word} {value} mm @ 95"),
        ] {
            assert_eq!((number(&bad, power), number(&bad, axis)), (None, None), "{bad}");
        }
    }
    assert_eq!(number("oldsphere -3.50 / -1.25 @ 95", entries::OLD_AXIS.id()), Some(95.0));
    assert_eq!(number("oldsphere -3.50 / -1.25 @ 195", entries::OLD_SPHERE.id()), None);
    // an entry with no axis of its own has no such notation
    assert_eq!(number("al 23.5 @ 95", entries::AXIAL_LENGTH.id()), None);
    // nor does what stood before
    let mut terminal = Terminal::new();
    terminal.line("k1 43.25 @ 95");
    terminal.line("k1 44.00 @ 195");
    assert_eq!(bits(terminal.draft()), bits(&Draft::EMPTY));
    // a power alone leaves its axis alone
    terminal.line("k1 43.25 @ 95");
    terminal.line("k1 99");
    assert_eq!((terminal.draft().number(entries::K1), terminal.draft().number(entries::K1_AXIS)), (None, Some(95.0)));
}

/// Another label is another case, and says so; the same one again is not.
#[test]
fn another_label_begins_another_case() {
    let cases = demo_cases();
    let mut terminal = Terminal::new();
    for (name, text) in cases.iter().cycle().take(cases.len() + 2) {
        let answer = terminal.paste(text.as_bytes());
        assert_eq!(bits(terminal.draft()), bits(&by_toml(text)), "{name}: {answer}");
    }
    assert!(terminal.line("id somebody else").contains("another case: what was entered of demo"));
    terminal.line("al 23.46");
    terminal.line("id somebody else");
    assert!(terminal.draft().has(entries::AXIAL_LENGTH));
}

/// The other eye keeps what else was entered, and asks whose it is.
#[test]
fn the_other_eye_is_asked_about() {
    let mut terminal = Terminal::new();
    assert!(!terminal.line("eye left").contains("the other eye"));
    terminal.line("al 23.46");
    assert!(!terminal.line("eye left").contains("the other eye"));
    assert!(terminal.line("eye right").contains("the other eye: what else was entered stays."));
    assert!(terminal.draft().has(entries::AXIAL_LENGTH));
}

/// What a line lost is not guessed: the rest of it is refused.
#[test]
fn a_line_that_lost_a_byte_is_refused() {
    let mut terminal = Terminal::new();
    for text in [&b"target \xFF0.25\r"[..], b"iol 21.\xFF\r", b"\xFFal 23.46\r"] {
        text.iter().for_each(|byte| terminal.byte(*byte, 0));
        assert_eq!(bits(terminal.draft()), bits(&Draft::EMPTY), "{:?}", terminal.screen.last());
    }
}

/// A case file pasted at once gives the entries that the toml crate reads, and no complaint.
#[test]
fn every_demonstration_case_can_be_pasted() {
    for (name, text) in demo_cases() {
        for text in [text.clone(), text.replace('\n', "\r\n"), text.replace('\n', "\r")] {
            let mut terminal = Terminal::new();
            terminal.greet();
            let answer = terminal.paste(text.as_bytes());
            let expected = by_toml(&text.replace("\r\n", "\n").replace('\r', "\n"));
            assert_eq!(bits(terminal.draft()), bits(&expected), "{name}");
            let count = expected.made().count();
            assert!(answer.ends_with(&format!("{count} entries taken.\nocellus> ")), "{name}: {answer}");
            // less comes back than went in, or a slow line would lose some of it
            assert!(answer.len() < text.len() / 2, "{name}: {} of {}", answer.len(), text.len());
        }
    }
}

/// Typed slowly, the same file gives the same entries.
#[test]
fn a_demonstration_case_can_be_typed() {
    let (name, text) = demo_cases().remove(0);
    let mut terminal = Terminal::new();
    for line in text.lines() {
        let answer = terminal.line(line);
        assert!(!answer.contains("accepted:") && answer.ends_with("ocellus> "), "{name}: {answer}");
    }
    assert_eq!(bits(terminal.draft()), bits(&by_toml(&text)));
}

#[test]
fn a_second_case_pasted_over_a_first_is_said() {
    let mut terminal = Terminal::new();
    terminal.line("iolcyl 3.75 @ 97");
    let answer = terminal.paste(demo_cases()[1].1.as_bytes());
    assert!(answer.contains("with those from before there are"), "{answer}");
}

/// Words that are typed are the entry's alone.
#[test]
fn no_word_means_two_things() {
    let help = Terminal::new().line("help");
    let asked = help.split("To ask:\n").nth(1).unwrap().lines().filter_map(|line| line.strip_prefix("  "));
    let verbs: Vec<&str> = asked.filter_map(|line| line.split(' ').next()).filter(|word| !word.is_empty()).collect();
    assert!(verbs.len() > 12 && verbs.contains(&"barometer"), "{verbs:?}");
    for entry in EntryId::all() {
        for verb in verbs.iter().chain(&["all", "entries", "short"]) {
            assert!(entry.word() != *verb && entry.key() != *verb, "{verb}");
        }
        for other in EntryId::all().filter(|other| *other != entry) {
            assert!(entry.word() != other.word() && entry.word() != other.key(), "{}", entry.word());
        }
    }
}

#[test]
fn errors_are_shown_while_pasting() {
    let mut terminal = Terminal::new();
    let answer = terminal.paste(b"al 23.46\nk1 7.8\nlt 4.5\nxyz 1\n");
    assert!(answer.contains("k1 7.8: outside the range") && answer.contains("xyz: not a word"), "{answer}");
    assert!(answer.contains("2 entries taken; 2 lines refused: see above.\n"), "{answer}");
    assert_eq!(answer.matches("ocellus> ").count(), 1, "{answer}");
}
