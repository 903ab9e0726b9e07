//! Every number that the program gives, by name, as bits: for the demonstration cases one by one, and for ten thousand valid
//! drafts as sums. What the program gave when the numbers were kept lies in `tests/bits`.
//! Drafts are drawn of the entries named in `bits/keys.txt`, so that they stay when others are added.

use crate::check::{demo_cases, demo_draft};
use crate::random_case::{self, mixed, named};
use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::working::{Step, Steps};
use std::collections::BTreeMap;
use std::fmt::Write;

/// How many drafts there are, and how many of them a line sums.
pub const DRAFTS: u64 = 10_000;
const TOGETHER: u64 = 10;

/// The entries that are drawn, in the order in which they are.
const KEYS: &str = include_str!("../bits/keys.txt");

/// FNV-1a (Fowler, Noll, Vo), 64 bits.
fn hash(parts: &[&[u8]]) -> u64 {
    let bytes = parts.iter().flat_map(|part| part.iter().chain(&[0xFF]));
    bytes.fold(0xCBF2_9CE4_8422_2325, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01B3))
}

/// What one number was called, and its bits; each hashed for itself and summed, so that no order matters.
#[derive(Default)]
struct Said {
    items: Vec<(String, &'static str, u8, u64)>,
    steps: u64,
    cautions: Vec<(String, String, &'static str)>,
}

impl Sink for Said {
    fn item(&mut self, item: Item) {
        let key = item.what.key().to_string();
        self.items.push((key, item.method.map_or("", |m| m.key()), item.row, item.value.to_bits()));
    }

    fn caution(&mut self, caution: Caution) {
        let entry = caution.entry.map_or(String::new(), |entry| entry.key().to_string());
        self.cautions.push((caution.code.word().to_string(), entry, caution.method.map_or("", |m| m.key())));
    }
}

impl Steps for Said {
    fn step(&mut self, step: Step) {
        let line = step.line().expect("a step of its table");
        let bits = step.value.to_bits().to_le_bytes();
        let of = hash(&[line.symbol.as_bytes(), line.unit().as_bytes(), &[step.index], &bits]);
        self.steps = self.steps.wrapping_add(of);
    }
}

fn of_item((key, method, row, bits): &(String, &str, u8, u64)) -> u64 {
    hash(&[key.as_bytes(), method.as_bytes(), &[*row], &bits.to_le_bytes()])
}

/// Cautions that may come more often than they did: they follow from what was read, and say nothing of a number.
const MAY_COME: &[&str] = &["unused"];

fn may_not_come(caution: &(String, String, &str)) -> bool {
    !MAY_COME.contains(&caution.0.as_str())
}

fn of_caution((code, entry, method): &(String, String, &str)) -> u64 {
    hash(&[code.as_bytes(), entry.as_bytes(), method.as_bytes()])
}

fn said(draft: &Draft, explained: bool) -> Said {
    let case = Case::try_from(draft).expect("a valid draft");
    let mut said = Said::default();
    case.plan(&mut said);
    if explained {
        let mut working = Said::default();
        for subject in Subject::all() {
            case.explain(subject, &mut working);
        }
        said.steps = working.steps;
    }
    said
}

fn of_draft(draft: &Draft) -> u64 {
    let of = |entry: EntryId| {
        let key = entry.key().to_string();
        let number = draft.number(entry).map(|value| hash(&[key.as_bytes(), &value.to_bits().to_le_bytes()]));
        let name = draft.name(entry).map(|name| hash(&[key.as_bytes(), name.as_str().as_bytes()]));
        number.or(name).unwrap_or(0)
    };
    EntryId::all().map(of).fold(0, u64::wrapping_add)
}

/// The numbers of the demonstration cases: a line for each number of the card, and one for the steps of all its workings.
pub fn cases() -> String {
    let mut text = String::new();
    for path in demo_cases() {
        let draft = demo_draft(&path);
        let said = said(&draft, true);
        let name = path.file_name().expect("a file").to_string_lossy().into_owned();
        writeln!(text, "case {name} steps {:016x}", said.steps).expect("a text");
        let mut rows: BTreeMap<(String, &str), String> = BTreeMap::new();
        for (key, method, row, bits) in said.items {
            write!(rows.entry((key, method)).or_default(), " {row}:{bits:016x}").expect("a text");
        }
        for ((key, method), bits) in rows {
            let of = if method.is_empty() { "" } else { " of " };
            writeln!(text, "{key}{of}{method}{bits}").expect("a text");
        }
        let mut cautions: Vec<_> = said.cautions.into_iter().filter(may_not_come).collect();
        cautions.sort_unstable();
        for (code, field, method) in cautions {
            writeln!(text, "caution {}", format!("{code} {field} {method}").trim_end()).expect("a text");
        }
    }
    text
}

/// Sums over the drafts: a line for each ten of them (entries, numbers, steps, cautions), and one for each number by name,
/// over all of them.
pub fn drafts() -> String {
    let entries: Vec<EntryId> = KEYS.lines().map(named).collect();
    let mut lines = String::new();
    let mut by_name: BTreeMap<(String, &str), (u64, u64)> = BTreeMap::new();
    let mut by_code: BTreeMap<String, u64> = BTreeMap::new();
    for first in (0..DRAFTS).step_by(TOGETHER as usize) {
        let (mut made, mut numbers, mut steps, mut cautions) = (0u64, 0u64, 0u64, 0u64);
        for number in first..first + TOGETHER {
            let draft = random_case::draft(number, &entries);
            // the workings of one in ten: they take most of the time
            let said = said(&draft, number == first);
            made = made.wrapping_add(of_draft(&draft));
            steps = steps.wrapping_add(said.steps);
            for item in said.items {
                let of = of_item(&item);
                numbers = numbers.wrapping_add(of);
                let (count, sum) = by_name.entry((item.0, item.1)).or_default();
                (*count, *sum) = (*count + 1, sum.wrapping_add(mixed(of ^ number)));
            }
            for caution in said.cautions.into_iter().filter(may_not_come) {
                cautions = cautions.wrapping_add(of_caution(&caution));
                *by_code.entry(caution.0).or_default() += 1;
            }
        }
        writeln!(lines, "{first} {made:016x} {numbers:016x} {steps:016x} {cautions:016x}").expect("a text");
    }
    for ((key, method), (count, sum)) in by_name {
        let of = if method.is_empty() { "" } else { " of " };
        writeln!(lines, "{key}{of}{method} {count} {sum:016x}").expect("a text");
    }
    for (code, count) in by_code {
        writeln!(lines, "caution {code} {count}").expect("a text");
    }
    lines
}
