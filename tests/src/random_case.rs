//! Valid cases and set-ups of any kind, drawn at random, the same ones each time.

use ocellus_core::bench::Bench;
use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::error::{Code, Error};
use ocellus_core::field::{Field, Kind, Section};
use ocellus_core::name::Name;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// Entries as fractions of what a field accepts, and whether each was entered.
#[derive(Clone, Debug)]
pub struct Seed {
    entries: Vec<(bool, f64)>,
    ordinary: bool,
}

/// Where most eyes and set-ups lie; in an ordinary seed these take the place of the full range, so that most methods
/// answer and most chambers hold.
const ORDINARY: &[(Field, f64, f64)] = &[
    (Field::AxialLength, 20.0, 28.0),
    (Field::K1, 40.0, 47.0),
    (Field::K2, 40.0, 47.0),
    (Field::R1, 7.2, 8.4),
    (Field::R2, 7.2, 8.4),
    (Field::AConstant, 117.0, 120.0),
    (Field::SurgeonFactor, 1.0, 2.5),
    (Field::Pacd, 4.5, 6.0),
    (Field::HaigisA0, -2.0, 2.0),
    (Field::HaigisA1, 0.1, 0.5),
    (Field::HaigisA2, 0.05, 0.25),
    (Field::LensPower, 10.0, 28.0),
    (Field::Target, -3.0, 1.0),
    (Field::LensCylinder, 0.0, 6.0),
    (Field::LensLeast, -10.0, 10.0),
    (Field::LensMost, 20.0, 35.0),
    (Field::OpenLevel, 60.0, 130.0),
    (Field::EyeLevel, -20.0, 30.0),
    (Field::SetPressure, 30.0, 100.0),
    (Field::AssumedLevel, -20.0, 30.0),
    (Field::Aspiration, 0.0, 60.0),
    (Field::InfusionResistance, 0.05, 1.0),
    (Field::AspirationResistance, 2.0, 10.0),
    (Field::Leak, 0.0, 20.0),
    (Field::ReadingFlow1, 0.0, 30.0),
    (Field::ReadingPressure1, 40.0, 90.0),
    (Field::ReadingFlow2, 30.0, 60.0),
    (Field::ReadingPressure2, 20.0, 60.0),
    (Field::EyeCompliance, 0.2, 5.0),
    (Field::TubingCompliance, 0.02, 0.2),
    (Field::SurgeStep, 0.005, 2.0),
];

/// Drawn as whole numbers, since the table of needles knows no other and half a tube is none.
const WHOLE: &[Field] = &[Field::Gauge, Field::SideBySide];

/// Most eyes had no operation, hold their own lens, and were measured by a keratometer; all others are refused.
const MOSTLY_FIRST: &[Field] = &[Field::KKind, Field::EyeState, Field::PreviousSurgery];

/// What only an eye after laser has.
const LASER: &[Field] =
    &[Field::KBefore, Field::RefractionBefore, Field::RefractionAfter, Field::KAfter, Field::KAfterFrom];

/// What a surge takes besides the levels: so many entries are seldom drawn together.
const SURGE: &[Field] = &[
    Field::EyeLevel,
    Field::PumpKind,
    Field::Aspiration,
    Field::VacuumNucleus,
    Field::InfusionResistance,
    Field::AspirationResistance,
    Field::TubingCompliance,
];

impl Seed {
    fn enter(&self, draft: &mut Draft, field: Field) {
        let drawn = self.entries[field as usize].1;
        let fraction = if MOSTLY_FIRST.contains(&field) { (drawn - 0.8).max(0.0) / 0.2 } else { drawn };
        let pick = |count: usize| ((fraction * count as f64) as usize).min(count - 1);
        match field.kind() {
            Kind::Number(_, bounds) => {
                let narrow = ORDINARY.iter().find(|(narrowed, ..)| self.ordinary && *narrowed == field);
                let (least, most) = narrow.map_or((bounds.min, bounds.max), |(_, least, most)| (*least, *most));
                let drawn = (least + fraction * (most - least)).clamp(bounds.min, bounds.max);
                draft.set(field, if WHOLE.contains(&field) { f64::from(drawn as u8) } else { drawn });
            }
            Kind::Choice(words) => draft.set(field, pick(words.len()) as f64),
            Kind::Date => draft.set(field, 20_260_101.0 + pick(28) as f64),
            Kind::Name => draft.set_name(field, Name::parse("Demo").expect("a name")).expect("a field that is a name"),
        }
    }

    /// A valid draft of an eye: what is missing is entered, what contradicts another entry is taken back.
    pub fn draft(&self) -> Draft {
        self.mended(&|field| self.drawn(field), |draft, report| Case::check(draft, report).is_some())
    }

    /// The same of a set-up without an eye, which has one entry at the least; with the compliance of an eye there is
    /// all that a surge takes.
    pub fn set_up(&self) -> Draft {
        let of_fluids = |field: Field| matches!(field.section(), Section::Pressure | Section::Flow | Section::Tube);
        let surge = |field: Field| self.drawn(Field::EyeCompliance) && SURGE.contains(&field);
        let entered = |field: Field| of_fluids(field) && (self.drawn(field) || surge(field));
        let mut draft = self.mended(&entered, |draft, report| Bench::check(draft, report).is_some());
        if !Bench::alone(&draft) {
            self.enter(&mut draft, Field::Altitude);
        }
        draft
    }

    fn drawn(&self, field: Field) -> bool {
        self.entries[field as usize].0
    }

    fn mended(&self, entered: &dyn Fn(Field) -> bool, passes: fn(&Draft, &mut dyn FnMut(Error)) -> bool) -> Draft {
        let mut draft = Draft::default();
        for &field in Field::ALL.iter().filter(|field| entered(**field)) {
            self.enter(&mut draft, field);
        }
        for _ in 0..Field::COUNT {
            let mut wrong = Vec::new();
            if passes(&draft, &mut |error| wrong.push(error)) {
                return draft;
            }
            for error in wrong {
                match (error.code, error.field.expect("the door names the field")) {
                    (Code::Missing | Code::Incomplete, field) => self.enter(&mut draft, field),
                    // of powers and radii that disagree, the powers stay
                    (Code::Disagree, Field::R1 | Field::R2) => {
                        for field in [Field::R1, Field::R2] {
                            draft.clear(field);
                        }
                    }
                    (Code::Disagree, field) => draft.clear(field),
                    // with what goes with it, which would ask for it again
                    (Code::Twice, field) => {
                        for with in [field, Field::ClockSeen, Field::CentroidAxis] {
                            draft.clear(with);
                        }
                    }
                    // all of them, since one asks for another
                    (Code::NoLaser, _) => LASER.iter().for_each(|field| draft.clear(*field)),
                    // a cornea at the end of its range, at an index that takes its radius over
                    (Code::NoCornea, field) => draft.clear(field),
                    _ => panic!("{error:?}"),
                }
            }
        }
        panic!("no valid draft in {self:?}");
    }
}

/// Any seed.
pub fn seeds() -> impl Strategy<Value = Seed> {
    let fraction = prop_oneof![8 => 0.0..=1.0, 1 => Just(0.0), 1 => Just(1.0)];
    let entered = (0.05..0.95).prop_flat_map(prop::bool::weighted);
    (prop::collection::vec((entered, fraction), Field::COUNT), prop::bool::weighted(0.7))
        .prop_map(|(entries, ordinary)| Seed { entries, ordinary })
}

/// Cases without end, the same ones each time.
pub fn drafts() -> impl Iterator<Item = Draft> {
    let (mut runner, seeds) = (TestRunner::deterministic(), seeds());
    std::iter::repeat_with(move || {
        let tree = seeds.new_tree(&mut runner).expect("a seed is never refused");
        tree.current().draft()
    })
}
