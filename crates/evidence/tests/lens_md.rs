//! The tables of `crates/core/LENS.md` against the program and the traced eyes.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

use std::collections::BTreeMap;

use ocellus_card::id::CautionId;
use ocellus_core::decimal::{Sign, fixed};
use ocellus_core::optics::thick::working;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{LensCentre, LensIndex, LensPower, LensRadius, Vertex};
use ocellus_evidence::values::{self, Value};

const PAGE: &str = include_str!("../../core/LENS.md");
const RAYS: &str = include_str!("../oracles/real_rays.toml");

/// The number of the eye in an id like `traced-07-conic-real`, and the rest.
fn parts(value: &Value) -> (&str, &str) {
    value.id.strip_prefix("traced-").and_then(|rest| rest.split_once('-')).unwrap()
}

/// Each way of computing a traced eye, less the exact paraxial one.
fn differences() -> BTreeMap<&'static str, Vec<f64>> {
    let all = values::all().unwrap();
    let rays = values::parse(RAYS).unwrap();
    let mut rows: BTreeMap<&str, Vec<f64>> = BTreeMap::new();
    for exact in all.iter().filter(|value| value.id.starts_with("traced-")) {
        let (eye, _) = parts(exact);
        // the eyes of the grid; the last few are single ones with lenses of other shapes
        if eye.parse::<usize>().unwrap() > 54 {
            continue;
        }
        let number = |key| exact.number(key).unwrap();
        let radius = |key| LensRadius::from_mm(number(key)).unwrap();
        let centre = LensCentre::from_mm(number("thickness_mm")).unwrap();
        let index = LensIndex::new(number("lens_index")).unwrap();
        let lens = working(radius("front_radius_mm"), radius("back_radius_mm"), centre, index).unwrap();
        let power = LensPower::from_d(lens.power).unwrap();
        let left = |eye: ThinEye, vertex: f64| eye.refraction(power, Vertex::from_mm(vertex).unwrap()).unwrap().rx;
        let thin = |kc: f64, at: f64| left(ThinEye::new(number("retina_mm"), kc, at), 12.0);
        let planes = ThinEye::new(number("axial_length_mm"), number("corneal_power_d"), 0.0);
        let planes = lens.placed(planes, number("vertex_position_mm"));
        let (kc, front) = (number("corneal_power_d"), number("lens_mm"));
        let real = |of: &str| rays.iter().find(|value| parts(value) == (eye, of)).unwrap().numbers[0].value;
        let paraxial = exact.numbers[0].value;
        for (row, rx) in [
            ("thin, the lens in its principal planes", left(planes, number("vertex_mm"))),
            ("thin, the lens at its front vertex", thin(kc, front)),
            ("thin, the lens at its centre |", thin(kc, front + lens.t / 2.0)),
            ("thin, the lens at its back vertex", thin(kc, front + lens.t)),
            (
                "thin, the lens at its centre, K from 1.3375",
                thin(337.5 / number("cornea_front_mm"), front + lens.t / 2.0),
            ),
            ("real rays, 3 mm, cornea spherical", real("real")),
            ("real rays, 3 mm, corneal front Q -0.26", real("conic-real")),
        ] {
            rows.entry(row).or_default().push(rx - paraxial);
        }
    }
    rows
}

#[test]
fn thin_and_thick_and_real_differ_as_they_are_said_to() {
    let rows = differences();
    assert!(rows.len() == 7 && rows.values().all(|row| row.len() == 54), "{:?}", rows.values().map(Vec::len));
    for (way, mut left) in rows {
        left.sort_by(f64::total_cmp);
        let printed = |value: f64| fixed(value, 2, Sign::Always).unwrap();
        let median = f64::midpoint(left[26], left[27]);
        let expected = format!("| {} | {} | {} |", printed(left[0]), printed(median), printed(left[53]));
        let line = PAGE.lines().find(|line| line.starts_with(&format!("| {way}"))).unwrap_or_else(|| panic!("{way}"));
        assert!(line.ends_with(&expected), "{way}: {expected}\n{line}");
    }
}

#[test]
fn the_codes_named_are_codes() {
    let table = PAGE.split("## Thin lens").next().unwrap();
    let codes: Vec<&str> = table.split('`').skip(1).step_by(2).filter(|word| word.contains('_')).collect();
    let known = |code: &&str| CautionId::of_word(code).is_some();
    let unknown: Vec<_> = codes.iter().filter(|code| !known(code) && !code.contains('/')).collect();
    assert!(codes.len() > 15 && unknown.is_empty(), "{unknown:?}");
}
