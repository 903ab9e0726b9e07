//! The demonstration cases show what their README says they show.

use ocellus_cli::{card, case_file};
use ocellus_core::case::Case;
use ocellus_core::caution::{Caution, Code, Severity};
use ocellus_core::draft::Draft;
use ocellus_core::field::Field;
use ocellus_core::item::{Item, What};
use ocellus_core::lens::Method;
use ocellus_core::plan::plan;
use ocellus_core::sheet::Sheet;
use ocellus_core::sink::Sink;
use std::fs;
use std::path::PathBuf;

fn folder() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data"))
}

fn case(file: &str) -> Draft {
    let bytes = fs::read(folder().join(file)).expect("a demonstration file");
    case_file::case(file, &bytes, None).unwrap_or_else(|problems| panic!("{}", problems[0]))
}

/// Every case that a person is meant to plan, and what its card must say.
const CASES: &[(&str, &[Code])] = &[
    ("average.toml", &[]),
    ("long-toric.toml", &[Code::LongEye, Code::PosteriorIgnored, Code::LongOrVitrectomised]),
    ("short.toml", &[Code::ShortEye, Code::AlUnusual]),
    ("steep.toml", &[Code::DepartsFromT2, Code::KUnusual]),
    ("steep-long.toml", &[Code::Radicand]),
    ("after-laser.toml", &[Code::AfterLaser, Code::NoBudget]),
    ("second-lens.toml", &[Code::SecondVergence, Code::FirstLensHidden]),
    ("turned.toml", &[Code::TurnSense, Code::BackMeasured]),
    ("very-long.toml", &[Code::LengthAdjusted, Code::IntervalIf]),
    ("high-altitude.toml", &[Code::VacuumUnreachable]),
    ("both-right.toml", &[Code::Guttata]),
    ("both-left.toml", &[Code::Guttata]),
    ("minus.toml", &[Code::MinusPower, Code::PosteriorPolar, Code::Clamped, Code::RetinaTurned]),
];

/// A set-up of fluids without an eye: what its card must say, what it gives, and what it must not give.
struct SetUp {
    file: &'static str,
    codes: &'static [Code],
    given: &'static [What],
    absent: &'static [What],
}

const SET_UPS: &[SetUp] = &[
    SetUp {
        file: "fluids/altitude.toml",
        codes: &[Code::HeadStatic, Code::CeilingIdeal],
        given: &[What::Head, What::Siphon, What::MarginNucleus, What::MarginViscoelastic, What::ReachedTip],
        absent: &[What::MarginCortex, What::Chamber],
    },
    SetUp {
        file: "fluids/own-machine.toml",
        codes: &[Code::Illustration, Code::ComplianceEntered],
        given: &[What::FoundResistance, What::FoundLess, What::VacuumFollows, What::Hold, What::SurgeTrough],
        absent: &[What::ChamberFlow, What::SurgeCollapsed],
    },
    SetUp {
        file: "fluids/vacuum-pump.toml",
        codes: &[Code::LevelAssumed, Code::Illustration, Code::LeakUnknown],
        given: &[What::DensityUsed, What::SetColumn, What::SettingWanted, What::AirHeight, What::ChamberFlow],
        absent: &[What::Bottle, What::VacuumFollows],
    },
    SetUp {
        file: "fluids/needle.toml",
        codes: &[Code::BoreNominal, Code::Jet, Code::TubeShort],
        given: &[What::DropSecond, What::Drop, What::Plunger, What::VolumeTime, What::NeedleDropLeast],
        absent: &[What::FlowDriven, What::Head],
    },
    SetUp {
        file: "fluids/viscoelastic.toml",
        codes: &[Code::ZeroShear],
        given: &[What::Velocity, What::WallShear],
        absent: &[What::Reynolds, What::DropLaminar, What::Drop, What::NeedleDrop],
    },
    SetUp {
        file: "fluids/collapse.toml",
        codes: &[Code::Illustration, Code::ChamberCollapsed],
        given: &[What::Chamber, What::SurgeStart, What::SurgeCollapsed],
        absent: &[What::SurgeTrough, What::SurgeVolume, What::SurgeRecovered, What::SurgeSteady],
    },
];

#[derive(Default)]
struct Kept {
    items: Vec<Item>,
    cautions: Vec<Caution>,
}

impl Sink for Kept {
    fn item(&mut self, item: Item) {
        self.items.push(item);
    }

    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }
}

fn planned(file: &str) -> Kept {
    let mut kept = Kept::default();
    plan(&Case::try_from(&case(file)).unwrap(), &mut kept);
    kept
}

/// The files of a folder, as a list names them.
fn files(within: &str) -> Vec<String> {
    let mut files: Vec<String> = fs::read_dir(folder().join(within))
        .expect("demo-data")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.ends_with(".toml"))
        .map(|name| format!("{within}{name}"))
        .collect();
    files.sort();
    files
}

#[test]
fn the_lists_are_complete() {
    let readme = fs::read_to_string(folder().join("README.md")).expect("demo-data/README.md");
    let cases = CASES.iter().map(|(file, _)| *file).collect();
    let set_ups = SET_UPS.iter().map(|set_up| set_up.file).collect();
    for (within, mut listed) in [("", cases), ("fluids/", set_ups)] as [(&str, Vec<&str>); 2] {
        listed.sort();
        assert_eq!(files(within), listed);
        assert!(listed.iter().all(|file| readme.contains(&format!("`{file}`"))));
    }
}

#[test]
fn each_case_shows_what_it_is_for() {
    for (file, codes) in CASES {
        let kept = planned(file);
        for code in *codes {
            assert!(kept.cautions.iter().any(|c| c.code == *code), "{file} does not say {}", code.word());
        }
    }
}

/// What a set-up is for stands on its card, what cannot be known does not, and no entry of it is idle.
#[test]
fn each_set_up_shows_what_it_is_for() {
    for SetUp { file, codes, given, absent } in SET_UPS {
        let draft = case(file);
        let sheet = Sheet::check(&draft, &mut |error| panic!("{file}: {error:?}")).unwrap();
        assert!(matches!(sheet, Sheet::Bench(_)), "{file}");
        let mut kept = Kept::default();
        sheet.plan(&mut kept);
        let says = |code| kept.cautions.iter().any(|caution| caution.code == code);
        let gives = |what| kept.items.iter().any(|item| item.what == what);
        for code in *codes {
            assert!(says(*code), "{file} does not say {}", code.word());
        }
        assert!(!says(Code::Unused), "{file}");
        for what in *given {
            assert!(gives(*what), "{file} does not give {}", what.key());
        }
        for what in *absent {
            assert!(!gives(*what), "{file} gives {}", what.key());
        }
    }
}

/// A refusal leaves no lens number behind, and everything else stands.
#[test]
fn a_refused_eye_has_a_card_without_lens_numbers() {
    let mut draft = case("average.toml");
    draft.enter(Field::PreviousSurgery, "radial_cuts").unwrap();
    let mut kept = Kept::default();
    plan(&Case::try_from(&draft).unwrap(), &mut kept);
    assert!(kept.items.iter().all(|item| item.method.is_none()));
    assert!(kept.items.iter().any(|item| item.what == What::Head));
    assert!(kept.items.iter().any(|item| item.what == What::RhexisTrue));
}

#[test]
fn srkt_leaves_the_spread_where_it_departs_and_the_card_where_it_has_no_answer() {
    let of = |kept: &Kept, what| {
        kept.items.iter().find(|i| i.what == what && i.method == Some(Method::Srkt)).map(|i| i.value)
    };
    let (steep, refused) = (planned("steep.toml"), planned("steep-long.toml"));
    assert_eq!((of(&steep, What::Compared), of(&steep, What::Guided)), (Some(0.0), Some(0.0)));
    assert_eq!(of(&refused, What::ExactPower), None);
    assert_eq!(of(&refused, What::LadderRefraction), None);
}

/// A wrong file that reads well: every check that should notice it does.
#[test]
fn a_swapped_printout_is_noticed() {
    let kept = planned("mistakes/swapped.toml");
    for code in [
        Code::FellowIdentical,
        Code::SpectaclesDisagree,
        Code::AxesCrossed,
        Code::BiometryOld,
        Code::TargetUnusual,
        Code::FarFromTarget,
        Code::LensModelMissing,
    ] {
        assert!(kept.cautions.iter().any(|c| c.code == code), "{}", code.word());
    }
}

#[test]
fn every_mistake_is_named_at_once() {
    let bytes = fs::read(folder().join("mistakes/everything.toml")).expect("a demonstration file");
    let problems = case_file::case("everything.toml", &bytes, None).expect_err("a file full of mistakes");
    assert!(problems.len() >= 15, "only {}", problems.len());
}

#[test]
fn a_card_fits_80_columns_and_says_whose_it_is() {
    let cases = CASES.iter().map(|(file, codes)| (*file, *codes, " EYE   theatre card"));
    let set_ups = SET_UPS.iter().map(|set_up| (set_up.file, set_up.codes, "SET-UP OF FLUIDS, WITHOUT AN EYE"));
    for (file, codes, whose) in cases.chain(set_ups) {
        let mut text = Vec::new();
        let refused =
            card::print(&Sheet::check(&case(file), &mut |_| {}).unwrap(), None, false, &mut text).expect("memory");
        let text = String::from_utf8(text).expect("text");
        let wide = text.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{file}");
        assert_eq!(refused, codes.iter().any(|code| code.severity() == Severity::Refuse), "{file}");
        assert!(text.contains("Not a medical device") && text.contains(whose), "{file}");
        assert!(!text.contains("NaN") && !text.contains("inf ") && !text.contains("not printable"), "{file}");
    }
}
