//! What must hold of the tables that name everything.

use ocellus_core::constant;
use ocellus_core::explain::Subject;
use ocellus_core::field::{Field, Kind, Section};
use ocellus_core::item::What;
use ocellus_core::source::Source;
use ocellus_core::working::Topic;
use ocellus_core::{bounds, caution};
use std::collections::BTreeSet;

fn all_different<T: Ord + std::fmt::Debug + Clone>(names: impl Iterator<Item = T>) {
    let mut seen = BTreeSet::new();
    for name in names {
        assert!(seen.insert(name.clone()), "{name:?} stands twice");
    }
}

#[test]
fn no_name_stands_twice() {
    all_different(Field::ALL.iter().map(|f| f.key()));
    all_different(Field::ALL.iter().map(|f| f.word()));
    all_different(What::ALL.iter().map(|w| w.key()));
    all_different(caution::Code::ALL.iter().map(|c| c.word()));
    all_different(constant::all().map(|c| c.name));
    all_different(Source::ALL.iter().map(|s| s.text()));
    all_different(Subject::all().map(|s| s.key()));
}

/// The sections are contiguous, so a case file read from top to bottom is in canonical order.
#[test]
fn fields_of_a_section_stand_together() {
    let mut sections: Vec<Section> = Field::ALL.iter().map(|f| f.section()).collect();
    sections.dedup();
    assert_eq!(sections, Section::ALL);
    all_different(sections.iter().map(|section| section.word()));
}

#[test]
fn a_default_lies_within_its_bounds() {
    for field in Field::ALL {
        if let (Kind::Number(_, bounds), Some(default)) = (field.kind(), field.default()) {
            assert!(bounds.check(default).is_ok(), "{}", field.key());
        }
    }
}

/// The read-back writes a number as nine digits: every field's largest value must fit.
#[test]
fn every_number_fits_its_read_back() {
    for field in Field::ALL {
        if let Kind::Number(places, bounds) = field.kind() {
            let largest = bounds.max.abs().max(bounds.min.abs());
            assert!(largest < 10u64.pow(u32::from(9 - places)) as f64, "{}", field.key());
        }
    }
}

/// A student who redoes a step must find in its equation every constant it uses, digit for digit.
#[test]
fn an_equation_shows_its_constants() {
    for topic in Topic::all() {
        for (line, prose) in topic.lines().iter().zip(topic.prose()) {
            for constant in prose.constants {
                // "AL - 2" shows -2, and a percentage may stand as the factor it is
                let equation = prose.equation.replace("- ", "-");
                let factor = constant.get() / 100.0;
                let number = |c: char| c.is_ascii_digit() || c == '.' || c == '-';
                let mut numbers = equation.split(|c| !number(c)).map(|n| n.trim_end_matches('.'));
                // 4/3 and 1.20 are tokens too, a sign may belong to what stands before it
                let shown = numbers.any(|n| {
                    n == constant.digits
                        || n.trim_start_matches('-') == constant.digits
                        || n.parse::<f64>().is_ok_and(|n| n == factor)
                });
                assert!(shown, "{} ({topic:?}): {} does not show {}", line.symbol, prose.equation, constant.digits);
            }
        }
    }
}

/// No sentence of a caution is empty or unfinished, and each fits a card.
#[test]
fn cautions_are_sentences() {
    for code in caution::Code::ALL {
        assert!(code.text().ends_with('.') || code.text().ends_with('?'), "{}", code.word());
        assert!(code.text().len() < 240, "{}", code.word());
    }
}

/// A source nobody cites has no business in the table.
#[test]
fn every_source_is_cited() {
    let mut cited: Vec<Source> = vec![Source::Entered];
    cited.extend(constant::all().map(|c| c.source));
    cited.extend(What::ALL.iter().map(|w| w.source()));
    cited.extend(caution::Code::ALL.iter().map(|c| c.source()));
    cited.extend(bounds::ALL.iter().map(|b| b.source));
    cited.extend(Topic::all().flat_map(|t| t.lines()).map(|l| l.source));
    cited.extend(ocellus_core::lens::Method::ALL.iter().map(|m| m.source()));
    let idle: Vec<&Source> = Source::ALL.iter().filter(|s| !cited.contains(s)).collect();
    assert!(idle.is_empty(), "{idle:?}");
}
