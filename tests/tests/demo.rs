//! The demonstration cases show what their README says they show.

use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::draft::Draft;
use ocellus_card::id::{CautionId, ItemId};
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_card::{cautions, entries, items};
use ocellus_cli::{card, case_file};
use ocellus_console::Wanted;
use ocellus_core::lens::method::Method;
use ocellus_core::working::Steps;
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
const CASES: &[(&str, &[CautionId])] = &[
    ("average.toml", &[]),
    ("long-toric.toml", &[cautions::LONG_EYE, cautions::POSTERIOR_IGNORED, cautions::LONG_OR_VITRECTOMISED]),
    ("short.toml", &[cautions::SHORT_EYE, cautions::AL_UNUSUAL]),
    ("steep.toml", &[cautions::DEPARTS_FROM_T2, cautions::K_UNUSUAL]),
    ("steep-long.toml", &[cautions::RADICAND]),
    ("after-laser.toml", &[cautions::AFTER_LASER, cautions::NO_BUDGET]),
    ("second-lens.toml", &[cautions::SECOND_VERGENCE, cautions::FIRST_LENS_HIDDEN]),
    ("turned.toml", &[cautions::TURN_SENSE, cautions::BACK_MEASURED]),
    ("very-long.toml", &[cautions::LENGTH_ADJUSTED, cautions::INTERVAL_IF]),
    ("high-altitude.toml", &[cautions::VACUUM_UNREACHABLE]),
    ("both-right.toml", &[cautions::GUTTATA]),
    ("both-left.toml", &[cautions::GUTTATA]),
    ("minus.toml", &[cautions::MINUS_POWER, cautions::POSTERIOR_POLAR, cautions::CLAMPED, cautions::RETINA_TURNED]),
];

/// A set-up of fluids without an eye: what its card must say, what it gives, and what it must not give.
struct SetUp {
    file: &'static str,
    codes: &'static [CautionId],
    given: &'static [ItemId],
    absent: &'static [ItemId],
}

const SET_UPS: &[SetUp] = &[
    SetUp {
        file: "fluids/altitude.toml",
        codes: &[cautions::HEAD_STATIC, cautions::CEILING_IDEAL],
        given: &[items::HEAD, items::SIPHON, items::MARGIN_NUCLEUS, items::MARGIN_VISCOELASTIC, items::REACHED_TIP],
        absent: &[items::MARGIN_CORTEX, items::CHAMBER],
    },
    SetUp {
        file: "fluids/own-machine.toml",
        codes: &[cautions::ILLUSTRATION, cautions::COMPLIANCE_ENTERED],
        given: &[items::FOUND_RESISTANCE, items::FOUND_LESS, items::VACUUM_FOLLOWS, items::HOLD, items::SURGE_TROUGH],
        absent: &[items::CHAMBER_FLOW, items::SURGE_COLLAPSED],
    },
    SetUp {
        file: "fluids/vacuum-pump.toml",
        codes: &[cautions::LEVEL_ASSUMED, cautions::ILLUSTRATION, cautions::LEAK_UNKNOWN],
        given: &[items::DENSITY_USED, items::SET_COLUMN, items::SETTING_WANTED, items::AIR_HEIGHT, items::CHAMBER_FLOW],
        absent: &[items::BOTTLE, items::VACUUM_FOLLOWS],
    },
    SetUp {
        file: "fluids/needle.toml",
        codes: &[cautions::BORE_NOMINAL, cautions::JET, cautions::TUBE_SHORT],
        given: &[items::DROP_SECOND, items::DROP, items::PLUNGER, items::VOLUME_TIME, items::NEEDLE_DROP_LEAST],
        absent: &[items::FLOW_DRIVEN, items::HEAD],
    },
    SetUp {
        file: "fluids/viscoelastic.toml",
        codes: &[cautions::ZERO_SHEAR],
        given: &[items::VELOCITY, items::WALL_SHEAR],
        absent: &[items::REYNOLDS, items::DROP_LAMINAR, items::DROP, items::NEEDLE_DROP],
    },
    SetUp {
        file: "fluids/collapse.toml",
        codes: &[cautions::ILLUSTRATION, cautions::CHAMBER_COLLAPSED],
        given: &[items::CHAMBER, items::SURGE_START, items::SURGE_COLLAPSED],
        absent: &[items::SURGE_TROUGH, items::SURGE_VOLUME, items::SURGE_RECOVERED, items::SURGE_STEADY],
    },
];

#[derive(Default)]
struct Planned {
    items: Vec<Item>,
    cautions: Vec<Caution>,
}

impl Steps for Planned {}

impl Sink for Planned {
    fn item(&mut self, item: Item) {
        self.items.push(item);
    }

    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }
}

fn planned(file: &str) -> Planned {
    let mut kept = Planned::default();
    Case::try_from(&case(file)).unwrap().plan(&mut kept);
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
        let set_up = Case::check(&draft, &mut |error| panic!("{file}: {error:?}")).unwrap();
        assert!(!set_up.has_eye(), "{file}");
        let mut kept = Planned::default();
        set_up.plan(&mut kept);
        let says = |code| kept.cautions.iter().any(|caution| caution.code == code);
        let gives = |what| kept.items.iter().any(|item| item.what == what);
        for code in *codes {
            assert!(says(*code), "{file} does not say {}", code.word());
        }
        assert!(!says(cautions::UNUSED), "{file}");
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
    draft.enter(entries::PREVIOUS_SURGERY, "radial_cuts").unwrap();
    let mut kept = Planned::default();
    Case::try_from(&draft).unwrap().plan(&mut kept);
    assert!(kept.items.iter().all(|item| item.method.is_none()));
    assert!(kept.items.iter().any(|item| item.what == items::HEAD));
    assert!(kept.items.iter().any(|item| item.what == items::RHEXIS_TRUE));
}

#[test]
fn srkt_leaves_the_spread_where_it_departs_and_the_card_where_it_has_no_answer() {
    let of = |kept: &Planned, what| {
        kept.items.iter().find(|i| i.what == what && i.method == Some(Method::Srkt)).map(|i| i.value)
    };
    let (steep, refused) = (planned("steep.toml"), planned("steep-long.toml"));
    assert_eq!((of(&steep, items::COMPARED), of(&steep, items::GUIDED)), (Some(0.0), Some(0.0)));
    assert_eq!(of(&refused, items::EXACT_POWER), None);
    assert_eq!(of(&refused, items::LADDER_REFRACTION), None);
}

/// A wrong file that reads well: every check that should notice it does.
#[test]
fn a_swapped_printout_is_noticed() {
    let kept = planned("mistakes/swapped.toml");
    for code in [
        cautions::FELLOW_IDENTICAL,
        cautions::SPECTACLES_DISAGREE,
        cautions::AXES_CROSSED,
        cautions::BIOMETRY_OLD,
        cautions::TARGET_UNUSUAL,
        cautions::FAR_FROM_TARGET,
        cautions::LENS_MODEL_MISSING,
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
    let cases = CASES.iter().map(|(file, codes)| (*file, *codes, " EYE   demo "));
    let set_ups = SET_UPS.iter().map(|set_up| (set_up.file, set_up.codes, "SET-UP OF FLUIDS, WITHOUT AN EYE"));
    for (file, codes, whose) in cases.chain(set_ups) {
        let (draft, mut text) = (case(file), Vec::new());
        let case = Case::try_from(&draft).unwrap();
        let refused =
            card::print(Wanted::All, &draft, &|sink| case.plan(sink), None, false, &mut text).expect("memory");
        let text = String::from_utf8(text).expect("text");
        let wide = text.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{file}");
        assert_eq!(refused, codes.iter().any(|code| code.severity() == Severity::Refuse), "{file}");
        assert!(text.contains("Not a medical device") && text.lines().next().unwrap().contains(whose), "{file}");
        assert!(!text.contains("NaN") && !text.contains("inf ") && !text.contains("too large to print"), "{file}");
    }
}
