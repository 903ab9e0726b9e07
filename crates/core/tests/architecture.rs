//! Arrows between files run one way: down the rooms of the house, and in no circle.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop where it stands")]

mod graph;

use graph::Graph;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// The rooms, from the lowest: each stands on those before it. What is in none is put into one before it is built.
const ROOMS: &[&[&str]] = &[
    &[
        "bounds.rs",
        "error.rs",
        "value.rs",
        "source.rs",
        "choice.rs",
        "math.rs",
        "quantity/",
        "constant/",
        "working.rs",
        "decimal.rs",
    ],
    &["optics/"],
    &["lens/"],
    &["astigmatism/"],
    &["fluids/"],
    &["table_side/"],
    &["lib.rs"],
];

fn source() -> Graph {
    Graph::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"))
}

#[test]
fn no_files_use_each_other_in_a_circle() {
    source().has_no_circle();
}

#[test]
fn no_room_uses_a_higher_one() {
    assert_eq!(source().upward(ROOMS), BTreeSet::new());
}

/// A crate of every way in which one file uses another, and of what only looks like it.
const SMALL: &[(&str, &str)] = &[
    ("lib.rs", "#[macro_use] mod m; mod a; mod b; mod c; mod d; pub use b::inner::{Y as Named};"),
    ("a.rs", "use crate::{b::{self, inner::{X, Y as Z}}}; fn f() -> Z { b::g(crate::c::<u8>::K) }"),
    ("b/mod.rs", "mod inner; const C: char = '{'; mod tests { use super::*; use super::super::c::{C}; }"),
    ("b/inner.rs", "pub struct X; pub struct Y; fn f<'a>() { super::g(); each! { here } }"),
    (
        "c.rs",
        "// use crate::a;\n/* use /* crate::a */ crate::b; */ const T: &str = \"crate::a \\\" {\"; const R: &str = r#\"crate::a\"#;",
    ),
    (
        "d.rs",
        "use crate::b as other; fn f() { let x = text.a::<u8>(); other::inner::h(); std::a::b() } pub(crate) fn g() {}",
    ),
    (
        "m.rs",
        "macro_rules! each { ($x:ident) => { mod made { use super::super::a; } $crate::c::f(); $crate::unknown::f(); } }",
    ),
];

#[test]
fn the_reader_finds_every_arrow() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("small");
    fs::create_dir_all(folder.join("b")).unwrap();
    SMALL.iter().for_each(|(file, text)| fs::write(folder.join(file), text).unwrap());
    let graph = Graph::read(&folder);
    let expected = [
        ("a.rs", "b/inner.rs"),
        ("a.rs", "b/mod.rs"),
        ("a.rs", "c.rs"),
        ("b/inner.rs", "b/mod.rs"),
        ("b/inner.rs", "m.rs"),
        ("b/mod.rs", "c.rs"),
        ("d.rs", "b/inner.rs"),
        ("d.rs", "b/mod.rs"),
        ("lib.rs", "b/inner.rs"),
        ("m.rs", "c.rs"),
        // of what no file has it is the root that would know
        ("m.rs", "lib.rs"),
    ];
    assert_eq!(graph.arrows().collect::<Vec<_>>(), expected);
    assert_eq!(graph.circles(), BTreeSet::from([vec!["b/inner.rs", "lib.rs", "m.rs"]]));
    let rooms: &[&[&str]] = &[&["c.rs", "b/mod.rs"], &["b/", "a.rs", "d.rs"], &["m.rs"], &["lib.rs"]];
    assert_eq!(graph.upward(rooms), BTreeSet::from([("b/inner.rs", "m.rs"), ("m.rs", "lib.rs")]));
}
