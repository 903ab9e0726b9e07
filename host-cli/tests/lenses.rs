//! A list of lens models, `--lenses`.

mod ocellus;
use ocellus::{Done, Folder, GOOD, problems};
use serde_json::Value;

const LENSES: &str = r#"[[lens]]
lens_model = "Test Lens"
a_constant = 118.90
surgeon_factor = 1.760
lens_style = "one_piece"

[[lens]]
lens_model = "Other Lens"
a_constant = 118.20
lens_style = "three_piece"
"#;

fn plan(case: &str, lenses: &str) -> Done {
    let folder = Folder::new().with("case.toml", case).with("lenses.toml", lenses);
    folder.run(&["plan", "case.toml", "--lenses", "lenses.toml", "--json"], "")
}

fn refused(case: &str, lenses: &str) -> String {
    let done = plan(case, lenses);
    assert_eq!((done.code, done.out.as_str()), (2, ""), "{}", done.err);
    let problems = problems(&done.err);
    assert_eq!(problems.len(), 1, "{problems:#?}");
    problems[0].clone()
}

#[test]
fn what_the_case_leaves_out_is_filled_in() {
    let case = GOOD.replace("a_constant = 118.90\n", "")
        + "[backup]\nbackup_model = \"Other Lens\"\nbackup_place = \"sulcus\"\n";
    let done = plan(&case, LENSES);
    assert_eq!((done.code, done.err.as_str()), (0, ""));
    let card: Value = serde_json::from_str(&done.out).unwrap();
    assert_eq!(card["case"]["a_constant"], 118.9);
    assert_eq!(card["case"]["surgeon_factor"], 1.76);
    assert_eq!(card["case"]["lens_style"], "one_piece");
    assert_eq!(card["case"]["backup_a_constant"], 118.2);
    assert_eq!(card["case"]["backup_style"], "three_piece");
}

#[test]
fn filled_in_is_the_same_as_typed() {
    let typed = GOOD.replace("118.90\n", "118.90\nsurgeon_factor = 1.760\nlens_style = \"one_piece\"\n");
    assert_eq!(plan(GOOD, LENSES).out, plan(&typed, LENSES).out);
    assert_ne!(plan(GOOD, LENSES).out, Folder::new().with("c", GOOD).run(&["plan", "c", "--json"], "").out);
}

#[test]
fn a_value_that_differs_is_reported_with_both() {
    let problem = refused(&GOOD.replace("118.90", "118.40"), LENSES);
    assert_eq!(
        problem,
        "case.toml:22: a_constant = 118.40: the case has 118.40, the list of lenses 118.90 (lenses.toml:3)\n    \
         accepted: the same value, or no a_constant in the case"
    );
}

#[test]
fn a_value_that_cannot_be_read_is_reported_once() {
    let problem = refused(&GOOD.replace("118.90", "118,90"), LENSES);
    assert!(problem.starts_with("case.toml:22: a_constant = 118,90: a comma"), "{problem}");
}

#[test]
fn an_unknown_model_is_reported_with_its_neighbour() {
    let problem = refused(&GOOD.replace("Test Lens", "Tset Lens"), LENSES);
    assert!(
        problem.starts_with("case.toml:21: lens_model = \"Tset Lens\": no lens of lenses.toml has this model"),
        "{problem}"
    );
    assert!(problem.contains("accepted: perhaps \"Test Lens\""), "{problem}");
    let problem = refused(&GOOD.replace("Test Lens", "qqqqqqqqqqqqq"), LENSES);
    assert!(problem.contains("accepted: \"Test Lens\", \"Other Lens\""), "{problem}");
    let backup = "[backup]\nbackup_model = \"Othr Lens\"\nbackup_a_constant = 118.20\nbackup_place = \"sulcus\"\n";
    let problem = refused(&format!("{GOOD}{backup}"), LENSES);
    assert!(
        problem.contains("backup_model = \"Othr Lens\"") && problem.contains("perhaps \"Other Lens\""),
        "{problem}"
    );
}

#[test]
fn mistakes_of_the_list() {
    for (line, typed, said, accepted) in [
        ("118.20", "118,20", "lenses.toml:9: a_constant = 118,20: a comma", "100 to 130"),
        ("118.20", "218.20", "lenses.toml:9: a_constant = 218.20: outside the range", "100 to 130"),
        (
            "Other Lens",
            "Test Lens",
            "lenses.toml:8: lens_model = \"Test Lens\": given twice; first on line 2",
            "each model once",
        ),
        (
            "lens_model = \"Other Lens\"\n",
            "",
            "lenses.toml:7: lens_model: a lens without a model",
            "lens_model = \"NAME\"",
        ),
        (
            "a_constant = 118.20",
            "a_const = 118.20",
            "lenses.toml:9: a_const = 118.20: no entry of a lens model",
            "a_constant",
        ),
        (
            "a_constant = 118.20",
            "iol_power_d = 21.50",
            "lenses.toml:9: iol_power_d = 21.50: an entry of the case",
            "in the case file",
        ),
        (
            "a_constant = 118.20",
            "a_constant = 118.20\na_constant = 118.30",
            "lenses.toml:10: a_constant = 118.30: given twice; first on line 9",
            "once",
        ),
        (
            "[[lens]]\nlens_model = \"Test",
            "[[lense]]\nlens_model = \"Test",
            "lenses.toml:1: [[lense]]: a list of lenses holds nothing else",
            "[[lens]]",
        ),
    ] {
        let problem = refused(GOOD, &LENSES.replacen(line, typed, 1));
        assert!(problem.starts_with(said), "{problem}");
        assert!(problem.contains(accepted), "{problem}");
    }
    let problem = refused(GOOD, "[lens]\nlens_model = \"Test Lens\"\n");
    assert!(problem.starts_with("lenses.toml:1: [lens]: a list of lenses holds nothing else"), "{problem}");
    let problem = refused(GOOD, "");
    assert!(problem.starts_with("lenses.toml: the file is empty"), "{problem}");
    let problem = refused(GOOD, "# none\n");
    assert!(problem.starts_with("lenses.toml: no lens in this list"), "{problem}");
}

#[test]
fn a_wrong_pair_from_the_list_is_reported_at_its_place_there() {
    let lenses = LENSES.replacen("lens_style", "lens_least_d = 10.00\nlens_most_d = 5.00\nlens_style", 1);
    let problem = refused(GOOD, &lenses);
    assert!(problem.starts_with("lenses.toml:6: lens_most_d = 5.00: does not agree"), "{problem}");
}
