//! The labels around the target, and what each would leave.

use super::Lens;
use super::label::{beyond, labels, refraction};
use super::table::entries::{LENS_MODEL, LENS_POWER};
use super::table::{cautions, items};
use crate::caution::Caution;
use crate::item::Item;
use crate::parts::general::{range, widened};
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(lens: &Lens, sink: &mut dyn Sink) {
    let eye = lens.eye;
    let Some(labels) = labels(eye) else { return };
    let fit = range(lens.compared().map(|a| a.power));
    let Some((least, most)) = fit.or_else(|| range(lens.shown().map(|a| a.power))) else { return };
    // the labels stand around the mean power asked for, less what a label leaves out of its mean
    let middle = (least + most) / 2.0 - lens.shown().find_map(|answer| beyond(eye, answer)).unwrap_or(0.0);
    if !labels.reaches(middle) {
        sink.caution(Caution::about(cautions::MODEL_FALLS_SHORT, LENS_MODEL));
    }
    let around = || labels.around(middle);
    // a lens chosen further away has a row of its own
    let chosen = eye.get(LENS_POWER).filter(|power| !around().any(|label| label == *power));
    let several = lens.compared().count() >= 2;
    for (row, label) in around().chain(chosen).enumerate() {
        sink.item(Item::one(items::LADDER_POWER, label.d()).in_row(row));
        let mut spread = None;
        for answer in lens.shown() {
            let Some(rx) = refraction(eye, answer, label) else { continue };
            sink.item(Item::of(items::LADDER_REFRACTION, answer.method, rx).in_row(row));
            if answer.compared {
                spread = Some(widened(spread, rx));
            }
        }
        if let Some((least, most)) = spread.filter(|_| several) {
            sink.item(Item::one(items::LADDER_SPREAD, most - least).in_row(row));
        }
    }
}
