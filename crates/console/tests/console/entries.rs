//! Every entry: by its word and by its key, with its unit, without, and with another's.

use crate::terminal::{Terminal, bits, by_toml, demo_cases};
use ocellus_core::draft::Draft;
use ocellus_core::draft::with_text;
use ocellus_core::field::{Field, Kind};

/// A value that the field takes, as it is typed.
fn example(field: Field) -> String {
    match field.kind() {
        Kind::Number(_, bounds) => with_text(field, (bounds.min + bounds.max) / 2.0, str::to_owned).unwrap(),
        Kind::Choice(words) => words.last().unwrap().to_string(),
        Kind::Date => "2026-12-01".to_owned(),
        Kind::Name => "Demo A".to_owned(),
    }
}

#[test]
fn every_entry_is_taken_by_word_and_by_key() {
    for field in Field::ALL.iter().copied() {
        let (value, unit) = (example(field), field.unit());
        let mut lines = vec![];
        for name in [field.word().to_owned(), field.key().to_owned(), field.word().to_uppercase()] {
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
            if !matches!(field.kind(), Kind::Number(..)) {
                lines.extend([format!("{name} = \"{value}\""), format!("{name} '{value}'")]);
            }
            if matches!(field.kind(), Kind::Choice(_)) {
                lines.extend([
                    format!("{name} {}", value.to_uppercase()),
                    format!("{name} {}", value.replace('_', " ")),
                ]);
            }
        }
        let mut expected = ocellus_core::draft::Draft::default();
        expected.enter(field, &value).unwrap();
        for line in lines {
            let mut terminal = Terminal::new();
            let answer = terminal.line(&line);
            assert_eq!(bits(terminal.draft()), bits(&expected), "{line}: {answer}");
            assert!(answer.contains(field.what()), "{line}: {answer}");
        }
    }
}

#[test]
fn another_unit_is_refused_and_its_own_named() {
    const UNITS: &[&str] = &["mm", "cm", "m", "D", "deg", "um", "mmHg", "hPa", "C", "kg/m3", "in", "kPa"];
    let mut refused = 0;
    for field in Field::ALL.iter().copied().filter(|field| matches!(field.kind(), Kind::Number(..))) {
        for unit in UNITS.iter().filter(|unit| {
            **unit != field.unit() && (![Field::OldSphere, Field::AfterSphere].contains(&field) || !unit.contains('/'))
        }) {
            let mut terminal = Terminal::new();
            let answer = terminal.line(&format!("{} {} {unit}", field.word(), example(field)));
            assert!(!terminal.draft().has(field), "{answer}");
            let own = match field.unit() {
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
    for field in Field::ALL.iter().copied() {
        let Kind::Number(places, bounds) = field.kind() else { continue };
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
            terminal.line(&format!("{} {}", field.word(), example(field)));
            assert!(terminal.draft().has(field));
            let answer = terminal.line(&format!("{} {wrong}", field.word()));
            assert_eq!(bits(terminal.draft()), bits(&Draft::EMPTY), "{} {wrong}", field.word());
            assert!(answer.contains("not entered now, whatever stood there before"), "{answer}");
            assert!(answer.contains("accepted:"), "{answer}");
            assert!(answer.trim_start().starts_with(&format!("{} {wrong}:", field.word())), "{answer}");
        }
    }
}

#[test]
fn trade_notation_is_taken_whole_or_not_at_all() {
    let number = |line: &str, field: Field| {
        let mut terminal = Terminal::new();
        terminal.line(line);
        terminal.draft().number(field)
    };
    for (word, value, power, axis) in [
        ("k1", "43.25", Field::K1, Field::K1Axis),
        ("k2", "44.5", Field::K2, Field::K2Axis),
        ("oldcyl", "-1.25", Field::OldCylinder, Field::OldAxis),
        ("iolcyl", "3.75", Field::LensCylinder, Field::LensAxis),
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
    assert_eq!(number("oldsphere -3.50 / -1.25 @ 95", Field::OldAxis), Some(95.0));
    assert_eq!(number("oldsphere -3.50 / -1.25 @ 195", Field::OldSphere), None);
    // an entry with no axis of its own has no such notation
    assert_eq!(number("al 23.5 @ 95", Field::AxialLength), None);
    // nor does what stood before
    let mut terminal = Terminal::new();
    terminal.line("k1 43.25 @ 95");
    terminal.line("k1 44.00 @ 195");
    assert_eq!(bits(terminal.draft()), bits(&Draft::EMPTY));
    // a power alone leaves its axis alone
    terminal.line("k1 43.25 @ 95");
    terminal.line("k1 99");
    assert_eq!((terminal.draft().number(Field::K1), terminal.draft().number(Field::K1Axis)), (None, Some(95.0)));
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
    assert!(terminal.draft().has(Field::AxialLength));
}

/// The other eye keeps what else was entered, and asks whose it is.
#[test]
fn the_other_eye_is_asked_about() {
    let mut terminal = Terminal::new();
    assert!(!terminal.line("eye left").contains("the other eye"));
    terminal.line("al 23.46");
    assert!(!terminal.line("eye left").contains("the other eye"));
    assert!(terminal.line("eye right").contains("the other eye: what else was entered stays."));
    assert!(terminal.draft().has(Field::AxialLength));
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
            let count = Field::ALL.iter().filter(|field| expected.has(**field)).count();
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

/// Words that are typed are the field's alone.
#[test]
fn no_word_means_two_things() {
    let verbs = [
        "show", "plan", "explain", "nudge", "draw", "convert", "readback", "identify", "clear", "help", "all",
        "entries",
    ];
    for field in Field::ALL {
        assert!(!verbs.contains(&field.word()) && !verbs.contains(&field.key()), "{}", field.word());
        for other in Field::ALL.iter().filter(|other| *other != field) {
            assert!(field.word() != other.word() && field.word() != other.key(), "{}", field.word());
        }
    }
}

#[test]
fn errors_are_told_while_pasting() {
    let mut terminal = Terminal::new();
    let answer = terminal.paste(b"al 23.46\nk1 7.8\nlt 4.5\nxyz 1\n");
    assert!(answer.contains("k1 7.8: outside the range") && answer.contains("xyz: not a word"), "{answer}");
    assert!(answer.contains("2 entries taken; 2 lines refused: see above.\n"), "{answer}");
    assert_eq!(answer.matches("ocellus> ").count(), 1, "{answer}");
}
