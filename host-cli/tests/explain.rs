//! `ocellus explain`: the working on paper.

mod ocellus;
use ocellus::{Folder, GOOD, demo_cases};
use ocellus_card::Subject;
use serde_json::Value;

fn explain(subject: &str, case: &str) -> (i32, String) {
    let done = Folder::new().with("case.toml", case).run(&["explain", subject, "case.toml"], "");
    assert_eq!(done.err, "");
    (done.code, done.out)
}

/// The value printed for a symbol, from the digits on the page.
fn value(page: &str, symbol: &str) -> f64 {
    let start = format!("  {symbol} = ");
    let line = page.lines().find(|line| line.starts_with(&start) && !line.starts_with("   ")).unwrap();
    line[start.len()..].split(' ').next().unwrap().parse().unwrap()
}

#[test]
fn equation_constants_source_and_mark_are_there() {
    let (code, page) = explain("srkt", GOOD);
    assert_eq!(code, 0);
    for part in [
        "SRK/T\n",
        "axial_length_mm          23.46 mm       axial length",
        "vertex distance; not entered, usual",
        "Cw = -5.41 + 0.58412 LCOR + 0.098 K",
        "SRK/T Cw slope on LCOR = 0.58412 [memory, source 5]",
        "P = X2 - X1",
        "   5  Retzlaff, Sanders, Kraff, J Cataract Refract Surg 1990;16:",
    ] {
        assert!(page.contains(part), "{part}\n{page}");
    }
}

/// A student has the page and nothing else.
#[test]
fn the_page_is_enough_to_do_it_again() {
    let (_, page) = explain("srkt", GOOD);
    let of = |symbol| value(&page, symbol);
    let near = |a: f64, b: f64| assert!((a - b).abs() < 2e-6, "{a} {b}\n{page}");
    near(of("Cw"), -5.41 + 0.58412 * of("LCOR") + 0.098 * of("K"));
    near(of("q"), of("r") * of("r") - of("Cw") * of("Cw") / 4.0);
    near((of("r") - of("H")) * (of("r") - of("H")), of("q"));
    near(of("ELP"), of("H") + 0.62467 * of("A") - 68.747 - 3.336);
    near(of("P"), of("X2") - of("X1"));
    near(of("X2"), 1336.0 / (of("LOPT") - of("d")));
}

#[test]
fn every_subject_of_every_case_fits_the_screen() {
    for path in demo_cases() {
        for subject in Subject::all() {
            let done = Folder::new().run(&["explain", &subject.key().to_string(), path.to_str().unwrap()], "");
            assert!(done.code <= 1 && done.err.is_empty(), "{}: {}", path.display(), done.err);
            let wide = done.out.lines().find(|line| line.chars().count() > 80);
            assert_eq!(wide, None, "{} {}", subject.key(), path.display());
        }
    }
}

#[test]
fn what_is_missing_is_said() {
    let (code, page) = explain("head", GOOD);
    assert_eq!(code, 1);
    assert!(page.contains("Pressure of the column: not computed"), "{page}");
    assert!(page.contains("  open_level_cm ") && page.contains("(in [pressure])"), "{page}");
    let (code, page) = explain("haigis", &GOOD.replace("acd_mm = 3.12\nacd_from = \"epithelium\"\n", ""));
    assert_eq!(code, 1);
    assert!(
        page.contains("Enter the anterior chamber depth: this method needs it.") && page.contains("  acd_mm "),
        "{page}"
    );
}

#[test]
fn a_refused_eye_has_no_steps() {
    let (code, page) = explain("srkt", &GOOD.replace("\"none\"", "\"myopic_laser\""));
    assert_eq!(code, 1);
    assert!(page.contains("REFUSED  No lens is computed: after corneal surgery") && !page.contains("P = "), "{page}");
}

#[test]
fn an_unknown_subject_is_reported_with_the_known() {
    let done = Folder::new().with("case.toml", GOOD).run(&["explain", "srkk", "case.toml"], "");
    assert_eq!((done.code, done.out.as_str()), (2, ""));
    assert!(done.err.contains("'srkk'"), "{}", done.err);
    assert!(Subject::all().all(|subject| done.err.contains(&subject.key().to_string())), "{}", done.err);
}

#[test]
fn json_has_the_same_steps_unrounded() {
    let done = Folder::new().with("case.toml", GOOD).run(&["explain", "srkt", "case.toml", "--json"], "");
    assert_eq!(done.code, 0);
    let working: Value = serde_json::from_str(&done.out).unwrap();
    let steps = working["steps"].as_array().unwrap();
    let of = |heading: &str, symbol: &str| {
        steps.iter().find(|step| step["heading"] == heading && step["symbol"] == symbol).unwrap().clone()
    };
    let cw = of("The eye as this method sees it", "Cw");
    assert_eq!((&cw["unit"], &cw["mark"]), (&Value::from("mm"), &Value::from("memory")));
    assert_eq!(cw["constants"][1]["digits"], "0.58412");
    let number = |step: Value| step["value"].as_f64().unwrap();
    let of_power = |symbol| number(of("The lens for the refraction wanted", symbol));
    let (x2, x1, p) = (of_power("X2"), of_power("X1"), of_power("P"));
    assert_eq!((x2 - x1).to_bits(), p.to_bits());
    assert_eq!(of("The refraction with the lens chosen", "P")["value"], 21.5);
}
