//! Whatever a table of eyes holds, `ocellus batch` answers or marks every row of it.
#![allow(clippy::unwrap_used, reason = "a test may stop where it stands")]

use ocellus_cli::batch::batch;
use proptest::prelude::*;

const HEADER: &str = "id,eye,axial_length_mm,k1_d,k2_d,acd_mm,target_d,a_constant,iol_power_d";
const GOOD: &str = "good,right,23.46,43.25,44.00,3.12,-0.25,118.9,21.5";

/// The lines of the answers, without the header.
fn answered(table: &[u8]) -> Vec<String> {
    let mut output = Vec::new();
    let tally = batch(table, &mut output).unwrap();
    let rows: Vec<String> = String::from_utf8(output).unwrap().lines().skip(1).map(str::to_owned).collect();
    assert_eq!(rows.len() as u64, tally.rows);
    rows
}

proptest! {
    /// Bytes of any kind: each line that is not blank gives a row.
    #[test]
    fn any_bytes(lines in prop::collection::vec(prop::collection::vec(any::<u8>(), 0..60), 0..20)) {
        // an id is given back as it was, also with a line end of old within it: kept out to count lines simply
        let kept = |b: &u8| *b != b'\n' && *b != b'\r';
        let lines: Vec<Vec<u8>> = lines.into_iter().map(|line| line.into_iter().filter(kept).collect()).collect();
        let full = lines.iter().filter(|line| !line.trim_ascii().is_empty()).count();
        let table = [HEADER.as_bytes().to_vec()].into_iter().chain(lines).collect::<Vec<_>>().join(&b'\n');
        prop_assert_eq!(answered(&table).len(), full);
    }

    /// Cells that could be entries: each row is answered, or marked and without numbers, and the next is as ever.
    #[test]
    fn any_cells(cells in prop::collection::vec("[-+]?[0-9]{1,3}(\\.[0-9]{0,20})?|[a-z_\"]{0,8}", 9..10)) {
        let rows = answered(format!("{HEADER}\n{}\n{GOOD}\n", cells.join(",")).as_bytes());
        let good = answered(format!("{HEADER}\n{GOOD}\n").as_bytes());
        prop_assert_eq!(rows.len(), 2);
        prop_assert_eq!(&rows[1], &good[0]);
        prop_assert!(rows[0].ends_with(',') || rows[0].contains(",,,,,,,,,,,,,,"));
    }
}
