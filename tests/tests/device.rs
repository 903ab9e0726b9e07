//! The device's own loop on this machine, asked by the program that asks every device.

use ocellus_tests::check::{self, demo_cases, demo_draft};
use ocellus_tests::{bench, random_case};

#[test]
fn demo_cases_and_random_ones_are_equal_bit_by_bit() {
    let port = bench::start();
    let compared = check::compare(&port, demo_cases().iter().map(|path| demo_draft(path)));
    assert_eq!(compared.cases, demo_cases().len());
    assert!(compared.numbers > 1000, "{compared:?}");
    let compared = check::compare(&port, random_case::drafts().take(100));
    assert_eq!((compared.cases, compared.refused), (100, 0));
}

#[test]
fn a_damaged_line_yields_no_wrong_number() {
    check::survives_damage(&bench::start(), 1, 60);
}

#[test]
fn text_and_frames_share_a_line() {
    check::takes_text_and_frames(&bench::start());
}

#[test]
fn noise_is_outlived() {
    check::outlives_noise(&bench::start(), 2, 1 << 20);
}

#[test]
fn a_strip_chart_goes_on_by_itself() {
    check::draws_a_strip(&bench::start());
}
