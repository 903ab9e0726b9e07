//! The toric lens on the cornea that the incisions leave.

use super::cornea::planned;
use super::{entries, scatter, toric_chosen};
use crate::astigmatism::expected::{self, Scatter};
use crate::astigmatism::on_dial;
use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::{PowerVector, Turn};
use crate::astigmatism::toric::{Asked, ToricLens, asked, at_lens_plane, direction, left, working};
use crate::case::{CYLINDERS, Case, Toric};
use crate::caution::{Caution, Code};
use crate::choice::{BackFrom, CylinderPlane, LabelPower};
use crate::constant::posterior::GOGGIN_UP_TO;
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
pub(super) struct Seen {
    method: Method,
    pub(super) eye: ThinEye,
    power: Power,
}

/// The power of a toric lens: as on the label chosen, or, before one is, the exact mean.
#[derive(Clone, Copy)]
enum Power {
    Label(f64),
    Mean(f64),
}

impl Seen {
    pub(super) fn of(case: &Case, answer: &Answer) -> Option<Seen> {
        let power = case.lens_power().map_or(Power::Mean(answer.power), |chosen| Power::Label(chosen.d()));
        Some(Seen { method: answer.method, eye: answer.optics.thin_eye()?, power })
    }

    pub(super) fn lens(&self, label: &Toric, cylinder: f64, mark: Axis) -> ToricLens {
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

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Axis);
    let Some(label) = case.toric() else { return };
    entries(case.draft(), sink, &[Field::LabelPower, Field::CylinderPlane]);
    entries(case.draft(), sink, &CYLINDERS);
    let planned = planned(case);
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
    if case.back_from() == Some(BackFrom::None) {
        sink.caution(Caution::general(Code::PosteriorIgnored));
    }
    if label.plane == CylinderPlane::Cornea {
        sink.caution(Caution::about(Code::CorneaPlaneLabel, Field::CylinderPlane));
    }
    if label.label_power == LabelPower::FlattestMeridian {
        sink.caution(Caution::about(Code::LabelWeaker, Field::LabelPower));
    }
    if case.lens_power().is_none() {
        sink.caution(Caution::about(Code::ToricNeedsPower, Field::LensPower));
    }
    let Some(known) = scatter::known(case) else { return };
    scatter::tell(case, sink);
    labels(case, &label, vector, known, &answers, sink);
    toric_chosen::plan(case, vector, known, &answers, sink);
}

/// What is told of a lens along directions other than the one it was meant for.
type Directions = [(What, PowerVector<Cornea>); TURNS.len()];

/// What is told of a label: placed as planned, and turned off it by so many degrees.
const TURNS: [(What, f64); 2] = [(What::ResidualOff5, 5.0), (What::ResidualOff10, 10.0)];

/// The cylinder each method needs, and what the labels on either side of it leave.
#[inline(never)]
fn labels(
    case: &Case,
    label: &Toric,
    vector: PowerVector<Cornea>,
    scatter: Scatter,
    answers: &Answers,
    sink: &mut dyn Sink,
) {
    // without a steep meridian there is nothing to correct and nowhere to put a mark
    let Some(mark) = vector.strongest() else {
        return sink.caution(Caution::general(Code::ToricNotNeeded));
    };
    sink.item(Item::one(What::MarkAxis, on_dial(mark)));
    let mut at_label = None;
    let mut most_at_lens = 0.0;
    let mut needs = [None; NONE.len()];
    for (Seen { method, eye, .. }, need) in seen(case, answers).zip(&mut needs) {
        let Ok(w) = working(&eye, vector.cylinder(), case.target, case.vertex) else { continue };
        sink.item(Item::of(What::NeededCylinder, method, w.needed));
        sink.item(Item::of(What::CylinderRatio, method, w.ratio));
        *need = Some(w.needed);
        most_at_lens = f64::max(most_at_lens, w.needed);
        at_label = Some(widened(at_label, in_label_plane(label, w.needed, w.n)));
    }
    let Some((least, most)) = at_label else { return };
    if case.back_from() == Some(BackFrom::Goggin2015) && most_at_lens > GOGGIN_UP_TO.get() {
        sink.caution(Caution::about(Code::GogginBeyond, Field::BackFrom));
    }
    let cylinders = || case.cylinders();
    let below = cylinders().map(LensCylinder::d).filter(|c| *c <= least).fold(f64::NEG_INFINITY, f64::max);
    let above = cylinders().map(LensCylinder::d).filter(|c| *c >= most).fold(f64::INFINITY, f64::min);
    // the same for every label and every method
    let along = direction(mark);
    let turns = TURNS.map(|(what, turn)| (what, along.turned_by(Turn::by(turn))));
    for (row, cylinder) in cylinders().filter(|c| (below..=above).contains(&c.d())).enumerate() {
        sink.item(Item::one(What::LabelCylinder, cylinder.d()).in_row(row));
        for (one, needed) in seen(case, answers).zip(&needs) {
            let mut tell = |what, value| sink.item(Item::of(what, one.method, value).in_row(row));
            let Ok(own) = at_lens_plane(cylinder, label.plane, &one.eye, case.target, case.vertex) else { continue };
            if label.plane == CylinderPlane::Cornea {
                tell(What::LensPlaneCylinder, own);
            }
            if let Some(needed) = needed {
                tell(What::Beyond, own - needed);
            }
            if let Ok(asked) = asked(&one.eye, one.lens(label, own, mark).mean, own) {
                one_label(one.eye.kc, vector, scatter, (asked, along, &turns), &mut tell);
            }
        }
    }
    if above.is_finite() {
        sink.caution(Caution::general(Code::OverCorrects));
    }
    let Some((weakest, strongest)) = range(cylinders().map(LensCylinder::d)) else { return };
    if most < weakest / 2.0 {
        sink.caution(Caution::general(Code::ToricNotNeeded));
    }
    if least > strongest {
        sink.caution(Caution::general(Code::BeyondLabels));
    }
}

/// A need in the label's own plane: a label at the cornea is compared with the cornea itself.
fn in_label_plane(label: &Toric, at_lens: f64, at_cornea: f64) -> f64 {
    match label.plane {
        CylinderPlane::Lens => at_lens,
        CylinderPlane::Cornea => at_cornea,
    }
}

/// What one label leaves in one method's eye.
// apart, so that its room on the stack is free again for the next
#[inline(never)]
fn one_label(
    kc: f64,
    vector: PowerVector<Cornea>,
    scatter: Scatter,
    (asked, along, turns): (Asked, PowerVector<Cornea>, &Directions),
    tell: &mut dyn FnMut(What, f64),
) {
    let wanted = asked.along(along);
    let aligned = left(kc, vector, wanted);
    let cylinder = aligned.cylinder();
    tell(What::Residual, cylinder);
    if let Some(axis) = plus_axis(aligned, cylinder) {
        tell(What::ResidualAxis, on_dial(axis));
    }
    tell(What::Expected, expected::mean(wanted, vector, scatter));
    for (what, turned) in turns {
        tell(*what, asked.along(*turned).minus(vector).cylinder());
    }
}

/// Cylinders below this, D, are told by no refraction, and their direction is noise.
pub(super) const TOLD: f64 = 0.125;

/// Axis of a plus cylinder still needed: across the meridian in which most power is missing.
///
/// Too small a cylinder's direction is not told.
fn plus_axis(left: PowerVector<Cornea>, cylinder: f64) -> Option<Axis> {
    if cylinder >= TOLD { left.plus_cylinder().axis } else { None }
}
