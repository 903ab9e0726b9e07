//! What must hold of the tables that name everything.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]
#![cfg(feature = "all")]

use ocellus_card::draft::{Draft, with_text};
use ocellus_card::entry::Kind;
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use ocellus_card::{Subject, limits, notations, workings};
use ocellus_core::constant::{self, Constant};
use ocellus_core::lens::method::Method;
use ocellus_core::quantity::BOUNDS;
use ocellus_core::source::Source;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn all_different<T: Ord + std::fmt::Debug + Clone>(names: impl Iterator<Item = T>) {
    let mut seen = BTreeSet::new();
    for name in names {
        assert!(seen.insert(name.clone()), "{name:?} stands twice");
    }
}

/// Every constant that there is, those of the card among them.
fn constants() -> impl Iterator<Item = &'static Constant> {
    constant::all().chain(limits())
}

/// The files below a folder.
fn files(folder: &Path) -> Vec<PathBuf> {
    let below = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    below.flat_map(|path| if path.is_dir() { files(&path) } else { vec![path] }).collect()
}

fn source(folder: &str) -> Vec<PathBuf> {
    files(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder))
}

#[test]
fn no_name_stands_twice() {
    all_different(EntryId::all().map(|e| e.key().to_string()));
    all_different(EntryId::all().map(|e| e.word().to_string()));
    all_different(ItemId::all().map(|i| i.key().to_string()));
    all_different(CautionId::all().map(|c| c.word().to_string()));
    all_different(SignOffId::all().map(|s| s.key().to_string()));
    all_different(PartId::all().map(|p| p.key().to_string()));
    all_different(PartId::all().map(|p| p.heading().to_string()).filter(|heading| !heading.is_empty()));
    all_different(Subject::all().map(|s| s.key().to_string()));
    all_different(Subject::all().map(|s| s.numbers()));
    all_different(EntryId::all().map(|e| (e.section(), e.key().to_string())));
    all_different(constants().map(|c| c.name));
    for entry in EntryId::all() {
        if let Kind::Choice(words) = entry.kind() {
            all_different(words.iter());
        }
    }
}

/// A part that has limits says so in its line of `parts!`.
#[test]
fn every_limit_is_known() {
    let files = source("src/parts").into_iter().filter(|path| path.ends_with("limits.rs"));
    let written: String = files.map(|path| fs::read_to_string(path).unwrap()).collect();
    assert_eq!(written.lines().filter(|line| line.contains("\" = ")).count(), limits().count());
}

/// In a part, the entries of one table of a case file stand together.
#[test]
fn entries_of_a_section_stand_together() {
    let mut sections: Vec<_> = EntryId::all().map(|entry| (entry.part(), entry.section())).collect();
    sections.dedup();
    all_different(sections.into_iter());
}

/// A default is of its kind, within its bounds, and can be typed as it is printed.
#[test]
fn a_default_can_be_typed() {
    for (entry, default) in EntryId::all().filter_map(|entry| Some((entry, entry.default()?))) {
        assert_eq!(entry.check(default), Ok(()), "{}", entry.key());
        let mut draft = Draft::default();
        with_text(entry, default, |text| draft.enter(entry, text)).unwrap().unwrap();
        assert_eq!(draft.number(entry), Some(default), "{}", entry.key());
    }
}

/// The read-back writes a number as nine digits and a word as two: the largest of every entry must fit.
#[test]
fn every_entry_fits_its_read_back() {
    for entry in EntryId::all() {
        match entry.kind() {
            Kind::Number(places, bounds) => {
                let largest = bounds.max.abs().max(bounds.min.abs());
                assert!(largest < 10u64.pow(u32::from(9 - places)) as f64, "{}", entry.key());
            }
            Kind::Choice(words) => assert!((2..=99).contains(&words.len()), "{}", entry.key()),
            Kind::Date | Kind::Name => {}
        }
    }
}

/// What may be typed behind an entry is another one, and no entry goes on in two ways.
#[test]
fn notations_lead_from_one_entry_to_another() {
    all_different(notations().map(|on| on.first));
    for on in notations() {
        assert!(on.first != on.next && on.mark.is_ascii_punctuation(), "{}", on.first.key());
        assert_eq!(on.first.goes_on(), Some((on.mark, on.next)));
    }
}

/// A student who redoes a step must find in its equation every constant it uses, digit for digit.
#[test]
fn an_equation_shows_its_constants() {
    for table in workings::all() {
        for (line, prose) in table.lines().zip(workings::prose(table)) {
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
                let (of, symbol) = (table.heading, line.symbol);
                assert!(shown, "{symbol} of {of}: {} does not show {}", prose.equation, constant.digits);
            }
        }
    }
}

/// Each step has a symbol, a unit, a meaning and an equation.
#[test]
fn every_step_has_its_prose() {
    for table in workings::all() {
        assert_eq!(table.lines().count(), workings::prose(table).len(), "{}", table.heading);
        for (line, prose) in table.lines().zip(workings::prose(table)) {
            let texts = [line.symbol, line.unit(), prose.meaning, prose.equation];
            assert!(texts.iter().all(|text| !text.is_empty()), "{} of {}", line.symbol, table.heading);
        }
    }
}

/// Every working of the formulas can be explained: its equations stand under the checks above.
#[test]
fn no_working_is_left_out() {
    let declared = |text: &str| {
        text.lines()
            .filter(|line| line.trim_start().trim_start_matches("ocellus_core::").starts_with("working! {"))
            .count()
    };
    let files = [source("../core/src"), source("src")].concat();
    let all: usize = files.iter().map(|path| declared(&fs::read_to_string(path).unwrap())).sum();
    let tables: BTreeSet<_> = workings::all().map(std::ptr::from_ref).collect();
    // one table is that of another eye too
    assert_eq!(tables.len(), all + 1);
}

/// A source that nobody cites does not belong in the table.
#[test]
fn every_source_is_cited() {
    let mut cited: Vec<Source> = vec![Source::Entered];
    cited.extend(constants().map(|c| c.source));
    cited.extend(ItemId::all().map(|i| i.source()));
    cited.extend(CautionId::all().map(|c| c.source()));
    cited.extend(BOUNDS.iter().map(|b| b.source));
    cited.extend(workings::all().flat_map(|t| t.lines()).map(|l| l.source));
    cited.extend(Method::ALL.iter().map(|m| m.source()));
    let idle: Vec<&Source> = Source::ALL.iter().filter(|s| !cited.contains(s)).collect();
    assert!(idle.is_empty(), "{idle:?}");
}
