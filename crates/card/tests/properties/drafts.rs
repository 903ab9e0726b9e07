//! Valid drafts of any kind, of an eye and of a set-up, drawn at random.

use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::entry::Kind;
use ocellus_card::error::{Error, Wrong};
use ocellus_card::id::EntryId;
use ocellus_card::name::Name;
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::fmt;
use std::sync::LazyLock;

/// How many drafts a property is tried on, where there is time for more than usual.
pub(crate) fn cases(usual: u32) -> u32 {
    std::env::var("OCELLUS_RANDOM_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(usual)
}

/// Entries as fractions of what is accepted, and whether each was made.
#[derive(Clone)]
pub(crate) struct Seed {
    entries: Vec<(bool, f64)>,
    /// In the range where most eyes and set-ups lie.
    ordinary: bool,
    /// With no more decimals than can be typed.
    typed: bool,
}

impl fmt::Debug for Seed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", if self.ordinary { "ordinary" } else { "any" })?;
        write!(f, "{}", if self.typed { ", typed" } else { "" })?;
        for (entry, (made, fraction)) in EntryId::all().zip(&self.entries).filter(|(_, drawn)| **drawn != (false, 0.0))
        {
            write!(f, ", {}{} {fraction}", if *made { "" } else { "(not) " }, entry.key())?;
        }
        Ok(())
    }
}

/// The entries of a draft, to be read by people.
pub(crate) fn shown(draft: &Draft) -> String {
    let value = |entry: EntryId| match entry.kind() {
        Kind::Choice(words) => {
            draft.number(entry).and_then(|code| words.get(code as usize)).map(|word| word.to_string())
        }
        Kind::Name => draft.name(entry).map(|name| name.as_str().to_owned()),
        Kind::Number(..) | Kind::Date => draft.number(entry).map(|number| number.to_string()),
    };
    draft.made().map(|entry| format!("{} = {}\n", entry.key(), value(entry).unwrap_or_default())).collect()
}

/// Where most eyes and set-ups lie; in an ordinary seed these take the place of the full range, so that most methods
/// answer and most chambers hold.
const ORDINARY: &[(EntryId, f64, f64)] = &[
    (entries::AXIAL_LENGTH.id(), 20.0, 28.0),
    (entries::K1.id(), 40.0, 47.0),
    (entries::K2.id(), 40.0, 47.0),
    (entries::R1.id(), 7.2, 8.4),
    (entries::R2.id(), 7.2, 8.4),
    (entries::A_CONSTANT.id(), 117.0, 120.0),
    (entries::SURGEON_FACTOR.id(), 1.0, 2.5),
    (entries::PACD.id(), 4.5, 6.0),
    (entries::HAIGIS_A0.id(), -2.0, 2.0),
    (entries::HAIGIS_A1.id(), 0.1, 0.5),
    (entries::HAIGIS_A2.id(), 0.05, 0.25),
    (entries::LENS_POWER.id(), 10.0, 28.0),
    (entries::TARGET.id(), -3.0, 1.0),
    (entries::LENS_CYLINDER.id(), 0.0, 6.0),
    (entries::LENS_LEAST.id(), -10.0, 10.0),
    (entries::LENS_MOST.id(), 20.0, 35.0),
    (entries::OPEN_LEVEL.id(), 60.0, 130.0),
    (entries::EYE_LEVEL.id(), -20.0, 30.0),
    (entries::SET_PRESSURE.id(), 30.0, 100.0),
    (entries::ASSUMED_LEVEL.id(), -20.0, 30.0),
    (entries::ASPIRATION.id(), 0.0, 60.0),
    (entries::INFUSION_RESISTANCE.id(), 0.05, 1.0),
    (entries::ASPIRATION_RESISTANCE.id(), 2.0, 10.0),
    (entries::LEAK.id(), 0.0, 20.0),
    (entries::READING_FLOW_1.id(), 0.0, 30.0),
    (entries::READING_PRESSURE_1.id(), 40.0, 90.0),
    (entries::READING_FLOW_2.id(), 30.0, 60.0),
    (entries::READING_PRESSURE_2.id(), 20.0, 60.0),
    (entries::EYE_COMPLIANCE.id(), 0.2, 5.0),
    (entries::TUBING_COMPLIANCE.id(), 0.02, 0.2),
    (entries::SURGE_STEP.id(), 0.005, 2.0),
];

/// Drawn as whole numbers, since the table of needles knows no other and half a tube is none.
const WHOLE: &[EntryId] = &[entries::GAUGE.id(), entries::SIDE_BY_SIDE.id()];

/// Most eyes had no operation, hold their own lens, and were measured by a keratometer; all others are refused.
const MOSTLY_FIRST: &[EntryId] = &[entries::K_KIND.id(), entries::EYE_STATE.id(), entries::PREVIOUS_SURGERY.id()];

/// What only an eye after laser has.
const LASER: &[EntryId] = &[
    entries::K_BEFORE.id(),
    entries::REFRACTION_BEFORE.id(),
    entries::REFRACTION_AFTER.id(),
    entries::K_AFTER.id(),
    entries::K_AFTER_FROM.id(),
];

/// What a surge takes besides the levels: so many entries are seldom drawn together.
const SURGE: &[EntryId] = &[
    entries::EYE_LEVEL.id(),
    entries::PUMP_KIND.id(),
    entries::ASPIRATION.id(),
    entries::VACUUM_NUCLEUS.id(),
    entries::INFUSION_RESISTANCE.id(),
    entries::ASPIRATION_RESISTANCE.id(),
    entries::TUBING_COMPLIANCE.id(),
];

/// The tables of a case file that a set-up has.
const OF_FLUIDS: &[&str] = &["pressure", "flow", "tube"];

/// Makes an entry, at a fraction of its range.
pub(crate) fn enter(draft: &mut Draft, entry: EntryId, fraction: f64, typed: bool) {
    place(draft, entry, fraction, None, typed);
}

fn place(draft: &mut Draft, entry: EntryId, fraction: f64, narrow: Option<(f64, f64)>, typed: bool) {
    let pick = |count: usize| ((fraction * count as f64) as usize).min(count - 1);
    match entry.kind() {
        Kind::Number(places, bounds) => {
            let (least, most) = narrow.unwrap_or((bounds.min, bounds.max));
            let value = least + fraction * (most - least);
            let rounded = || format!("{value:.*}", usize::from(places)).parse().unwrap();
            let value: f64 = if typed { rounded() } else { value };
            let value = if WHOLE.contains(&entry) { f64::from(value as u8) } else { value };
            draft.set(entry, value.clamp(bounds.min, bounds.max));
        }
        Kind::Choice(words) => draft.set(entry, pick(words.len()) as f64),
        Kind::Date => draft.set(entry, 20_260_101.0 + pick(28) as f64),
        Kind::Name => draft.set_name(entry, Name::parse(["Demo", "Demo B"][pick(2)]).unwrap()).unwrap(),
    }
}

impl Seed {
    fn drawn(&self, entry: EntryId) -> (bool, f64) {
        static PLACES: LazyLock<BTreeMap<EntryId, usize>> =
            LazyLock::new(|| EntryId::all().enumerate().map(|(place, entry)| (entry, place)).collect());
        self.entries[PLACES[&entry]]
    }

    fn enter(&self, draft: &mut Draft, entry: EntryId) {
        let drawn = self.drawn(entry).1;
        let fraction = if MOSTLY_FIRST.contains(&entry) { (drawn - 0.8).max(0.0) / 0.2 } else { drawn };
        let narrow = ORDINARY.iter().find(|(narrowed, ..)| self.ordinary && *narrowed == entry);
        place(draft, entry, fraction, narrow.map(|(_, least, most)| (*least, *most)), self.typed);
    }

    /// A valid draft of an eye: what is missing is entered, what contradicts another entry is taken back.
    pub(crate) fn eye(&self) -> Draft {
        let mut draft = Draft::default();
        EntryId::all().filter(|entry| self.drawn(*entry).0).for_each(|entry| self.enter(&mut draft, entry));
        // of an eye even where nothing was drawn
        self.enter(&mut draft, entries::SIDE.id());
        self.enter(&mut draft, entries::TARGET.id());
        self.mended(draft)
    }

    /// The same of a set-up without an eye, which has one entry at the least; with the compliance of an eye there is
    /// all that a surge takes.
    pub(crate) fn set_up(&self) -> Draft {
        let mut draft = Draft::default();
        let surge = self.drawn(entries::EYE_COMPLIANCE.id()).0;
        for entry in EntryId::all().filter(|entry| OF_FLUIDS.contains(&entry.section())) {
            if self.drawn(entry).0 || surge && SURGE.contains(&entry) {
                self.enter(&mut draft, entry);
            }
        }
        if draft.made().next().is_none() {
            self.enter(&mut draft, entries::ALTITUDE.id());
        }
        let draft = self.mended(draft);
        assert!(!Case::try_from(&draft).unwrap().has_eye());
        draft
    }

    /// One of the two: the eye more often.
    pub(crate) fn draft(&self) -> Draft {
        if self.drawn(entries::ID.id()).1 < 0.75 { self.eye() } else { self.set_up() }
    }

    fn mended(&self, mut draft: Draft) -> Draft {
        for _ in 0..EntryId::all().count() {
            let mut wrong = Vec::new();
            if Case::check(&draft, &mut |error| wrong.push(error)).is_some() {
                return draft;
            }
            wrong.into_iter().for_each(|error| self.mend(&mut draft, error));
        }
        panic!("no valid draft in {self:?}");
    }

    fn mend(&self, draft: &mut Draft, error: Error) {
        let entry = error.entry;
        let mut clear = |entries: &[EntryId]| entries.iter().for_each(|entry| draft.clear(*entry));
        match error.wrong {
            Wrong::Missing | Wrong::Incomplete => self.enter(draft, entry),
            // of powers and radii that disagree, the powers stay
            Wrong::Disagree if [entries::R1.id(), entries::R2.id()].contains(&entry) => {
                clear(&[entries::R1.id(), entries::R2.id()]);
            }
            // with what goes with it, which would ask for it again
            Wrong::Twice => clear(&[entry, entries::CLOCK_SEEN.id(), entries::CENTROID_AXIS.id()]),
            // all of them, since one asks for another
            Wrong::NoLaser => clear(LASER),
            // a cornea at the end of its range, at an index that takes its radius over
            Wrong::Disagree | Wrong::NoCornea => clear(&[entry]),
            _ => panic!("{error:?}"),
        }
    }
}

/// Any seed.
pub(crate) fn seeds() -> impl Strategy<Value = Seed> {
    let fraction = prop_oneof![8 => 0.0..=1.0, 1 => Just(0.0), 1 => Just(1.0)];
    let made = (0.05..0.95).prop_flat_map(prop::bool::weighted);
    let each = prop::collection::vec((made, fraction), EntryId::all().count());
    (each, prop::bool::weighted(0.7), any::<bool>()).prop_map(|(entries, ordinary, typed)| Seed {
        entries,
        ordinary,
        typed,
    })
}
