//! A table of eyes: every row answered or marked, in order, whatever stands in it.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "a test may stop where it stands")]

use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::parts::eye::choices::{AcdFrom, AlMethod, EyeState, KKind, PreviousSurgery};
use ocellus_cli::batch::{Failure, Tally, batch};
use ocellus_core::astigmatism::site::Side;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::view::Eyes;
use ocellus_core::quantity::{LensPower, Vertex};

/// The methods that have columns, in the order of these.
fn methods() -> Vec<&'static str> {
    Method::of(Eyes::Ordinary).map(Method::key).collect()
}

/// The answers as rows of cells, without the header.
fn answered(table: impl AsRef<[u8]>) -> (Vec<Vec<String>>, Tally) {
    let mut output = Vec::new();
    let tally = batch(table.as_ref(), &mut output).unwrap();
    let mut reader = csv::Reader::from_reader(output.as_slice());
    let rows: Vec<Vec<String>> = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect();
    assert_eq!(rows.len() as u64, tally.rows);
    (rows, tally)
}

/// The single row of a table.
fn one(header: &str, row: &str) -> Vec<String> {
    let (mut rows, _) = answered(format!("{header}\n{row}\n"));
    assert_eq!(rows.len(), 1);
    rows.remove(0)
}

fn cell<'a>(row: &'a [String], name: &str) -> &'a str {
    let place = match name {
        "id" => 0,
        "cautions" => row.len() - 2,
        "error" => row.len() - 1,
        _ => {
            let (method, what) = name.split_once('_').unwrap();
            let method = methods().iter().position(|m| *m == method).unwrap();
            1 + 2 * method + usize::from(what == "refraction")
        }
    };
    &row[place]
}

fn has_code(row: &[String], code: &str) -> bool {
    cell(row, "cautions").split(' ').any(|c| c == code)
}

fn numbers_are_empty(row: &[String]) -> bool {
    row[1..row.len() - 2].iter().all(String::is_empty)
}

/// What is wrong with a header, and what would be accepted.
fn problem(table: impl AsRef<[u8]>) -> (String, String, String) {
    match batch(table.as_ref(), Vec::new()) {
        Err(Failure::Header(problem)) => (problem.typed, problem.wrong, problem.accepted),
        other => panic!("{other:?}"),
    }
}

const HEADER: &str = "id,eye,axial_length_mm,k1_d,k2_d,acd_mm,target_d,a_constant,iol_power_d";
const GOOD: &str = "good,right,23.46,43.25,44.00,3.12,-0.25,118.9,21.5";

#[test]
fn header_is_as_documented() {
    let mut output = Vec::new();
    batch(HEADER.as_bytes(), &mut output).unwrap();
    let first = "id,srk2_power_d,srk2_refraction_d,srkt_power_d,srkt_refraction_d,t2_power_d,t2_refraction_d,\
                 holladay1_power_d,holladay1_refraction_d,hofferq_power_d,hofferq_refraction_d,haigis_power_d,\
                 haigis_refraction_d,";
    let of_methods: String = methods().iter().map(|key| format!("{key}_power_d,{key}_refraction_d,")).collect();
    let header = String::from_utf8(output).unwrap();
    assert_eq!(header, format!("id,{of_methods}cautions,error\n"));
    // a method that is new has its columns behind those that there were
    assert!(header.starts_with(first), "{header}");
}

/// Each number in the table is, to the bit, the one the core gives for the same entries.
#[test]
fn numbers_have_the_bits_of_the_core() {
    let row = one(HEADER, GOOD);
    let mut draft = Draft::default();
    for (entry, value) in [
        (entries::SIDE.id(), Side::Right.code()),
        (entries::AXIAL_LENGTH.id(), 23.46),
        (entries::K1.id(), 43.25),
        (entries::K2.id(), 44.0),
        (entries::K_KIND.id(), KKind::Keratometric.code()),
        (entries::ACD.id(), 3.12),
        (entries::ACD_FROM.id(), AcdFrom::Epithelium.code()),
        (entries::AL_METHOD.id(), AlMethod::Optical.code()),
        (entries::EYE_STATE.id(), EyeState::Phakic.code()),
        (entries::PREVIOUS_SURGERY.id(), PreviousSurgery::None.code()),
        (entries::TARGET.id(), -0.25),
        (entries::A_CONSTANT.id(), 118.9),
    ] {
        draft.set(entry, value);
    }
    let case = Case::try_from(&draft).unwrap();
    let (lens, vertex) = (LensPower::from_d(21.5).unwrap(), Vertex::from_mm(12.0).unwrap());
    let answers = case.known(|known| known.lens.map(|lens| *lens.answers())).unwrap();
    assert_eq!(answers.all().count(), methods().len());
    for answer in answers.all() {
        let key = answer.method.key();
        let power: f64 = cell(&row, &format!("{key}_power")).parse().unwrap();
        let left: f64 = cell(&row, &format!("{key}_refraction")).parse().unwrap();
        assert_eq!(power.to_bits(), answer.power.to_bits(), "{key}");
        assert_eq!(left.to_bits(), answer.optics.refraction(lens, vertex).unwrap().to_bits(), "{key}");
    }
    assert_eq!(cell(&row, "error"), "");
}

/// Rows that cannot be read stand between good ones, and change nothing but themselves.
#[test]
fn a_wrong_row_is_marked_and_touches_no_other() {
    let wrong: &[(&[u8], &str)] = &[
        (b"wrong,right,23.46,43.25,44.00,3.12,-0.25,118.9", "ragged:row"),
        (b"wrong,right,23.46,43.25,44.00,3.12,-0.25,118.9,21.5,", "ragged:row"),
        (b"wrong,right,23,46,43.25,44.00,3.12,-0.25,118.9,21.5", "ragged:row"),
        (b"wrong,\"right,23.46,43.25,44.00,3.12,-0.25,118.9,21.5", "quotes:row"),
        (b"wrong,right,23.46,43.25,44.00,3.12,-0.25,118.9,\"21.5", "quotes:row"),
        (b"wrong,right,23.46,43.25,44.00,3.12,-0.25,\xFF118.9,21.5", "not_utf8:row"),
        (b"wrong,right,\"23,46\",43.25,44.00,3.12,-0.25,118.9,21.5", "comma_decimal:axial_length_mm"),
        (b"wrong,right,234.6,43.25,44.00,3.12,-0.25,118.9,21.5", "wrong_unit:axial_length_mm"),
        (b"wrong,right,23.46,7.80,7.70,3.12,-0.25,118.9,21.5", "wrong_unit:k1_d"),
        (b"wrong,right,23.46,43.25,,3.12,-0.25,118.9,21.5", "incomplete:k2_d"),
        (b"wrong,right,,43.25,44.00,3.12,-0.25,118.9,21.5", "missing:axial_length_mm"),
        (b"wrong,right,2.346e1,43.25,44.00,3.12,-0.25,118.9,21.5", "not_a_number:axial_length_mm"),
        (b"wrong,right,nan,43.25,44.00,3.12,-0.25,118.9,21.5", "not_a_number:axial_length_mm"),
        (b"wrong,both,23.46,43.25,44.00,3.12,-0.25,118.9,21.5", "not_a_word:eye"),
        (b"wrong,right,23.46,43.25,44.00,3.12,-0.25,1189,21.5", "out_of_range:a_constant"),
        (b"wrong,right,23.46,43.25,44.00,3.12,-0.25,118.9,215", "out_of_range:iol_power_d"),
    ];
    let mut table = format!("{HEADER}\n{GOOD}\n").into_bytes();
    for (row, _) in wrong {
        table.extend([row, b"\n".as_slice(), GOOD.as_bytes(), b"\n"].concat());
    }
    let (rows, tally) = answered(table);
    assert_eq!(tally, Tally { rows: 2 * wrong.len() as u64 + 1, marked: wrong.len() as u64 });
    let good = one(HEADER, GOOD);
    for (place, row) in rows.iter().enumerate() {
        if place % 2 == 0 {
            assert_eq!(row, &good, "row {place}");
        } else {
            let (text, error) = wrong[place / 2];
            assert_eq!(cell(row, "error"), error, "{}", String::from_utf8_lossy(text));
            assert_eq!(cell(row, "id"), "wrong");
            assert!(numbers_are_empty(row) && cell(row, "cautions").is_empty());
        }
    }
}

#[test]
fn a_line_without_end_is_marked_and_skipped() {
    let long = format!("endless,{}", "9".repeat(1_000_000));
    let (rows, tally) = answered(format!("{HEADER}\n{long}\n{GOOD}"));
    assert_eq!(tally, Tally { rows: 2, marked: 1 });
    assert_eq!((cell(&rows[0], "id"), cell(&rows[0], "error")), ("endless", "too_long:row"));
    assert_eq!(rows[1], one(HEADER, GOOD));
}

#[test]
fn columns_may_stand_in_any_order_and_lines_may_end_either_way() {
    let good = one(HEADER, GOOD);
    let other = one(
        "iol_power_d, a_constant ,k2_d,k1_d,target_d,acd_mm,axial_length_mm,id",
        "21.5,118.9,44,43.25,-0.25, 3.12 ,23.46,good",
    );
    assert_eq!(other, good);
    let (rows, _) = answered(format!("\u{FEFF}{HEADER}\r\n\r\n{GOOD}\r\n"));
    assert!(rows.len() == 1 && rows[0] == good);
    let quoted = |line: &str| format!("\"{}\"", line.replace(',', "\",\""));
    assert_eq!(one(&quoted(HEADER), &quoted(GOOD)), good);
}

/// What a table leaves out means what the documentation says it means.
#[test]
fn defaults_are_those_documented() {
    let bare = "id,axial_length_mm,k1_d,k2_d,acd_mm,a_constant,iol_power_d";
    let full = "id,axial_length_mm,k1_d,k2_d,acd_mm,a_constant,iol_power_d,\
                eye,keratometric_index,target_d,vertex_mm,k_kind,acd_from,al_method,eye_state,previous_surgery";
    let row = "e,23.46,43.25,44,3.12,118.9,21.5";
    let said = format!("{row},OS,1.3375,0,12,keratometric,epithelium,optical,phakic,none");
    assert_eq!(one(bare, row), one(full, &said));
    // numbers and the eye may be left open in a column that is there; what the numbers mean may not
    assert_eq!(one(full, &format!("{row},,,,,keratometric,epithelium,optical,phakic,none")), one(full, &said));
    for (place, other) in [
        (8, "1.332"),
        (9, "-1"),
        (10, "14"),
        (11, "total"),
        (12, "endothelium"),
        (13, "contact"),
        (14, "aphakic"),
        (15, "unknown"),
    ] {
        let mut cells: Vec<&str> = said.split(',').collect();
        cells[place] = other;
        assert_ne!(one(full, &cells.join(",")), one(full, &said), "{other} changes nothing");
    }
}

#[test]
fn an_eye_has_several_names() {
    for word in ["right", "LEFT", " od ", "Os", "r", "L", ""] {
        let row = one(HEADER, &format!("good,{word},23.46,43.25,44.00,3.12,-0.25,118.9,21.5"));
        assert_eq!(row, one(HEADER, GOOD), "{word}");
    }
}

/// A method that lacks something leaves its cells empty and says why; the others answer.
#[test]
fn what_is_lacking_is_said() {
    let header = "axial_length_mm,k1_d,k2_d,acd_mm,acd_from,a_constant,haigis_a0,iol_power_d";
    let no_depth = one(header, "23.46,43.25,44,,epithelium,118.9,,");
    assert!(has_code(&no_depth, "haigis_needs_acd") && cell(&no_depth, "haigis_power").is_empty());
    assert!(!cell(&no_depth, "srkt_power").is_empty() && cell(&no_depth, "srkt_refraction").is_empty());
    let no_constant = one(header, "23.46,43.25,44,3.12,epithelium,,-0.78,21.5");
    for method in methods().iter().filter(|method| **method != "haigis") {
        assert!(has_code(&no_constant, &format!("{method}_needs_constant")));
        assert!(cell(&no_constant, &format!("{method}_power")).is_empty());
    }
    assert!(!cell(&no_constant, "haigis_refraction").is_empty());
    let no_thickness = one(header, "23.46,43.25,44,3.12,endothelium,118.9,,");
    assert!(has_code(&no_thickness, "haigis_needs_cct"));
}

#[test]
fn an_eye_the_methods_do_not_fit_has_no_numbers() {
    let header = "axial_length_mm,k1_d,k2_d,a_constant,previous_surgery,k_kind,eye_state";
    for (row, code) in [
        ("23.46,38,38.5,118.9,myopic_laser,keratometric,phakic", "previous_surgery"),
        ("23.46,43,44,118.9,graft,keratometric,phakic", "cornea_unfit"),
        ("23.46,43,44,118.9,none,total,phakic", "total_k"),
        ("23.46,43,44,118.9,none,keratometric,silicone_oil", "silicone_oil"),
    ] {
        let row = one(header, row);
        assert!(has_code(&row, code) && numbers_are_empty(&row) && cell(&row, "error").is_empty(), "{code}");
    }
}

/// What a column leaves open is not taken for the usual: an unknown history is no "none".
#[test]
fn an_empty_cell_of_a_column_that_is_there_is_not_known() {
    let header = "axial_length_mm,k1_d,k2_d,a_constant,previous_surgery";
    let row = one(header, "26,38,38.5,118.9,");
    assert!(numbers_are_empty(&row));
    assert_eq!(cell(&row, "error"), "missing:previous_surgery");
}

/// The published value stands even where the method fails, and the code with it.
#[test]
fn srkt_past_its_cusp_is_given_with_the_code() {
    let row = one(HEADER, "steep,right,27.00,48.00,48.00,3.5,0,118.9,");
    assert!(has_code(&row, "srkt_radicand") && has_code(&row, "srkt_departs_from_t2"));
    let (srkt, t2): (f64, f64) = (cell(&row, "srkt_power").parse().unwrap(), cell(&row, "t2_power").parse().unwrap());
    assert!(srkt - t2 > 0.5);
}

#[test]
fn cautions_are_those_of_the_eye_and_of_the_methods() {
    assert_eq!(cell(&one(HEADER, GOOD), "cautions"), "holladay1_converted hofferq_converted haigis_unoptimised");
    let row = one(HEADER, "odd,right,27.00,41.00,45.00,3.12,0,118.9,");
    assert!(has_code(&row, "al_unusual") && has_code(&row, "astigmatism_large"));
    let axes = one("axial_length_mm,k1_d,k2_d,k1_axis_deg,k2_axis_deg,a_constant", "23.5,43,44,10,12,118.9");
    assert!(has_code(&axes, "axes_same"));
}

/// Programs write up to 17 digits; all of them count.
#[test]
fn numbers_may_have_any_number_of_decimals() {
    let power = |al: &str| {
        let row = one(HEADER, &format!("e,right,{al},43.25,44.00,3.12,-0.25,118.9,21.5"));
        cell(&row, "srkt_power").parse::<f64>().unwrap()
    };
    assert_ne!(power("23.460000000000001"), power("23.460000000000004"));
    assert_eq!(power("23.46"), power("23.4600000000000000000000000000000000000000001"));
}

#[test]
fn a_header_that_is_not_understood_is_refused_by_name() {
    let said = |table: &str, typed: &str, wrong: &str, accepted: &str| {
        let (t, w, a) = problem(table);
        assert!(t == typed && w == wrong && a.contains(accepted), "{table}: {t}: {w}; {a}");
    };
    said("id,axial_length,k1_d\n", "axial_length", "column 2: not a known column", "axial_length_mm");
    said("id,k1_d,k2_d,k1_d\n", "k1_d", "column 4: given twice", "once");
    said("id,k1_d,\n", "", "column 3: not a known column", "id,eye,axial_length_mm,k1_d");
    said("id;k1_d;k2_d\n", "id;k1_d;k2_d", "column 1: not a known column", "");
    said("id,\"k1_d\n", "id,\"k1_d", "quotes: not a header", "id,eye");
    said("", "", "the table is empty", "id,eye");
    said("\r\n\n", "", "the table is empty", "id,eye");
    assert!(problem(b"id,k1_d\xFF\n").1.starts_with("not_utf8"));
}
