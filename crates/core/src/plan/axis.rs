//! The cornea after the incision, and the toric lens on it.

use super::entries;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::toric::{ToricLens, at_lens_plane, direction, residual, residual_along, working};
use crate::astigmatism::{cornea, on_dial, turned};
use crate::case::{CYLINDERS, Case, Toric};
use crate::caution::{Caution, Code};
use crate::choice::CylinderPlane;
use crate::constant::eye::{OFF_AXIS, RESIDUAL_LARGE};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::Method;
use crate::lens::answer::{Answer, Answers, NONE, answer_shown};
use crate::lens::ladder::{range, widened};
use crate::lens::predict::after_laser;
use crate::lens::vergence::ThinEye;
use crate::quantity::{Axis, LensCylinder};
use crate::sink::Sink;

/// One method's eye, and the power of the lens in it.
#[derive(Clone, Copy)]
struct Seen {
    method: Method,
    eye: ThinEye,
    power: Power,
}

/// The power of a toric lens: as on the label chosen, or, before one is, the exact mean.
#[derive(Clone, Copy)]
enum Power {
    Label(f64),
    Mean(f64),
}

impl Seen {
    fn of(case: &Case, answer: &Answer) -> Option<Seen> {
        let power = case.lens_power().map_or(Power::Mean(answer.power), |chosen| Power::Label(chosen.d()));
        Some(Seen { method: answer.method, eye: answer.optics.thin_eye()?, power })
    }

    fn lens(&self, label: &Toric, cylinder: f64, mark: Axis) -> ToricLens {
        match self.power {
            Power::Label(power) => ToricLens::labelled(power, label.label_power, cylinder, mark),
            Power::Mean(mean) => ToricLens { mean, cylinder, mark },
        }
    }
}

/// The eyes of the methods compared.
fn seen(case: &Case, answers: &Answers) -> impl Iterator<Item = Seen> {
    answers.iter().flatten().filter(|answer| answer.compared).filter_map(|answer| Seen::of(case, answer))
}

/// The cornea after the incision: its vector, without a mean.
pub(crate) fn planned(case: &Case) -> Option<PowerVector> {
    let measured = cornea::measured(&case.cornea)?;
    let (site, flattening) = case.incision_effect()?;
    Some(measured.plus(cornea::induced(site, flattening)))
}

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Axis);
    entries(case, sink, &[Field::IncisionSite, Field::Flattening]);
    let planned = planned(case);
    if let Some(vector) = planned {
        sink.item(Item::one(What::PlannedAstigmatism, vector.cylinder()));
        if let Some(axis) = vector.strongest() {
            sink.item(Item::one(What::PlannedAxis, on_dial(axis)));
        }
    }
    let Some(label) = case.toric() else { return };
    entries(case, sink, &[Field::LabelPower, Field::CylinderPlane]);
    entries(case, sink, &CYLINDERS);
    let Some(vector) = planned else {
        let axes = case.cornea.steep_axis().is_some();
        let code = if axes { Code::ToricNeedsIncision } else { Code::ToricNeedsAxes };
        let field = if axes { Field::Flattening } else { Field::K1Axis };
        return sink.caution(Caution::about(code, field));
    };
    // what speaks against them was said with the lens
    let mut answers = NONE;
    answer_shown(case, &mut |_| {}, &mut answers);
    if seen(case, &answers).next().is_none() {
        return;
    }
    if after_laser(case).is_some() {
        sink.caution(Caution::about(Code::ToricAfterLaser, Field::PreviousSurgery));
    }
    sink.caution(Caution::general(Code::PosteriorIgnored));
    sink.caution(Caution::general(Code::ResidualNominal));
    if label.plane == CylinderPlane::Cornea {
        sink.caution(Caution::about(Code::CorneaPlaneLabel, Field::CylinderPlane));
    }
    if case.lens_power().is_none() {
        sink.caution(Caution::about(Code::ToricNeedsPower, Field::LensPower));
    }
    labels(case, &label, vector, &answers, sink);
    chosen(case, &label, vector, &answers, sink);
}

/// What is told of a label: placed as planned, and turned off it by so many degrees.
const TURNS: [(What, f64); 3] = [(What::Residual, 0.0), (What::ResidualOff5, 5.0), (What::ResidualOff10, 10.0)];

/// The cylinder each method needs, and what the labels on either side of it leave.
#[inline(never)]
fn labels(case: &Case, label: &Toric, vector: PowerVector, answers: &Answers, sink: &mut dyn Sink) {
    // without a steep meridian there is nothing to correct and nowhere to put a mark
    let Some(mark) = vector.strongest() else {
        return sink.caution(Caution::general(Code::ToricNotNeeded));
    };
    sink.item(Item::one(What::MarkAxis, on_dial(mark)));
    // the same for every label and every method
    let turns = TURNS.map(|(what, turn)| (what, direction(turned(mark, turn))));
    let mut at_label = None;
    for Seen { method, eye, .. } in seen(case, answers) {
        let Ok(w) = working(&eye, vector.cylinder(), case.target, case.vertex) else { continue };
        sink.item(Item::of(What::NeededCylinder, method, w.needed));
        sink.item(Item::of(What::CylinderRatio, method, w.ratio));
        // in the label's own plane: a label at the cornea is compared with the cornea itself
        let needed = match label.plane {
            CylinderPlane::Lens => w.needed,
            CylinderPlane::Cornea => w.n,
        };
        at_label = Some(widened(at_label, needed));
    }
    let Some((least, most)) = at_label else { return };
    let cylinders = || case.cylinders();
    let below = cylinders().map(LensCylinder::d).filter(|c| *c <= least).fold(f64::NEG_INFINITY, f64::max);
    let above = cylinders().map(LensCylinder::d).filter(|c| *c >= most).fold(f64::INFINITY, f64::min);
    for (row, cylinder) in cylinders().filter(|c| (below..=above).contains(&c.d())).enumerate() {
        sink.item(Item::one(What::LabelCylinder, cylinder.d()).in_row(row));
        for one in seen(case, answers) {
            let Seen { method, eye, .. } = one;
            let Ok(own) = at_lens_plane(cylinder, label.plane, &eye, case.target, case.vertex) else { continue };
            let lens = one.lens(label, own, mark);
            if label.plane == CylinderPlane::Cornea {
                sink.item(Item::of(What::LensPlaneCylinder, method, own).in_row(row));
            }
            let [aligned, ..] = turns.map(|(what, along)| {
                let left = residual_along(&eye, vector, lens, along).ok()?;
                sink.item(Item::of(what, method, left.cylinder()).in_row(row));
                Some(left)
            });
            if let Some(axis) = aligned.and_then(plus_axis) {
                sink.item(Item::of(What::ResidualAxis, method, on_dial(axis)).in_row(row));
            }
        }
    }
    let Some((weakest, strongest)) = range(cylinders().map(LensCylinder::d)) else { return };
    if most < weakest / 2.0 {
        sink.caution(Caution::general(Code::ToricNotNeeded));
    }
    if least > strongest {
        sink.caution(Caution::general(Code::BeyondLabels));
    }
}

/// Axis of a plus cylinder still needed: across the meridian in which most power is missing.
///
/// Below an eighth of a dioptre, which no refraction tells, its direction is noise and is not told.
fn plus_axis(left: PowerVector) -> Option<Axis> {
    left.minus_cylinder().transposed().axis.filter(|_| left.cylinder() >= 0.125)
}

/// The toric lens that was chosen, in one method's eye.
pub(crate) fn chosen_lens(case: &Case, answer: &Answer) -> Option<(ThinEye, ToricLens)> {
    let label = case.toric()?;
    let (cylinder, mark) = label.chosen?;
    let one = Seen::of(case, answer)?;
    let own = at_lens_plane(cylinder, label.plane, &one.eye, case.target, case.vertex).ok()?;
    Some((one.eye, one.lens(&label, own, mark)))
}

/// What the lens that was chosen leaves, as it will lie.
#[inline(never)]
fn chosen(case: &Case, label: &Toric, vector: PowerVector, answers: &Answers, sink: &mut dyn Sink) {
    let Some((cylinder, mark)) = label.chosen else { return };
    let mut large = false;
    for answer in answers.iter().flatten().filter(|answer| answer.compared) {
        let left = chosen_lens(case, answer).and_then(|(eye, lens)| residual(&eye, vector, lens).ok());
        let Some(left) = left else { continue };
        sink.item(Item::of(What::ChosenResidual, answer.method, left.cylinder()));
        large |= left.cylinder() > RESIDUAL_LARGE.get();
        if let Some(axis) = plus_axis(left) {
            sink.item(Item::of(What::ChosenResidualAxis, answer.method, on_dial(axis)));
        }
    }
    if large {
        sink.caution(Caution::about(Code::ResidualLarge, Field::LensCylinder));
    }
    if let Some(best) = vector.strongest() {
        let apart = (best.deg() - mark.deg()).abs();
        if apart.min(180.0 - apart) > OFF_AXIS.get() {
            sink.caution(Caution::about(Code::OffAxisChosen, Field::LensAxis));
        }
    }
    if !case.cylinders().any(|c| c == cylinder) && case.cylinders().next().is_some() {
        sink.caution(Caution::about(Code::OffLabel, Field::LensCylinder));
    }
}
