//! `ocellus plan --json`: the same 64 bits as the core's own.

mod ocellus;
use ocellus::{Folder, GOOD, demo_cases};
use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::item::Item;
use ocellus_card::readback;
use ocellus_card::sink::Sink;
use ocellus_cli::case_file;
use ocellus_core::working::Steps;
use serde_json::Value;
use std::collections::BTreeSet;

#[derive(Default)]
struct Collected {
    items: Vec<Item>,
    cautions: Vec<Caution>,
}

impl Steps for Collected {}

impl Sink for Collected {
    fn item(&mut self, item: Item) {
        self.items.push(item);
    }

    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }
}

fn json(path: &str) -> (i32, Value) {
    let done = Folder::new().run(&["plan", path, "--json"], "");
    (done.code, serde_json::from_str(&done.out).unwrap())
}

#[test]
fn every_number_reads_back_as_the_same_bits() {
    for path in demo_cases() {
        let path = path.to_str().unwrap();
        let draft = case_file::case(path, &std::fs::read(path).unwrap(), None).unwrap();
        let case = Case::try_from(&draft).unwrap();
        let mut collected = Collected::default();
        case.plan(&mut collected);
        let (_, card) = json(path);
        let items = card["items"].as_array().unwrap();
        assert_eq!(items.len(), collected.items.len(), "{path}");
        for (printed, item) in items.iter().zip(&collected.items) {
            assert_eq!(printed["value"].as_f64().unwrap().to_bits(), item.value.to_bits(), "{path}: {printed}");
            assert!(printed["id"].as_str().unwrap().ends_with(&item.what.key().to_string()));
            assert_eq!(printed["unit"], item.what.unit());
            assert_eq!(printed["row"], item.row);
        }
        let codes: Vec<String> = collected.cautions.iter().map(|caution| caution.code.word().to_string()).collect();
        let printed = card["cautions"].as_array().unwrap();
        assert_eq!(printed.iter().map(|caution| caution["code"].as_str().unwrap()).collect::<Vec<_>>(), codes);
        assert_eq!(card["readback"], readback::of(&case, None).unwrap().as_str());
    }
}

#[test]
fn an_item_is_reported_by_its_id_and_row() {
    for path in demo_cases() {
        let (_, card) = json(path.to_str().unwrap());
        let mut seen = BTreeSet::new();
        for item in card["items"].as_array().unwrap() {
            assert!(seen.insert(format!("{} {}", item["id"], item["row"])), "{}: {item}", path.display());
        }
    }
}

#[test]
fn a_refusal_ends_with_1() {
    for path in demo_cases() {
        let path = path.to_str().unwrap();
        let (code, card) = json(path);
        let refused = card["cautions"].as_array().unwrap().iter().any(|caution| caution["severity"] == "refused");
        assert_eq!(code, i32::from(refused), "{path}");
        assert_eq!(Folder::new().run(&["plan", path], "").code, code, "{path}");
    }
    // after laser the ordinary methods stay refused, and the card has others
    let (code, card) = json(concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data/after-laser.toml"));
    assert_eq!(code, 0);
    let has = |id: &str| card["items"].as_array().unwrap().iter().any(|item| item["id"] == id);
    assert!(!has("srkt_power_d") && !has("haigis_power_d") && has("double_srkt_power_d") && has("shammas_pl_power_d"));
}

#[test]
fn entries_keep_their_kind_and_defaults_are_apart() {
    let done = Folder::new().with("case.toml", GOOD).run(&["plan", "case.toml", "--json"], "");
    let card: Value = serde_json::from_str(&done.out).unwrap();
    assert_eq!(card["case"]["axial_length_mm"], 23.46);
    assert_eq!(card["case"]["eye"], "right");
    assert_eq!(card["case"]["surgery_date"], "2026-12-01");
    assert_eq!(card["case"]["lens_model"], "Test Lens");
    assert_eq!(card["case"].as_object().unwrap().len(), 19);
    assert_eq!(card["defaults"]["vertex_mm"], 12.0);
    assert_eq!(card["defaults"]["keratometric_index"], 1.3375);
    assert!(card["case"].get("vertex_mm").is_none());
    let keys: Vec<&str> = card["sign_off"].as_array().unwrap().iter().map(|l| l["id"].as_str().unwrap()).collect();
    assert!(keys.contains(&"side") && keys.contains(&"read_back") && !keys.contains(&"marks"));
}
