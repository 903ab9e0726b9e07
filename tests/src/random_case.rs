//! Valid cases and set-ups of any kind, drawn at random, the same ones each time.
//!
//! A draft is drawn from its number and from nothing of the program but bounds and words of the entries that are drawn: tables
//! may be moved and renamed, and the drafts stay.

use ocellus_card::case::{Case, is_set_up};
use ocellus_card::draft::Draft;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_card::name::Name;
use std::collections::BTreeMap;

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

/// Its mixer.
pub(crate) fn mixed(mut z: u64) -> u64 {
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// The entry with this name.
pub(crate) fn named(key: &str) -> EntryId {
    EntryId::of_key(key).unwrap_or_else(|| panic!("{key} is no entry any more"))
}

/// What is drawn for one draft: for each entry whether it is made, and where in its range.
struct Drawn {
    entries: BTreeMap<EntryId, (bool, f64)>,
    ordinary: bool,
    /// Rounded to the decimals that can be typed.
    typed: bool,
}

impl Drawn {
    fn of(number: u64, entries: &[EntryId]) -> Drawn {
        let mut random = Random(mixed(number + 1));
        let (ordinary, typed, density) =
            (!random.next().is_multiple_of(4), random.next().is_multiple_of(2), random.fraction());
        let mut drawn = BTreeMap::new();
        for entry in entries {
            let made = random.fraction() < 0.1 + 0.85 * density;
            let place = match random.next() % 16 {
                0 => 0.0,
                1 => 1.0,
                _ => random.fraction(),
            };
            drawn.insert(*entry, (made, place));
        }
        Drawn { entries: drawn, ordinary, typed }
    }

    fn made(&self) -> impl Iterator<Item = EntryId> + '_ {
        self.entries.iter().filter(|(_, (made, _))| *made).map(|(entry, _)| *entry)
    }

    fn enter(&self, draft: &mut Draft, entry: EntryId) {
        let key = entry.key().to_string();
        let key = key.as_str();
        let place = self.entries.get(&entry).map_or(0.0, |(_, place)| *place);
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
                draft.set(entry, if WHOLE.contains(&key) { f64::from(value as u8) } else { value });
            }
            Kind::Choice(words) => draft.set(entry, pick(words.len()) as f64),
            Kind::Date => draft.set(entry, 20_260_101.0 + pick(28) as f64),
            Kind::Name => draft.set_name(entry, Name::parse("Demo").expect("a name")).expect("an entry that is a name"),
        }
    }

    /// Enters what is missing, and takes back what contradicts another entry.
    fn mend(&self, draft: &mut Draft, error: &Error) {
        let (entry, key) = (error.entry, error.entry.key().to_string());
        let clear: &[&str] = match (error.wrong, key.as_str()) {
            (Wrong::Missing | Wrong::Incomplete, _) => return self.enter(draft, entry),
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
            _ => panic!("{error:?}"),
        };
        clear.iter().for_each(|key| draft.clear(named(key)));
    }
}

/// Whether an entry is of fluids: by itself it makes a set-up.
fn of_fluids(entry: EntryId) -> bool {
    let mut alone = Draft::default();
    alone.set(entry, 0.0);
    is_set_up(&alone)
}

/// A valid draft of these entries; every fifth is a set-up of fluids without an eye.
pub(crate) fn draft(number: u64, entries: &[EntryId]) -> Draft {
    let (drawn, set_up) = (Drawn::of(number, entries), number.is_multiple_of(5));
    let mut draft = Draft::default();
    drawn.made().filter(|entry| !set_up || of_fluids(*entry)).for_each(|entry| drawn.enter(&mut draft, entry));
    // one of the two even where nothing was drawn
    drawn.enter(&mut draft, named(if set_up { "altitude_m" } else { "target_d" }));
    for _ in 0..500 {
        let mut wrong = Vec::new();
        if Case::check(&draft, &mut |error| wrong.push(error)).is_some() {
            return draft;
        }
        // not in the order of the door, which may change
        wrong.sort_by_key(|error| (error.entry.key().to_string(), error.wrong.word()));
        wrong.iter().for_each(|error| drawn.mend(&mut draft, error));
    }
    panic!("no valid draft of the number {number}");
}

/// Drafts of every entry that there is, without end.
pub fn drafts() -> impl Iterator<Item = Draft> {
    let entries: Vec<EntryId> = EntryId::all().collect();
    (0..).map(move |number| draft(number, &entries))
}
