//! `ocellus draw` as it is run: what stands where, from every seat.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it stands")]

mod ocellus;

use ocellus::Folder;
use std::path::Path;

fn demo(name: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-data").join(name)).unwrap()
}

fn drawn(picture: &str, case: &str) -> String {
    let folder = Folder::new().with("case.toml", case);
    let done = folder.run(&["draw", picture, "case.toml"], "");
    assert_eq!(done.code, 0, "{}", done.err);
    done.out
}

/// The angle on the page, counter-clockwise from the right, at which the first cut is drawn.
fn cut(svg: &str) -> i64 {
    let block = svg.find("fill=\"black\" height").unwrap();
    let turn = svg[..block].rfind("rotate(").unwrap() + "rotate(".len();
    let degrees: f64 = svg[turn..].split(')').next().unwrap().parse().unwrap();
    (-degrees).rem_euclid(360.0) as i64
}

/// A temporal incision is nearest to a surgeon at the temple; one at the head, or who faces the patient, sees it at a side.
#[test]
fn each_seat_sees_the_incision_where_it_is() {
    let (right, left) = (demo("both-right.toml"), demo("both-left.toml"));
    for (case, temple, head, facing) in [(&right, 270, 0, 180), (&left, 270, 180, 0)] {
        assert_eq!(cut(&drawn("axis", case)), temple);
        assert_eq!(cut(&drawn("axis", &case.replace("seat = \"temporal\"", "seat = \"superior\""))), head);
        assert_eq!(cut(&drawn("axis", &case.replace("seat = \"temporal\"\n", ""))), facing);
    }
}

#[test]
fn the_numbers_are_the_cards() {
    let case = demo("turned.toml");
    let turn = drawn("turn", &case);
    for said in [
        "RIGHT EYE, as a surgeon at the patient",
        "FROM 105 deg TO 94 deg",
        "the short way 11 deg clockwise, the long way 169 deg counter-clockwise",
        "plus cylinder still needed +0.75 D x 54 deg",
        "cylinder still needed +0.02 D",
        "Not a medical device",
        "cautions stand on the card",
    ] {
        assert!(turn.contains(said), "{said}");
    }
    let axis = drawn("axis", &case);
    for said in ["incision at 180 deg, temporal", "astigmatism 2.60 D", "as chosen: 93 deg", "surgeon", "330"] {
        assert!(axis.contains(said), "{said}");
    }
    let plan = Folder::new().with("case.toml", &case).run(&["plan", "case.toml"], "");
    let code = plan.out.split("Read-back --").nth(1).unwrap().lines().nth(1).unwrap();
    let code = code.split_whitespace().next().unwrap();
    assert!(axis.contains(code) && turn.contains(code), "{code}");
    assert!(drawn("off-axis", &case).contains("By SRK/T. 0 is 93 deg, as chosen"));
}

#[test]
fn a_file_is_written_where_it_was_asked_for() {
    let folder = Folder::new().with("case.toml", demo("long-toric.toml"));
    let done = folder.run(&["draw", "axis", "case.toml", "-o", "axis.svg"], "");
    assert_eq!((done.code, done.out.as_str()), (0, ""), "{}", done.err);
    assert!(folder.run(&["draw", "axis", "case.toml", "-o", "no/such/axis.svg"], "").err.contains("cannot be written"));
}

#[test]
fn what_a_picture_lacks_is_reported() {
    let folder = Folder::new().with("case.toml", ocellus::GOOD);
    for (picture, needs) in
        [("axis", "an incision site"), ("turn", "mark_found_deg"), ("off-axis", "iol_cylinder_d and iol_axis_deg")]
    {
        let done = folder.run(&["draw", picture, "case.toml"], "");
        assert_eq!((done.code, done.out.as_str()), (2, ""));
        assert!(done.err.contains("nothing to draw") && done.err.contains(needs), "{}", done.err);
    }
}
