//! `ocellus group` as it is run.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it stands")]

mod ocellus;

use ocellus::Folder;

const EYES: &str = "id,eye,astigmatism_d,steep_axis_deg\na,right,0.50,90\nb,left,0.30,80\nc,right,0.40,100\n\
                    d,left,0.20,95\n";

fn run(table: &str, arguments: &[&str]) -> ocellus::Done {
    let all: Vec<&str> = ["group", "eyes.csv"].iter().chain(arguments).copied().collect();
    Folder::new().with("eyes.csv", table).run(&all, "")
}

#[test]
fn a_group_is_shown_with_what_to_enter_and_what_not() {
    let demo = include_str!("../../demo-data/group/incisions.csv");
    let done = run(demo, &[]);
    assert_eq!(done.code, 0, "{}", done.err);
    for said in [
        "24",
        "centroid, size                           0.26 D",
        "93 deg",
        "Hotelling",
        "no vector: do not enter it",
        "--mirror-left",
    ] {
        assert!(done.out.contains(said), "{said}\n{}", done.out);
    }
    assert!(done.out.contains("sia_centroid_d = 0.26, sia_centroid_axis_deg = 93."));
    assert!(done.out.lines().all(|line| line.len() <= 80), "{}", done.out);
}

/// A left eye's oblique part changes its sign, and nothing else does.
#[test]
fn left_eyes_can_be_mirrored() {
    let points = |arguments: &[&str]| {
        let done = run(EYES, arguments);
        let eye = |line: &str| line.split(',').map(str::to_owned).collect::<Vec<_>>();
        done.out.lines().filter(|line| line.starts_with("eye,")).map(eye).collect::<Vec<_>>()
    };
    for (plain, mirrored) in points(&["--points"]).iter().zip(points(&["--points", "--mirror-left"])) {
        let y = |point: &[String]| point[3].parse::<f64>().unwrap();
        assert_eq!(plain[2], mirrored[2]);
        let sign = if ["b", "d"].contains(&plain[1].as_str()) { -1.0 } else { 1.0 };
        assert_eq!(y(&mirrored), sign * y(plain));
    }
}

#[test]
fn points_are_ready_to_plot() {
    let done = run(EYES, &["--points"]);
    let lines: Vec<&str> = done.out.lines().collect();
    assert_eq!(lines[0], "kind,id,x_d,y_d");
    let of = |kind: &str| lines.iter().filter(|line| line.starts_with(&format!("{kind},"))).count();
    assert_eq!((of("eye"), of("centroid"), of("ellipse_of_centroid"), of("ellipse_of_eyes")), (4, 1, 73, 73));
}

#[test]
fn the_same_numbers_come_unrounded() {
    let done = run(EYES, &["--json"]);
    let told: serde_json::Value = serde_json::from_str(&done.out).unwrap();
    assert_eq!(told["eyes"], 4);
    // the mean of N cos 2a by hand
    let degrees = [(0.5, 180.0_f64), (0.3, 160.0), (0.4, 200.0), (0.2, 190.0)];
    #[expect(clippy::disallowed_methods, reason = "an outside check of what the program says")]
    let x = degrees.iter().map(|(n, twice)| n * twice.to_radians().cos()).sum::<f64>() / 4.0;
    assert!((told["centroid"]["x_d"].as_f64().unwrap() - x).abs() < 1e-12);
    assert_eq!(run(EYES, &["--json", "--points"]).code, 2);
}

#[test]
fn a_drawing_is_written() {
    let folder = Folder::new().with("eyes.csv", EYES);
    let done = folder.run(&["group", "eyes.csv", "-o", "group.svg"], "");
    assert!(done.code == 0 && done.out.contains("centroid"), "{}", done.err);
}

#[test]
fn every_wrong_row_is_reported_and_none_left_out() {
    for (table, wrong) in [
        (EYES.replace("0.30,80", "0.30,8O"), "eyes.csv:3: steep_axis_deg 8O: not a plain decimal number"),
        (EYES.replace("left,0.30", "lft,0.30"), "eyes.csv:3: eye lft: right (OD) or left (OS)"),
        (
            EYES.replace("0.30,80", "0.30,810"),
            "steep_axis_deg 810: outside the range that is accepted; accepted: 0 to 180 deg",
        ),
        (EYES.replace("0.30,80", "-0.30,80"), "not below 0"),
        (EYES.replace("left,0.30", "\u{1b}[31m\u{202e}left,0.30"), "eye \u{fffd}[31m\u{fffd}left: right (OD)"),
        (EYES.replace("0.30,80", ",80"), "astigmatism_d: empty"),
        (EYES.replace("0.30,80", "0.30"), "cannot be read"),
        (EYES.replace("c,right", "a,right"), "eyes.csv:4: a: this eye is in the table already"),
        (EYES.replace("steep_axis_deg", "axis"), "axis: no such column"),
        (EYES.replace("id,eye", "eye,eye"), "the column is given twice"),
        (EYES.replace("id,eye", "keratometric_index,eye"), "it says nothing of a vector"),
        ("id,eye\na,right\n".to_owned(), "columns are missing"),
        (EYES.lines().take(3).collect::<Vec<_>>().join("\n"), "2 eyes"),
        (String::new(), "columns are missing"),
    ] {
        let done = run(&table, &[]);
        assert_eq!((done.code, done.out.as_str()), (2, ""), "{table}");
        assert!(done.err.contains(wrong), "{wrong}\n{}", done.err);
    }
    let two = run(&EYES.replace("0.30,80", "x,80").replace("0.40,100", "0.40,y"), &[]);
    assert!(two.err.contains("eyes.csv:3:") && two.err.contains("eyes.csv:4:"), "{}", two.err);
    // a mark of the encoding, and the ends of lines of another system, are not faults
    assert_eq!(run(&format!("\u{feff}{}", EYES.replace('\n', "\r\n")), &[]).code, 0);
}
