//! Every number that the program gives, by name, as bits: for the demonstration cases one by one, and for ten thousand valid
//! drafts as sums. What the program gave when the numbers were kept lies in `tests/bits`.
//!
//! A draft is drawn from its number and from nothing of the program but bounds and words of the entries named in
//! `bits/keys.txt`: tables may be moved and renamed, and the drafts stay.

use crate::check::{demo_cases, demo_draft};
use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::error::Wrong;
use ocellus_card::id::EntryId;
use ocellus_card::item::Item;
use ocellus_card::name::Name;
use ocellus_card::sink::Sink;
use ocellus_core::working::{Step, Steps};
use std::collections::BTreeMap;
use std::fmt::Write;

/// How many drafts there are, and how many of them a line sums.
pub const DRAFTS: u64 = 10_000;
const TOGETHER: u64 = 10;

/// The entries that are drawn, in the order in which they are.
const KEYS: &str = include_str!("../bits/keys.txt");

/// Where most eyes and set-ups lie; in three drafts of four these take the place of the full range.
const ORDINARY: &[(&str, f64, f64)] = &[
    ("axial_length_mm", 20.0, 28.0),
    ("k1_d", 40.0, 47.0),
    ("k2_d", 40.0, 47.0),
    ("r1_mm", 7.2, 8.4),
    ("r2_mm", 7.2, 8.4),
    ("acd_mm", 2.5, 4.0),
    ("keratometric_index", 1.331, 1.338),
    ("vertex_mm", 12.0, 14.0),
    ("a_constant", 117.0, 120.0),
    ("surgeon_factor", 1.0, 2.5),
    ("pacd_mm", 4.5, 6.0),
    ("haigis_a0", -2.0, 2.0),
    ("haigis_a1", 0.1, 0.5),
    ("haigis_a2", 0.05, 0.25),
    ("iol_power_d", 10.0, 28.0),
    ("target_d", -3.0, 1.0),
    ("k_before_d", 40.0, 47.0),
    ("k_after_d", 35.0, 45.0),
    ("refraction_before_d", -9.0, 3.0),
    ("refraction_after_d", -2.0, 1.0),
    ("refraction_now_d", -4.0, 4.0),
    ("after_sphere_d", -3.0, 3.0),
    ("after_cylinder_d", -3.0, 3.0),
    ("fellow_refraction_d", -4.0, 3.0),
    ("fellow_predicted_d", -3.0, 1.0),
    ("iol_cylinder_d", 0.0, 6.0),
    ("lens_least_d", -10.0, 10.0),
    ("lens_most_d", 20.0, 35.0),
    ("lens_step_d", 0.25, 1.0),
    ("incision_flattening_d", 0.0, 1.0),
    ("sia_centroid_d", 0.0, 1.0),
    ("open_level_cm", 60.0, 130.0),
    ("eye_level_cm", -20.0, 30.0),
    ("set_pressure_mmhg", 30.0, 100.0),
    ("assumed_eye_level_cm", -20.0, 30.0),
    ("aspiration_ml_min", 0.0, 60.0),
    ("infusion_resistance_mmhg_min_ml", 0.05, 1.0),
    ("aspiration_resistance_mmhg_min_ml", 2.0, 10.0),
    ("leak_ml_min", 0.0, 20.0),
    ("reading_1_flow_ml_min", 0.0, 30.0),
    ("reading_1_pressure_mmhg", 40.0, 90.0),
    ("reading_2_flow_ml_min", 30.0, 60.0),
    ("reading_2_pressure_mmhg", 20.0, 60.0),
    ("eye_compliance_ul_mmhg", 0.2, 5.0),
    ("tubing_compliance_ul_mmhg", 0.02, 0.2),
    ("surge_step_ms", 0.005, 2.0),
];

/// Drawn as whole numbers: the table of needles knows no other, and half a tube is none.
const WHOLE: &[&str] = &["needle_gauge", "tubes_side_by_side"];

/// Most eyes had no operation, hold their own lens, and were measured by a keratometer; most others are refused.
const MOSTLY_FIRST: &[&str] = &["k_kind", "eye_state", "previous_surgery"];

/// Numbers at random: SplitMix64 (Steele, Lea, Flood 2014).
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        mixed(self.0)
    }

    /// From 0 to below 1.
    fn fraction(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }
}

fn mixed(mut z: u64) -> u64 {
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// What is drawn for one draft: for each key whether it is entered, and where in its range.
struct Drawn {
    entries: BTreeMap<&'static str, (bool, f64)>,
    ordinary: bool,
    /// Rounded to the decimals that can be typed.
    typed: bool,
}

impl Drawn {
    fn of(number: u64) -> Drawn {
        let mut random = Random(mixed(number + 1));
        let (ordinary, typed, density) = (random.next() % 4 != 0, random.next() % 2 == 0, random.fraction());
        let mut entries = BTreeMap::new();
        for key in KEYS.lines() {
            let entered = random.fraction() < 0.1 + 0.85 * density;
            let place = match random.next() % 16 {
                0 => 0.0,
                1 => 1.0,
                _ => random.fraction(),
            };
            entries.insert(key, (entered, place));
        }
        Drawn { entries, ordinary, typed }
    }

    fn entered(&self, entry: EntryId) -> bool {
        self.entries.get(entry.key().to_string().as_str()).is_some_and(|(entered, _)| *entered)
    }

    fn enter(&self, draft: &mut Draft, entry: EntryId) {
        let key = entry.key().to_string();
        let key = key.as_str();
        let place = self.entries.get(key).map_or(0.0, |(_, place)| *place);
        let place = if MOSTLY_FIRST.contains(&key) { (place - 0.8).max(0.0) / 0.2 } else { place };
        let pick = |count: usize| ((place * count as f64) as usize).min(count - 1);
        match entry.kind() {
            Kind::Number(places, bounds) => {
                let narrow = ORDINARY.iter().find(|(narrow, ..)| self.ordinary && *narrow == key);
                let (least, most) = narrow.map_or((bounds.min, bounds.max), |(_, least, most)| (*least, *most));
                let value = (least + place * (most - least)).clamp(bounds.min, bounds.max);
                let rounded = format!("{value:.*}", usize::from(places)).parse::<f64>().expect("digits");
                let rounded = rounded.clamp(bounds.min, bounds.max);
                let value = if self.typed { rounded } else { value };
                draft.set(entry, if WHOLE.contains(&key) { value.trunc() } else { value });
            }
            Kind::Choice(words) => draft.set(entry, pick(words.len()) as f64),
            Kind::Date => draft.set(entry, 20_260_101.0 + pick(28) as f64),
            Kind::Name => draft.set_name(entry, Name::parse("Demo").expect("a name")).expect("an entry that is a name"),
        }
    }
}

/// A valid draft; every fifth is a set-up of fluids without an eye.
pub fn draft(number: u64) -> Draft {
    let drawn = Drawn::of(number);
    let set_up = number % 5 == 0;
    let of_fluids = |entry: EntryId| matches!(entry.section(), "pressure" | "flow" | "tube");
    let mut draft = Draft::default();
    let named = |key: &str| EntryId::of_key(key).unwrap_or_else(|| panic!("{key} is no entry any more"));
    for entry in KEYS.lines().map(named).filter(|entry| drawn.entered(*entry)) {
        if !set_up || of_fluids(entry) {
            drawn.enter(&mut draft, entry);
        }
    }
    if set_up {
        drawn.enter(&mut draft, named("altitude_m"));
    }
    for _ in 0..500 {
        let mut wrong = Vec::new();
        if Case::check(&draft, &mut |error| wrong.push(error)).is_some() {
            return draft;
        }
        // not in the order of the door, which may change
        wrong.sort_by_key(|error| (error.entry.key().to_string(), error.wrong.word()));
        for error in wrong {
            let (entry, key) = (error.entry, error.entry.key().to_string());
            let clear: &[&str] = match (error.wrong, key.as_str()) {
                (Wrong::Missing | Wrong::Incomplete, _) => {
                    drawn.enter(&mut draft, entry);
                    continue;
                }
                // of powers and radii that disagree, the powers stay
                (Wrong::Disagree, "r1_mm" | "r2_mm") => &["r1_mm", "r2_mm"],
                // with what goes with it, which would ask for it again
                (Wrong::Twice, "incision_clock_h") => &["incision_clock_h", "clock_seen_from"],
                (Wrong::Twice, "sia_centroid_d") => &["sia_centroid_d", "sia_centroid_axis_deg"],
                // all of them, since one asks for another
                (Wrong::NoLaser, _) => {
                    &["k_before_d", "refraction_before_d", "refraction_after_d", "k_after_d", "k_after_from"]
                }
                (Wrong::Disagree | Wrong::Twice | Wrong::NoCornea, key) => &[key],
                _ => panic!("{number}: {error:?}"),
            };
            clear.iter().for_each(|key| draft.clear(named(key)));
        }
    }
    panic!("no valid draft of the number {number}");
}

/// FNV-1a (Fowler, Noll, Vo), 64 bits.
fn hash(parts: &[&[u8]]) -> u64 {
    let bytes = parts.iter().flat_map(|part| part.iter().chain(&[0xFF]));
    bytes.fold(0xCBF2_9CE4_8422_2325, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01B3))
}

/// What one number was called, and its bits; each hashed for itself and summed, so that no order matters.
#[derive(Default)]
struct Told {
    items: Vec<(String, &'static str, u8, u64)>,
    steps: u64,
    cautions: Vec<(String, String, &'static str)>,
}

impl Sink for Told {
    fn item(&mut self, item: Item) {
        let key = item.what.key().to_string();
        self.items.push((key, item.method.map_or("", |m| m.key()), item.row, item.value.to_bits()));
    }

    fn caution(&mut self, caution: Caution) {
        let entry = caution.entry.map_or(String::new(), |entry| entry.key().to_string());
        self.cautions.push((caution.code.word().to_string(), entry, caution.method.map_or("", |m| m.key())));
    }
}

impl Steps for Told {
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

fn told(draft: &Draft, explained: bool) -> Told {
    let case = Case::try_from(draft).expect("a valid draft");
    let mut told = Told::default();
    case.plan(&mut told);
    if explained {
        let mut working = Told::default();
        for subject in Subject::all() {
            case.explain(subject, &mut working);
        }
        told.steps = working.steps;
    }
    told
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
        let told = told(&draft, true);
        let name = path.file_name().expect("a file").to_string_lossy().into_owned();
        writeln!(text, "case {name} steps {:016x}", told.steps).expect("a text");
        let mut rows: BTreeMap<(String, &str), String> = BTreeMap::new();
        for (key, method, row, bits) in told.items {
            write!(rows.entry((key, method)).or_default(), " {row}:{bits:016x}").expect("a text");
        }
        for ((key, method), bits) in rows {
            let of = if method.is_empty() { "" } else { " of " };
            writeln!(text, "{key}{of}{method}{bits}").expect("a text");
        }
        let mut cautions: Vec<_> = told.cautions.into_iter().filter(may_not_come).collect();
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
    let mut lines = String::new();
    let mut by_name: BTreeMap<(String, &str), (u64, u64)> = BTreeMap::new();
    let mut by_code: BTreeMap<String, u64> = BTreeMap::new();
    for first in (0..DRAFTS).step_by(TOGETHER as usize) {
        let (mut entries, mut numbers, mut steps, mut cautions) = (0u64, 0u64, 0u64, 0u64);
        for number in first..first + TOGETHER {
            let draft = draft(number);
            // the workings of one in ten: they take most of the time
            let told = told(&draft, number == first);
            entries = entries.wrapping_add(of_draft(&draft));
            steps = steps.wrapping_add(told.steps);
            for item in told.items {
                let of = of_item(&item);
                numbers = numbers.wrapping_add(of);
                let (count, sum) = by_name.entry((item.0, item.1)).or_default();
                (*count, *sum) = (*count + 1, sum.wrapping_add(mixed(of ^ number)));
            }
            for caution in told.cautions.into_iter().filter(may_not_come) {
                cautions = cautions.wrapping_add(of_caution(&caution));
                *by_code.entry(caution.0).or_default() += 1;
            }
        }
        writeln!(lines, "{first} {entries:016x} {numbers:016x} {steps:016x} {cautions:016x}").expect("a text");
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
