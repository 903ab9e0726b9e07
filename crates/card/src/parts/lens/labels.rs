//! The labels around the target, and what each would leave.

use super::answers::Lens;
use super::label::{beyond, labels, left};
use super::table::entries::{LENS_MODEL, LENS_POWER};
use super::table::{cautions, items};
use crate::out::Out;
use crate::parts::general::{range, widened};
use crate::parts::toric::Label;

#[inline(never)]
pub(super) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let Some(labels) = labels(eye) else { return };
    let fit = lens.range(&|answer| Some(answer.power));
    let Some((least, most)) = fit.or_else(|| range(lens.shown().map(|a| a.power))) else { return };
    // the labels stand around the mean power asked for, less what a label leaves out of its mean
    let middle = (least + most) / 2.0 - lens.shown().find_map(|answer| beyond(eye, answer)).unwrap_or(0.0);
    if !labels.reaches(middle) {
        out.about(cautions::MODEL_FALLS_SHORT, LENS_MODEL);
    }
    let around = || labels.around(middle);
    // a lens chosen further away has a row of its own
    let chosen = eye.get(LENS_POWER).filter(|power| !around().any(|label| label == *power));
    let (toric, several) = (Label::of(eye), lens.compared().count() >= 2);
    for (row, label) in around().chain(chosen).enumerate() {
        out.in_row(items::LADDER_POWER, label.d(), row);
        let mut spread = None;
        for answer in lens.shown() {
            let Some(rx) = left(toric, eye, answer, label) else { continue };
            out.of_in_row(items::LADDER_REFRACTION, rx, answer.method, row);
            if answer.compared {
                spread = Some(widened(spread, rx));
            }
        }
        if let Some((least, most)) = spread.filter(|_| several) {
            out.in_row(items::LADDER_SPREAD, most - least, row);
        }
    }
}
